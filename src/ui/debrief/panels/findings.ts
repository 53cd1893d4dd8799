import type { EntryId } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';

export const NOT_YET = 'not yet inspected';

export interface Finding {
  readonly words: string;
  readonly entry: EntryId;
}

/** The newest finding of each panel. A panel nobody spoke of is absent: that is "not yet inspected" too. */
export function findingsByPanel(view: FlightView): ReadonlyMap<string, Finding> {
  const found = new Map<string, Finding>();
  for (const { effective, standing, entry } of view.standing) {
    if (standing === 'stands' && effective.kind === 'panelsInspected') {
      for (const { panel, finding } of effective.body.findings) {
        found.set(panel, { words: finding, entry: entry.id });
      }
    }
  }
  return found;
}
