import { civilFromEpochMs } from '../../aero/calendar.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { KnownEntry } from '../../record/entry.ts';
import type { FlightView } from '../../record/flight.ts';
import type { StandingEntry } from '../../record/flightState.ts';
import { numberWords } from '../../record/readingWords.ts';
import { masterTimeOf } from '../clocks.ts';
import type { FlightResults } from '../flightResults.ts';
import type { Interval95 } from '../results.ts';
import { flowIn, flowUnitOf, massIn, massUnitOf } from '../sheetUnits.ts';

/** What every part of the account is told with. */
export interface Teller {
  readonly view: FlightView;
  readonly results: FlightResults;
  /** Entries that count, of kinds that this release knows, as they stand, in order of event time. */
  readonly standing: readonly Standing[];
  /** `22:37:10`, on the aircraft time base where a time hack allows that. */
  readonly clock: (at: EpochMs, by: EntryId) => string;
  readonly flow: (flowKgPerS: number) => string;
  readonly mass: (massKg: number) => string;
}

/** An entry that stands, amendments applied. */
export interface Standing {
  readonly by: EntryId;
  readonly at: EpochMs;
  readonly entry: KnownEntry;
}

export function tellerOf(view: FlightView, results: FlightResults): Teller {
  const { sheet } = view.state;
  const [flowUnit, massUnit] = [flowUnitOf(sheet), massUnitOf(sheet)];
  return {
    view,
    results,
    standing: view.standing.flatMap(standingOf),
    clock: (at, by) => {
      const entry = view.byId(by)?.entry;
      return clockWords(
        entry === undefined ? at : masterTimeOf(results.clocks.fits, entry.rec, at),
      );
    },
    flow: (kgPerS) => `${numberWords(flowIn(flowUnit, kgPerS), 0)}\u00a0${flowUnit}`,
    mass: (kg) => `${numberWords(massIn(massUnit, kg), 0)}\u00a0${massUnit}`,
  };
}

function standingOf({ entry, effective, standing, at }: StandingEntry): readonly Standing[] {
  return standing !== 'stands' || effective.kind === 'unrecognised'
    ? []
    : [{ by: entry.id, at, entry: effective }];
}

/** Years 1 to 9999, which the calendar knows. A foreign file may hold any instant. */
const FIRST_MS = -62_135_596_800_000;
const LAST_MS = 253_402_300_799_000;

function clockWords(at: EpochMs): string {
  const nearest = Math.round(Math.min(LAST_MS, Math.max(FIRST_MS, at)) / 1000) * 1000;
  const { hour, minute, second } = civilFromEpochMs(nearest);
  return [hour, minute, second].map((part) => String(part).padStart(2, '0')).join(':');
}

/** `5 min 38 s`, `3 h 10 min`. */
export function lasting(durationMs: number): string {
  const seconds = Math.round(Math.abs(durationMs) / 1000);
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  if (hours > 0) return `${hours}\u00a0h ${minutes}\u00a0min`;
  return minutes > 0 ? `${minutes}\u00a0min ${seconds % 60}\u00a0s` : `${seconds}\u00a0s`;
}

/** `27.3 % (26.7 to 27.8)`: a share of one with its 95 % interval. */
export function percentWords(fraction: number, { low, high }: Interval95): string {
  const tenth = (share: number): string => numberWords(100 * share, 1);
  return `${tenth(fraction)}\u00a0% (${tenth(low)} to ${tenth(high)})`;
}

/**
 * What somebody wrote or said, told apart from the account's own words. It runs on in one line, and a quotation mark in it
 * becomes a single one, so that it cannot pass for the end of the quote.
 */
export function quoted(words: string): string {
  return `“${words.replace(/\s+/g, ' ').trim().replaceAll('“', '‘').replaceAll('”', '’')}”`;
}

/** `L1, L2 and R4`. */
export function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}

export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** The parts that say something, parted by commas. */
export function parts(...words: readonly (string | null | undefined | false)[]): string {
  return words.filter((word) => typeof word === 'string' && word !== '').join(', ');
}
