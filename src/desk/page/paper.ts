import { masterTimeOf } from '../../analysis/clocks.ts';
import type { FlightResults, ReadingRef } from '../../analysis/flightResults.ts';
import {
  flowIn,
  flowUnitOf,
  massIn,
  massUnitOf,
  type FlowUnit,
  type MassUnit,
} from '../../analysis/sheetUnits.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import { entryWords } from '../../record/lang.ts';
import { numberWords } from '../../record/readingWords.ts';
import { clock, dayAndClock } from '../pageTime.ts';
import { signed } from './figures.ts';
import { wrapped } from './layout.ts';

/** What every section of a page is written with: the results, the flight's own units, and its entries to cite. */
export interface Paper {
  readonly view: FlightView;
  readonly results: FlightResults;
  readonly flowUnit: FlowUnit;
  readonly massUnit: MassUnit;
  /** A flow without its unit, which stands in the head of the column. */
  readonly flow: (flowKgPerS: number) => string;
  readonly mass: (massKg: number) => string;
  /** The same with their sign always. */
  readonly flowChange: (flowKgPerS: number) => string;
  readonly massChange: (massKg: number) => string;
  /** Time of day on the aircraft time base, where a time hack allows that. `by` says on which tablet it was touched. */
  readonly clock: (at: EpochMs, by: EntryId | undefined) => string;
  /** `[58 60]`: what was said rests on these; the list at the end of the page says what they are. */
  readonly cite: (entries: readonly EntryId[]) => string;
  readonly citeReadings: (readings: readonly ReadingRef[]) => string;
  /** Every entry cited so far, in order of time, in the words of the log. */
  readonly cited: () => readonly string[];
}

export function paperOf(view: FlightView, results: FlightResults): Paper {
  const { sheet } = view.state;
  const { fits } = results.clocks;
  const flowUnit = flowUnitOf(sheet);
  const massUnit = massUnitOf(sheet);
  const recorders = new Set(view.standing.map(({ entry }) => entry.rec));
  const cited = new Set<EntryId>();
  const shown = (at: EpochMs, by: EntryId | undefined): EpochMs => {
    const entry = by === undefined ? undefined : view.byId(by)?.entry;
    return entry === undefined ? at : masterTimeOf(fits, entry.rec, at);
  };
  const label = (id: EntryId): string => {
    const entry = view.byId(id)?.entry;
    if (entry === undefined) return id.slice(0, 8);
    return recorders.size > 1 ? `${entry.rec.slice(0, 4)}:${entry.seq}` : String(entry.seq);
  };
  const cite = (entries: readonly EntryId[]): string => {
    for (const id of entries) cited.add(id);
    return entries.length === 0 ? '' : `[${[...new Set(entries)].map(label).join(' ')}]`;
  };
  return {
    view,
    results,
    flowUnit,
    massUnit,
    flow: (flowKgPerS) => numberWords(flowIn(flowUnit, flowKgPerS), 0),
    mass: (massKg) => numberWords(massIn(massUnit, massKg), 0),
    flowChange: (flowKgPerS) => signed(flowIn(flowUnit, flowKgPerS), 0),
    massChange: (massKg) => signed(massIn(massUnit, massKg), 0),
    clock: (at, by) => clock(shown(at, by)),
    cite,
    citeReadings: (readings) => cite(readings.flatMap(({ entries }) => entries)),
    cited: () =>
      view.standing
        .filter(({ entry }) => cited.has(entry.id))
        .flatMap(({ entry, effective, at, standing, amendedBy }) => {
          const marks = [
            ...(standing === 'stands' ? [] : [standing]),
            ...(amendedBy.length === 0 ? [] : ['as amended']),
          ];
          const words = [entryWords(effective, sheet), ...marks].join('; ');
          return wrapped(`${dayAndClock(shown(at, entry.id))} ${words}`, {
            first: `${`[${label(entry.id)}]`.padEnd(recorders.size > 1 ? 11 : 6)}`,
            hanging: '      ',
          });
        }),
  };
}
