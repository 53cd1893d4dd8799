import type { Stamp } from '../../record/entry.ts';
import type { StandingEntry } from '../../record/flightState.ts';
import type { Field } from './field.ts';
import type { Fly } from './flyContext.ts';

/** Opens the pad that a field of the detail panel wants. */
export function openFieldPad(
  fly: Fly,
  standing: StandingEntry,
  field: Exclude<Field, { form: 'choose' | 'instead' }>,
  stamp: Stamp,
): void {
  const target = standing.entry.id;
  switch (field.form) {
    case 'number':
      fly.move({ do: 'open', pad: { kind: 'number', target, field } });
      return;
    case 'reading':
      fly.move({ do: 'open', pad: { kind: 'reading', target, field, back: null } });
      return;
    case 'time':
    case 'clock':
      fly.move({ do: 'open', pad: { kind: 'clock', target, field } });
      return;
    case 'probes':
      fly.move({ do: 'open', pad: { kind: 'probes', target, stamp, wing: 'L' } });
      return;
    case 'pressures':
      fly.move({ do: 'open', pad: { kind: 'pressures', target, probe: null, page: 0, wing: 'L' } });
      return;
    case 'sketch':
      fly.move({ do: 'open', pad: { kind: 'sketch', target } });
      return;
    case 'tubes':
      fly.move({ do: 'open', pad: { kind: 'tubes', target } });
      return;
    case 'covers':
      fly.move({
        do: 'open',
        pad: { kind: 'covers', target, wing: field.wing === 'R' ? 'R' : 'L' },
      });
  }
}
