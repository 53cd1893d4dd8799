import type { StandingEntry } from '../../record/flightState.ts';
import type { Touch } from '../kit/touchBoard.ts';
import type { Act } from './act.ts';
import type { Fly } from './flyContext.ts';

/**
 * The touch was right, its name was not: the entry is struck out and the other kind is written for the same moment.
 * Two entries, both readable; the second carries the time of the first touch.
 */
export async function writeInstead(
  fly: Fly,
  standing: StandingEntry,
  act: Act,
  touch: Touch,
): Promise<void> {
  const scene = fly.sceneAt(standing.at);
  const withdrawn = await fly.append({
    kind: 'entryWithdrawn',
    body: {
      target: standing.entry.id,
      reason: `wrong button, meant ${act.label} ${act.verb}`.toLowerCase(),
    },
    stamp: touch.stamp,
  });
  if (withdrawn === null) {
    return;
  }
  const { wall, mono, boot } = standing.entry;
  const written = await fly.append({ ...act.write(scene, {}), stamp: { wall, mono, boot } });
  if (written !== null) {
    fly.move({ do: 'panel', panel: { kind: 'detail', target: written.id, field: 0, page: 0 } });
  }
}
