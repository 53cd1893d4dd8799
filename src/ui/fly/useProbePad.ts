import { useState } from 'react';
import type { KnownEntry, Stamp } from '../../record/entry.ts';
import type { PanelState } from '../../record/kinds.ts';
import type { Wing } from '../../record/sheet.ts';
import { change, type Json } from './field.ts';
import type { Fly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import { callOf, startStates, wingsOf, type ProbeStates } from './probeDraft.ts';

export type Brush = Exclude<PanelState, 'notAssessed'>;
type ProbesPadState = Extract<Pad, { kind: 'probes' }>;

/** Naming the probes of both wings: a state is chosen, then the probes that have it; each touch sets, none toggles. */
export interface ProbeNaming {
  readonly brush: Brush;
  readonly setBrush: (brush: Brush) => void;
  readonly states: (wing: Wing) => ProbeStates;
  readonly set: (wing: Wing, probes: readonly string[]) => void;
  /** All probes of a panel: the panel itself was called, and its name goes with the gain or the loss. */
  readonly setPanel: (wing: Wing, panel: string, probes: readonly string[]) => void;
  readonly setAll: (wing: Wing, state: Brush) => void;
  readonly changed: (wing: Wing) => boolean;
  readonly enter: (stamp: Stamp) => Promise<void>;
}

export function useProbeNaming(fly: Fly, pad: ProbesPadState): ProbeNaming {
  const [brush, setBrush] = useState<Brush>('turbulent');
  const [named, setNamed] = useState<Readonly<Partial<Record<Wing, ProbeStates>>>>({});
  const [whole, setWhole] = useState<Readonly<Record<string, Brush>>>({});
  const effective = pad.target === null ? undefined : fly.view.byId(pad.target)?.effective;
  const entry = effective === undefined || effective.kind === 'unrecognised' ? null : effective;
  const states = (wing: Wing): ProbeStates =>
    named[wing] ?? startStates(fly.sheet, fly.state, entry, wing);
  const set = (wing: Wing, probes: readonly string[]): void =>
    setNamed((before) => ({
      ...before,
      [wing]: {
        ...(before[wing] ?? states(wing)),
        ...Object.fromEntries(probes.map((id) => [id, brush])),
      },
    }));
  return {
    brush,
    setBrush,
    states,
    set,
    setPanel: (wing, panel, probes) => {
      set(wing, probes);
      setWhole((before) => ({ ...before, [panel]: brush }));
    },
    setAll: (wing, state) =>
      setNamed((before) => ({
        ...before,
        [wing]: Object.fromEntries(Object.keys(states(wing)).map((id) => [id, state])),
      })),
    changed: (wing) => named[wing] !== undefined,
    enter: async (stamp) => {
      fly.move({ do: 'closePad' });
      const before = wingsOf(entry);
      const wings = {
        ...(before?.L !== undefined && { L: before.L }),
        ...(before?.R !== undefined && { R: before.R }),
        ...(named.L !== undefined && { L: callOf(named.L) }),
        ...(named.R !== undefined && { R: callOf(named.R) }),
      };
      if (pad.target !== null) {
        const panels = panelsCalled(entry, whole);
        const changes = [
          change('wings', asJson(wings)),
          ...(panels.length > 0 ? [change('panels', panels)] : []),
        ];
        await fly.amend(pad.target, changes, stamp);
        return;
      }
      const read = await fly.append({
        kind: 'probesRead',
        body: { wings },
        stamp: pad.stamp ?? stamp,
      });
      if (read !== null) {
        fly.move({ do: 'panel', panel: { kind: 'detail', target: read.id, field: 0, page: 0 } });
      }
    },
  };
}

/** Panels that were named as a whole in the state that the event says they came to. */
function panelsCalled(
  entry: KnownEntry | null,
  whole: Readonly<Record<string, Brush>>,
): readonly string[] {
  const came =
    entry?.kind === 'laminarGained'
      ? 'laminar'
      : entry?.kind === 'laminarLost'
        ? 'turbulent'
        : null;
  return Object.keys(whole)
    .filter((panel) => whole[panel] === came)
    .toSorted();
}

function asJson(wings: Readonly<Partial<Record<Wing, ReturnType<typeof callOf>>>>): Json {
  return Object.fromEntries(Object.entries(wings).map(([wing, call]) => [wing, { ...call }]));
}
