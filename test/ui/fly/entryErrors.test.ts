import { afterAll, describe, expect, it } from 'vitest';
import { liveEstimate } from '../../../src/analysis/liveEstimate.ts';
import { judgeReading } from '../../../src/analysis/plausibility.ts';
import { historyOf } from '../../../src/analysis/readingHistory.ts';
import type { LiveEstimate } from '../../../src/analysis/results.ts';
import type { EntryId } from '../../../src/record/brand.ts';
import type { Entry } from '../../../src/record/entry.ts';
import { startFlight } from '../../../src/record/flight.ts';
import type { Instrument } from '../../../src/record/sheet.ts';
import { items } from '../../../src/record/trail.ts';
import { EMPTY_BOXES, isFull, typed, valueOf, type Boxes } from '../../../src/ui/fly/boxes.ts';
import { flightA, sealed, sheetA, touchAt } from '../../analysis/flights.ts';
import { seeded } from '../../browser/seeded.ts';
import { entriesUntil, idOfLine } from '../../flights/scriptToEntries.ts';
import { CLASSES, type Slip } from './slipClasses.ts';

/**
 * The entry error model: what becomes of slips of the finger and of the eye, class by class, through the boxes and the
 * judge that the pad uses, and then through the live figure. The classes are those that a study of keyed numbers
 * names (out by ten, missing, doubled, swapped, neighbouring key ...); how often each comes is not claimed here.
 */

const SLIPS_A_CLASS = 1_000;
/** The larger of 8 % and four median deviations is the band; the scatter below keeps the second one smaller. */
const BAND_FRACTION = 0.08;
const FF1 = 'FF1';
const FF2 = 'FF2';

interface Outcome {
  readonly name: string;
  readonly keyed: number;
  readonly unchanged: number;
  readonly queried: number;
  /** Of those asked about, how many were offered what the indicator showed. */
  readonly offered: number;
  readonly passed: number;
  /** Largest error of a value that passed, as a share of the true one. */
  readonly worstFraction: number;
}

function pressed(keys: string, instrument: Instrument): Boxes {
  const format = { ...instrument.format, exact: true };
  return keys.split('').reduce((boxes, digit) => typed(boxes, format, digit), EMPTY_BOXES);
}

/** What the pad makes of the keys: the value, whether it is asked about, and what it offers instead. */
function entered(
  keys: string,
  instrument: Instrument,
  history: readonly number[],
): { readonly value: number; readonly queried: boolean; readonly candidate: number | null } {
  const format = { ...instrument.format, exact: true };
  const boxes = pressed(keys, instrument);
  const value = valueOf(boxes, format) ?? Number.NaN;
  if (!isFull(boxes, format)) return { value, queried: true, candidate: null };
  const judged = judgeReading({ instrument, value, history });
  return judged.kind === 'query'
    ? { value, queried: true, candidate: judged.candidate }
    : { value, queried: false, candidate: null };
}

const gauge: Instrument = {
  id: FF1,
  name: 'fuel flow, engine 1',
  quantity: 'fuelFlow',
  consumer: 1,
  unit: 'kg/h',
  format: { wholeDigits: 4, decimals: 0, signed: false },
  resolution: 1,
  rangeLow: 300,
  rangeHigh: 9_900,
  calibration: { correction: 0 },
  serviceable: true,
};

const digitsOf = (value: number): string => String(Math.round(value)).padStart(4, '0');

/** Steady cruise at any level of flow: five kept readings within half a per cent, engines within 12 % of each other. */
function outcomeOf(name: string, slip: Slip, seed: number): Outcome {
  const pick = seeded(seed);
  const about = (level: number): number => level * (1 + (pick() - 0.5) * 0.01);
  const counts = { unchanged: 0, queried: 0, offered: 0, passed: 0, worstFraction: 0 };
  for (let count = 0; count < SLIPS_A_CLASS; count += 1) {
    // Only a number with a leading zero can be keyed ten times too large: the boxes end with the indicator's digits.
    const level = 300 * (name.startsWith('ten times') ? 3 : 30) ** pick();
    const history = Array.from({ length: 5 }, () => Math.round(about(level)));
    const shown = Math.round(about(level));
    const reading = {
      shown: digitsOf(shown),
      last: digitsOf(history.at(-1) ?? shown),
      other: digitsOf(level * (1 + (pick() - 0.5) * 0.24)),
    };
    const keys = slip(reading, Math.floor(pick() * 4), pick);
    const { value, queried, candidate } = entered(keys, gauge, history);
    const worst = Math.abs(value - shown) / shown;
    counts.unchanged += !queried && value === shown ? 1 : 0;
    counts.queried += queried ? 1 : 0;
    // A digit that was never keyed cannot be offered: right but for the last one is as good as it gets.
    counts.offered += candidate !== null && Math.abs(candidate - shown) < 10 ? 1 : 0;
    counts.passed += queried || value === shown ? 0 : 1;
    counts.worstFraction = queried ? counts.worstFraction : Math.max(counts.worstFraction, worst);
  }
  return { name, keyed: SLIPS_A_CLASS, ...counts };
}

const outcomes = Object.entries(CLASSES).map(([name, slip], index) =>
  outcomeOf(name, slip, 4_211 + index),
);
const outcome = (name: string): Outcome => {
  const found = outcomes.find((each) => each.name === name);
  if (found === undefined) throw new RangeError(`there must be a class ${name}`);
  return found;
};

describe('1 000 slips of each class, on any level of flow', () => {
  it.each(['ten times, leading zero', 'a tenth, one zero more', 'digit missing'])(
    'every one of %s is asked about',
    (name) => {
      expect(outcome(name)).toMatchObject({ queried: SLIPS_A_CLASS, passed: 0, unchanged: 0 });
    },
  );

  it('offers the true value for out by ten more often than not', () => {
    const { offered, queried } = outcome('a tenth, one zero more');
    expect(offered / queried).toBeGreaterThan(0.5);
  });

  it.each(outcomes)('what passes of $name lies within the band about the last readings', (each) => {
    // 8 % of a reference that may lie 0.5 % above what is shown now, and half of the last digit.
    expect(each.worstFraction).toBeLessThanOrEqual(BAND_FRACTION * 1.01 + 0.01);
    expect(each.queried + each.passed + each.unchanged).toBe(SLIPS_A_CLASS);
  });

  it('cannot see a swap of the last two digits from 1 000 up, nor the last value again', () => {
    // 90 at most of 1 000 is 9 %, of 1 200 already less than the band: Debrief lists these for a person.
    expect(outcome('last two swapped').passed).toBeGreaterThan(SLIPS_A_CLASS / 4);
    expect(outcome('last value again').queried).toBe(0);
  });
});

/** Fifth test point of flight A: the second reading, judged by the ones before it. */
const LINE = 81;
const target = idOfLine(flightA.idOf, LINE);
const entries = entriesUntil(flightA, LINE);

interface InFlight {
  readonly name: string;
  readonly kept: number;
  readonly struck: number;
  readonly stands: number;
  /** Largest change of the standing figure, in points of per cent. */
  readonly worstPoints: number;
}

/** Each slip amends the same reading of the flight, so that the past by which it is judged stays what it was. */
function slipsInFlight(): readonly InFlight[] {
  const flight = startFlight();
  const view = flight.add(entries);
  const glance = [...items(view.state.glances)].find(({ by }) => by.includes(target));
  const instrument = sheetA.instruments.find(({ id }) => id === FF1);
  const readings = [FF1, FF2].map((id) => glance?.readings[id]);
  if (glance === undefined || instrument === undefined) throw new RangeError('FF1 must be read');
  const [own = 0, other = 0] = readings.map((reading) =>
    reading !== undefined && 'value' in reading ? reading.value : 0,
  );
  const before = startFlight().add(
    entries.slice(
      0,
      entries.findIndex(({ id }) => id === target),
    ),
  );
  const { history } = historyOf(before, FF1, glance.at);
  const truth = percentOf(liveEstimate(view));
  let replaces: readonly EntryId[] = [];
  let last: Entry | undefined;
  return Object.entries(CLASSES).map(([name, slip], index) => {
    const pick = seeded(977 + index);
    const counts = { kept: 0, struck: 0, stands: 0, worstPoints: 0 };
    const seen = new Map<string, LiveEstimate>();
    for (let count = 0; count < SLIPS_A_CLASS; count += 1) {
      const shown = digitsOf(own);
      const lastShown = digitsOf(own * (1 + (pick() - 0.5) * 0.01));
      const reading = { shown, last: lastShown, other: digitsOf(other) };
      const keys = slip(reading, Math.floor(pick() * 4), pick);
      const { value, queried } = entered(keys, instrument, history);
      let estimate = seen.get(`${value}${queried}`);
      if (estimate === undefined) {
        const [amendment] = sealed([
          {
            kind: 'entryAmended',
            body: {
              target,
              replaces: [...replaces],
              changes: [
                { field: `readings.${FF1}.value`, old: own, new: value },
                {
                  field: `readings.${FF1}.queried`,
                  old: null,
                  new: queried ? 'outsideBand' : null,
                },
              ],
              code: 'other',
              reason: 'slip',
            },
            stamp: touchAt((last ?? entries[entries.length - 1])?.wall ?? 0),
          },
        ]);
        if (amendment === undefined) throw new RangeError('an amendment must be sealed');
        last = amendment;
        replaces = [...replaces, amendment.id];
        estimate = liveEstimate(flight.add([amendment]));
        seen.set(`${value}${queried}`, estimate);
      }
      counts.kept += estimate.kind === 'notYet' ? 1 : 0;
      counts.struck += estimate.kind === 'struck' ? 1 : 0;
      if (estimate.kind === 'value') {
        counts.stands += 1;
        counts.worstPoints = Math.max(counts.worstPoints, Math.abs(percentOf(estimate) - truth));
      }
    }
    return { name, ...counts };
  });
}

function percentOf(estimate: LiveEstimate): number {
  return estimate.kind === 'value' || estimate.kind === 'struck'
    ? estimate.fuel.fraction * 100
    : Number.NaN;
}

const inFlight = slipsInFlight();

describe('the same slips in the live figure of flight A', () => {
  it.each(inFlight)('$name: kept out, struck or bounded, never lost', (each) => {
    expect(each.kept + each.struck + each.stands).toBe(SLIPS_A_CLASS);
    // One engine of two, 8 % of half the flow, of which the figure takes what is left of the baseline: below 4 points.
    expect(each.worstPoints).toBeLessThan(4);
  });

  it.each(['ten times, leading zero', 'a tenth, one zero more', 'digit missing'])(
    '%s never reaches it',
    (name) => {
      expect(inFlight.find((each) => each.name === name)).toMatchObject({ struck: 0, stands: 0 });
    },
  );
});

afterAll(() => {
  const rows = outcomes.map((each) => {
    const live = inFlight.find(({ name }) => name === each.name);
    return [
      each.name.padEnd(24),
      ...[each.queried, each.offered, each.passed, each.unchanged].map((n) =>
        String(n).padStart(8),
      ),
      `${(each.worstFraction * 100).toFixed(1)} %`.padStart(9),
      ...[live?.kept, live?.struck, live?.stands].map((n) => String(n ?? 0).padStart(8)),
      `${(live?.worstPoints ?? 0).toFixed(1)}`.padStart(9),
    ].join('');
  });
  const head = `${'slip, 1 000 of each'.padEnd(24)}  queried offered  passes harmless    worst|  kept out struck  stands   points`;
  process.stdout.write(`\n${[head, ...rows].join('\n')}\n`);
});
