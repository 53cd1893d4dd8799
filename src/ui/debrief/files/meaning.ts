import { correctedInUnit } from '../../../analysis/correctedInUnit.ts';
import type { Meaning } from '../../../file/tables.ts';
import type { Desk } from '../context.ts';

/** What the tables need to know that no file knows by itself. */
export function meaningOf({ view, base }: Pick<Desk, 'view' | 'base'>): Meaning {
  return {
    toBase: base.shown,
    corrected: (reading) => correctedInUnit(view.state.sheet, reading),
  };
}
