import { useState } from 'react';
import type { Stamp } from '../../record/entry.ts';
import { change } from './field.ts';
import type { Fly } from './flyContext.ts';
import type { Pad } from './flyState.ts';

export type CoverSeen = 'clear' | 'hung';

/** What was seen of each panel's cover: a release command is not a clear panel until somebody looked. */
export interface CoverNaming {
  readonly panels: readonly string[];
  readonly seen: Readonly<Record<string, CoverSeen>>;
  readonly brush: CoverSeen;
  readonly setBrush: (brush: CoverSeen) => void;
  readonly set: (panel: string) => void;
  readonly allClear: () => void;
  readonly enter: (stamp: Stamp) => Promise<void>;
}

export function useCovers(fly: Fly, pad: Extract<Pad, { kind: 'covers' }>): CoverNaming {
  const [brush, setBrush] = useState<CoverSeen>('clear');
  const [touched, setTouched] = useState<Readonly<Record<string, CoverSeen>> | null>(null);
  const panels = (fly.sheet?.panels ?? [])
    .filter((panel) => panel.wing === pad.wing)
    .toSorted((a, b) => a.number - b.number)
    .map((panel) => panel.id);
  const entry = fly.view.byId(pad.target)?.effective;
  const said = entry?.kind === 'coversReleased' ? entry.body : null;
  const seen = touched ?? {
    ...Object.fromEntries((said?.clear ?? []).map((id) => [id, 'clear' as const])),
    ...Object.fromEntries((said?.hung ?? []).map((id) => [id, 'hung' as const])),
  };
  const named = (as: CoverSeen): readonly string[] => panels.filter((id) => seen[id] === as);
  return {
    panels,
    seen,
    brush,
    setBrush,
    set: (panel) => setTouched({ ...seen, [panel]: brush }),
    // Those already named as hung stay so: "all the others are clear".
    allClear: () => setTouched(Object.fromEntries(panels.map((id) => [id, seen[id] ?? 'clear']))),
    enter: async (stamp) => {
      fly.move({ do: 'closePad' });
      await fly.amend(
        pad.target,
        [change('clear', named('clear')), change('hung', named('hung'))],
        stamp,
      );
    },
  };
}
