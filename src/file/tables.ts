import { DateTime } from 'luxon';
import type { EpochMs, RecorderId } from '../record/brand.ts';
import type { Reading } from '../record/entry.ts';
import type { StandingEntry } from '../record/flightState.ts';
import { entryWords } from '../record/lang.ts';
import type { FlightSheet } from '../record/sheet.ts';
import type { Cell, Table } from './csv.ts';

/** What is worked out above this room and handed in: where a time lies, and what a reading means. */
export interface Meaning {
  /** A time of the flight's timeline on the aircraft time base. */
  readonly toBase: (at: EpochMs, rec: RecorderId) => EpochMs;
  /** A reading with its calibration, in its own unit; null where it says nothing. */
  readonly corrected: (reading: Reading) => number | null;
}

const ENTRY_HEADER = [
  'time_utc',
  'time_base_utc',
  'doubt_s',
  'late',
  'touched_utc',
  'what',
  'kind',
  'standing',
  'amended',
  'author',
  'role',
  'recorder',
  'seq',
  'id',
] as const;

/** Every entry, withdrawn ones too, one a row in the order in which it happened. */
export function entriesTable(
  standing: readonly StandingEntry[],
  sheet: FlightSheet | null,
  { toBase }: Pick<Meaning, 'toBase'>,
): Table {
  return {
    name: 'entries',
    header: ENTRY_HEADER,
    rows: standing.map((row): readonly Cell[] => {
      const { effective, entry } = row;
      return [
        iso(row.at),
        iso(toBase(row.at, entry.rec)),
        effective.kind === 'unrecognised' ? null : (effective.body.doubtS ?? null),
        row.late ? 'late' : null,
        iso(entry.wall),
        entryWords(effective, sheet),
        entry.kind === 'unrecognised' ? entry.writtenKind : entry.kind,
        row.standing,
        row.amendedBy.length,
        entry.author,
        entry.role,
        entry.rec,
        entry.seq,
        entry.id,
      ];
    }),
  };
}

const READING_HEADER = [
  'time_utc',
  'time_base_utc',
  'instrument',
  'quantity',
  'unit',
  'as_read',
  'as_amended',
  'corrected',
  'blank',
  'queried',
  'standing',
  'id',
] as const;

/** Every reading of every instrument, one a row, for a program that asks by instrument; the unit stands beside the value. */
export function readingsTable(
  standing: readonly StandingEntry[],
  sheet: FlightSheet | null,
  { toBase, corrected }: Meaning,
): Table {
  const quantities = new Map(sheet?.instruments.map(({ id, quantity }) => [id, quantity]));
  const rows: (readonly Cell[])[] = [];
  for (const row of standing) {
    const { entry, effective } = row;
    if (entry.kind === 'unrecognised' || effective.kind === 'unrecognised') {
      continue;
    }
    const asRead = new Map(entry.body.readings?.map((reading) => [reading.instrument, reading]));
    for (const reading of effective.body.readings ?? []) {
      const before = asRead.get(reading.instrument);
      rows.push([
        iso(row.at),
        iso(toBase(row.at, entry.rec)),
        reading.instrument,
        quantities.get(reading.instrument) ?? null,
        'unit' in reading ? reading.unit : null,
        before === undefined ? null : valueOf(before),
        valueOf(reading),
        corrected(reading),
        'blank' in reading ? reading.blank : null,
        'value' in reading ? (reading.queried ?? null) : null,
        row.standing,
        entry.id,
      ]);
    }
  }
  return { name: 'readings', header: READING_HEADER, rows };
}

function valueOf(reading: Reading): number | null {
  return 'value' in reading ? reading.value : null;
}

/** ISO 8601 in UTC; an instant that no calendar knows as its number. */
export function iso(at: EpochMs): string {
  return DateTime.fromMillis(at, { zone: 'utc' }).toISO() ?? String(at);
}
