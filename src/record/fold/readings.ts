import type { EpochMs } from '../brand.ts';
import type { KnownEntry, Reading } from '../entry.ts';
import type { Circumstances, CounterNow, Glance, StandingEntry, Timed } from '../flightState.ts';
import type { Quantity } from '../sheet.ts';
import { appended, itemAt, replaced } from '../trail.ts';
import { doubted, type Fold, withMemory, withState } from './fold.ts';
import { openSince, turnSince } from './intervals.ts';
import { lastSuctionChangeAt } from './suction.ts';

const AIR_DATA: readonly Quantity[] = [
  'mach',
  'pressureAltitude',
  'staticAirTemp',
  'totalAirTemp',
  'machRate',
  'altitudeRate',
];

/** How many glances back an entry may look for the one it belongs to; entries of a glance stand side by side. */
const GLANCES_BACK = 64;
/** Entries in one glance, at most: a look at the panel has a dozen readings; a foreign file could give it all of its own. */
const MOST_IN_GLANCE = 64;

/** Adds what the entry read to its glance, a new one or one that an entry before it began. */
export function withReadings(
  fold: Fold,
  entry: KnownEntry,
  standing: StandingEntry,
  timed: Timed,
): Fold {
  const rows = entry.body.readings ?? [];
  if (rows.length === 0) {
    return fold;
  }
  const read = counted(askedForInstruments(fold, rows, timed), rows, timed);
  const key = `${entry.rec} ${entry.body.glance ?? entry.id}`;
  const joined = entry.body.glance === undefined ? null : glanceOf(read, key);
  const begun = joined === null ? null : (itemAt(read.state.glances, joined) ?? null);
  const before: Glance = begun ?? {
    at: timed.at,
    rec: entry.rec,
    by: [],
    kinds: [],
    readings: {},
    circumstances: circumstancesAt(read, timed.at),
    amendmentsDisagree: false,
  };
  const glance: Glance = {
    ...before,
    by: [...before.by, entry.id],
    kinds: [...before.kinds, entry.kind],
    readings: {
      ...before.readings,
      ...Object.fromEntries(rows.map((row) => [row.instrument, row])),
    },
    circumstances: { ...before.circumstances, counters: read.state.counters },
    amendmentsDisagree:
      before.amendmentsDisagree || standing.conflicts.some((field) => field.startsWith('readings')),
  };
  return withGlance(read, joined, key, glance);
}

function withGlance(fold: Fold, joined: number | null, key: string, glance: Glance): Fold {
  const index = joined ?? fold.state.glances.length;
  const glances =
    joined === null
      ? appended(fold.state.glances, glance)
      : replaced(fold.state.glances, joined, glance);
  const glanceKeys =
    joined === null ? appended(fold.memory.glanceKeys, key) : fold.memory.glanceKeys;
  const next = withMemory(withState(fold, { glances }), { glanceKeys });
  const aired = hasValue(next, glance, AIR_DATA)
    ? withMemory(withState(next, { lastAirData: glance }), { airDataGlance: index })
    : next;
  return hasValue(aired, glance, ['fuelFlow']) ? withFuelGlance(aired, index, glance) : aired;
}

/** The run keeps the glances that make its number. */
function withFuelGlance(fold: Fold, index: number, glance: Glance): Fold {
  const runIndex = glance.circumstances.run;
  const run = runIndex === null ? undefined : itemAt(fold.state.runs, runIndex);
  if (runIndex === null || run === undefined || run.fuelGlances.at(-1) === index) {
    return fold;
  }
  const fuelGlances = [...run.fuelGlances, index];
  return withState(fold, { runs: replaced(fold.state.runs, runIndex, { ...run, fuelGlances }) });
}

/** Index of the glance with this key; `null` when the entry begins one. */
function glanceOf(fold: Fold, key: string): number | null {
  const { glanceKeys } = fold.memory;
  const oldest = Math.max(0, glanceKeys.length - GLANCES_BACK);
  for (let index = glanceKeys.length - 1; index >= oldest; index -= 1) {
    if (itemAt(glanceKeys, index) === key) {
      const full = (itemAt(fold.state.glances, index)?.by.length ?? 0) >= MOST_IN_GLANCE;
      return full ? null : index;
    }
  }
  return null;
}

function circumstancesAt(fold: Fold, at: EpochMs): Circumstances {
  const { state, memory } = fold;
  const run = state.openRun;
  const aired = memory.airDataGlance;
  const airedIn = aired === null ? null : itemAt(state.glances, aired)?.circumstances.run;
  return {
    run,
    moistureSince: openSince(fold, 'moisture'),
    turnSince: turnSince(fold, at),
    suctionOn: state.suction.L.on !== null || state.suction.R.on !== null,
    lastSuctionChangeAt: lastSuctionChangeAt(fold),
    lastUpsetAt: memory.lastUpsetAt,
    conditionReachedAt: state.condition.reached?.at ?? null,
    airDataOfRun: run !== null && airedIn === run ? aired : null,
    counters: state.counters,
  };
}

/** Newest reading of each consumer's counter, by consumer: blank rows leave the one before. */
function counted(fold: Fold, rows: readonly Reading[], timed: Timed): Fold {
  const counters: Record<string, CounterNow> = {};
  for (const reading of rows) {
    const instrument = fold.memory.sheet.instruments.get(reading.instrument);
    if (
      instrument?.quantity === 'fuelUsed' &&
      instrument.consumer !== undefined &&
      'value' in reading
    ) {
      counters[String(instrument.consumer)] = { ...timed, reading };
    }
  }
  return Object.keys(counters).length === 0
    ? fold
    : withState(fold, { counters: { ...fold.state.counters, ...counters } });
}

function hasValue(fold: Fold, glance: Glance, quantities: readonly Quantity[]): boolean {
  return Object.values(glance.readings).some((reading) => {
    const quantity = fold.memory.sheet.instruments.get(reading.instrument)?.quantity;
    return 'value' in reading && quantity !== undefined && quantities.includes(quantity);
  });
}

function askedForInstruments(fold: Fold, rows: readonly Reading[], timed: Timed): Fold {
  const { instruments } = fold.memory.sheet;
  return rows
    .filter((row) => fold.state.sheet !== null && !instruments.has(row.instrument))
    .reduce((before, row) => doubted(before, timed, 'unknownInstrument', row.instrument), fold);
}
