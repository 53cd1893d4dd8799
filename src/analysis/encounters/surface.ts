import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightSheet } from '../../record/sheet.ts';

/** What somebody found on a panel after the flight. */
export interface Finding {
  readonly panel: string;
  /** In the words of the inspection. */
  readonly words: string;
  readonly verdict: 'clean' | 'finding' | 'notInspected';
  readonly by: EntryId;
}

/** What the inspection form writes for a panel that nobody has looked at: said, never left blank. */
export const NOT_YET_INSPECTED = 'not yet inspected';

/** The newest finding of each panel; a panel nobody spoke of is absent, which is not inspected too. */
export function findingsByPanel(view: FlightView): ReadonlyMap<string, Finding> {
  const found = new Map<string, Finding>();
  for (const { effective, standing, entry } of view.standing) {
    if (standing !== 'stands' || effective.kind !== 'panelsInspected') continue;
    for (const { panel, finding } of effective.body.findings) {
      found.set(panel, { panel, words: finding, verdict: verdictOf(finding), by: entry.id });
    }
  }
  return found;
}

/** The two words that the inspection form writes by itself; whatever else was written is a finding. */
function verdictOf(finding: string): Finding['verdict'] {
  switch (finding.trim().toLowerCase()) {
    case 'clean':
      return 'clean';
    case '':
    case NOT_YET_INSPECTED:
      return 'notInspected';
    default:
      return 'finding';
  }
}

/** A cover that did not go at the first command, whether or not it went later. */
export interface HungCover {
  readonly panel: string;
  readonly at: EpochMs;
  readonly by: EntryId;
}

export function hungCovers(view: FlightView): ReadonlyMap<string, HungCover> {
  const hung = new Map<string, HungCover>();
  for (const { effective, standing, entry, at } of view.standing) {
    if (standing !== 'stands' || effective.kind !== 'coversReleased') continue;
    for (const panel of effective.body.hung ?? []) {
      if (!hung.has(panel)) hung.set(panel, { panel, at, by: entry.id });
    }
  }
  return hung;
}

/** The flight sheets of the flight with the moment from which each holds, in order of time. */
export function sheetsOf(
  view: FlightView,
): readonly { readonly at: EpochMs; readonly sheet: FlightSheet }[] {
  const sheets: { at: EpochMs; sheet: FlightSheet }[] = [];
  for (const { effective, standing, at } of view.standing) {
    if (standing !== 'stands') continue;
    const opens = effective.kind === 'flightOpened' && sheets.length === 0;
    if (opens || effective.kind === 'flightSheetChanged') {
      sheets.push({ at, sheet: effective.body.sheet });
    }
  }
  return sheets;
}
