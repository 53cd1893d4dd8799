import { civilFromEpochMs } from '../../aero/calendar.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import { masterTimeOf, type ClockFit } from '../clocks.ts';
import type { Answer } from '../answer.ts';
import { flowIn, flowUnitOf, massIn, massUnitOf, weightIn } from '../sheetUnits.ts';

/** A table for a spreadsheet: one header row, one unit a column, named in the header; `null` is blank. */
export interface ResultTable {
  /** For the name of its file. */
  readonly name: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** What the cells of one flight are written with. Flows and masses are in the units of its flight sheet. */
export interface CellsOf {
  /** `lb_per_h` or `kg_per_h`. */
  readonly flowUnit: string;
  readonly massUnit: string;
  readonly flow: (flowKgPerS: number | null) => number | null;
  readonly mass: (massKg: number | null) => number | null;
  /** As the crew says it: the mass that weighs so much. */
  readonly weight: (weightN: number) => number;
  /** ISO 8601 in UTC on the aircraft time base, where a time hack allows that. */
  readonly time: (at: EpochMs | null, by: EntryId | undefined) => string | null;
  /** Ids of the entries behind a row, parted by spaces. */
  readonly entries: (ids: readonly EntryId[]) => string;
}

export function cellsOf(view: FlightView, fits: readonly ClockFit[]): CellsOf {
  const { sheet } = view.state;
  const [flowUnit, massUnit] = [flowUnitOf(sheet), massUnitOf(sheet)];
  return {
    flowUnit: flowUnit === 'lb/h' ? 'lb_per_h' : 'kg_per_h',
    massUnit,
    flow: (kgPerS) => (kgPerS === null ? null : flowIn(flowUnit, kgPerS)),
    mass: (kg) => (kg === null ? null : massIn(massUnit, kg)),
    weight: (weightN) => weightIn(massUnit, weightN),
    time: (at, by) => {
      if (at === null) return null;
      const entry = by === undefined ? undefined : view.byId(by)?.entry;
      return isoUtc(entry === undefined ? at : masterTimeOf(fits, entry.rec, at));
    },
    entries: (ids) => [...new Set(ids)].join(' '),
  };
}

export function percent(fraction: number | null): number | null {
  return fraction === null ? null : 100 * fraction;
}

/** The value of an answer taken apart, or blank where there is none. */
export function cell<Value>(
  answer: Answer<Value, string, string, string>,
  take: (value: Value) => string | number | null,
): string | number | null {
  return answer.kind === 'answer' ? take(answer.value) : null;
}

/** Why a cell is blank, or which gates strike it; blank where the number stands. */
export function remark(answer: Answer<unknown, string, string, string>): string | null {
  if (answer.kind === 'noAnswer') return answer.because;
  return answer.how.broken.length === 0 ? null : answer.how.broken.join(' ');
}

/** Years 1 to 9999, which the calendar knows. A foreign file may hold any instant. */
const FIRST_MS = -62_135_596_800_000;
const LAST_MS = 253_402_300_799_999;

function isoUtc(at: EpochMs): string {
  if (at < FIRST_MS || at > LAST_MS) return String(at);
  const { year, month, day, hour, minute, second, millisecond } = civilFromEpochMs(at);
  const digits = (value: number, length: number): string => String(value).padStart(length, '0');
  const date = [digits(year, 4), digits(month, 2), digits(day, 2)].join('-');
  const time = [digits(hour, 2), digits(minute, 2), digits(second, 2)].join(':');
  return `${date}T${time}.${digits(millisecond, 3)}Z`;
}
