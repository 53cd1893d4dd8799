import type { Stamp } from '../../record/entry.ts';
import type { PanelState } from '../../record/kinds.ts';
import type { Fly } from './flyContext.ts';

/** A panel touched this long ago or less gives its touch as the time; after that the state key's own touch does. */
const PANEL_TOUCH_HOLDS_MS = 10_000;

/** Writes the state of the chosen panel for the moment at which the panel was touched. */
export async function callState(
  fly: Fly,
  state: Exclude<PanelState, 'notAssessed'>,
  stamp: Stamp,
): Promise<void> {
  const { wingPanel } = fly.ui;
  if (wingPanel === null) {
    return;
  }
  const ageMs = stamp.wall - wingPanel.stamp.wall;
  const at =
    !wingPanel.used && ageMs >= 0 && ageMs <= PANEL_TOUCH_HOLDS_MS ? wingPanel.stamp : stamp;
  // The panel stays chosen for a second thought, but its touch is used up.
  fly.move({ do: 'wingPanel', wingPanel: { ...wingPanel, used: true } });
  await fly.append({
    kind: 'panelStateCalled',
    body: { panel: wingPanel.panel, state },
    stamp: at,
  });
}
