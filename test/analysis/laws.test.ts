import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardProgress, nextCard, reflyList } from '../../src/analysis/cards.ts';
import { comparisons } from '../../src/analysis/comparisons.ts';
import { cardsFlown } from '../../src/analysis/completion.ts';
import { liveEstimate, liveEstimateOf, liveHistory } from '../../src/analysis/liveEstimate.ts';
import type { LiveEstimate, PointResult } from '../../src/analysis/results.ts';
import { suspicions } from '../../src/analysis/suspicions.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import { epochMs } from '../../src/record/brand.ts';
import type { Entry, Reading } from '../../src/record/entry.ts';
import { startFlight, type FlightView } from '../../src/record/flight.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { items } from '../../src/record/trail.ts';
import {
  bodyOf,
  flightA,
  rewritten,
  sealed,
  sheetA,
  touchAt,
  viewOfEntries,
  without,
  withSheet,
} from './flights.ts';
import { metricSheet, metricBody } from './metric.ts';

/** For a machine that does other work as well. */
const SLOW_MS = 60_000;

const whole = viewOfEntries(flightA.entries);

function fuelGlances(view: FlightView): readonly number[] {
  return [...items(view.state.glances)].flatMap(({ readings }, index) =>
    readings['FF1'] === undefined ? [] : [index],
  );
}

/** Numbers and reasons only: two records of one flight differ in ids. */
function numbersOf(results: LiveEstimate | readonly PointResult[]): unknown {
  return JSON.parse(
    JSON.stringify(results, (key, value: unknown) => (key === 'entries' ? undefined : value)),
  );
}

describe('order of writing', () => {
  it(
    'never changes a result',
    () => {
      const resultsOf = (view: FlightView): object => ({
        live: liveEstimate(view),
        points: pointResults(view),
        cards: cardProgress(view),
        compared: comparisons(view),
        flown: cardsFlown(view),
        suspected: suspicions(view),
      });
      const expected = resultsOf(whole);
      fc.assert(
        fc.property(
          fc.shuffledSubarray([...flightA.entries], { minLength: flightA.entries.length }),
          fc.nat({ max: 4 }),
          (entries, pieces) => {
            const flight = startFlight();
            const size = Math.ceil(entries.length / (pieces + 1));
            for (let from = 0; from < entries.length; from += size) {
              flight.add(entries.slice(from, from + size));
            }
            expect(resultsOf(flight.view())).toEqual(expected);
          },
        ),
        { numRuns: 10 },
      );
    },
    SLOW_MS,
  );
});

describe('a withdrawn reading', () => {
  const readings = flightA.entries.filter((entry) => entry.kind === 'fuelRead');

  it(
    'counts as never made',
    () => {
      fc.assert(
        fc.property(fc.constantFrom(...readings), (reading) => {
          const tail = flightA.entries.at(-1);
          if (tail === undefined) throw new RangeError('the flight must have entries');
          const withdrawal: Entry | undefined = sealed([
            {
              kind: 'entryWithdrawn',
              body: { target: reading.id, reason: 'not meant' },
              stamp: touchAt(tail.wall + 60_000),
            },
          ])[0];
          if (withdrawal === undefined) throw new RangeError('a withdrawal must be sealed');
          const moved = rewritten([...flightA.entries, withdrawal], bodyOf);
          const never = without(
            flightA.entries,
            (entry) =>
              entry.id === reading.id ||
              (entry.kind === 'entryAmended' && entry.body.target === reading.id),
          );
          const a = viewOfEntries(moved);
          const b = viewOfEntries(never);
          expect(numbersOf(liveEstimate(a))).toEqual(numbersOf(liveEstimate(b)));
          expect(numbersOf(pointResults(a))).toEqual(numbersOf(pointResults(b)));
        }),
        { numRuns: 8 },
      );
    },
    SLOW_MS,
  );
});

describe('an amended reading', () => {
  const readings = flightA.entries.filter(
    (entry) =>
      entry.kind === 'fuelRead' &&
      !flightA.entries.some(
        (other) => other.kind === 'entryAmended' && other.body.target === entry.id,
      ),
  );

  it(
    'counts as read so',
    () => {
      fc.assert(
        fc.property(
          fc.constantFrom(...readings),
          fc.constantFrom('FF1', 'FF2', 'MACH', 'ALT', 'SAT', 'FU1'),
          fc.integer({ min: -3, max: 3 }),
          (reading, gauge, steps) => {
            const tail = flightA.entries.at(-1);
            if (tail === undefined || reading.kind !== 'fuelRead')
              throw new RangeError('no flight');
            const row = reading.body.readings?.find(({ instrument }) => instrument === gauge);
            const resolution = sheetA.instruments.find(({ id }) => id === gauge)?.resolution ?? 0;
            fc.pre(row !== undefined && 'value' in row);
            const old = 'value' in row ? row.value : 0;
            const value = old + steps * resolution;
            const amendment = sealed([
              {
                kind: 'entryAmended',
                body: {
                  target: reading.id,
                  replaces: [],
                  changes: [{ field: `readings.${gauge}.value`, old, new: value }],
                  code: 'misKeyed',
                  reason: 'photo panel',
                },
                stamp: touchAt(tail.wall + 60_000),
              },
            ]);
            const readSo = rewritten(flightA.entries, (entry) =>
              entry.id === reading.id && entry.kind === 'fuelRead'
                ? {
                    ...entry.body,
                    readings: entry.body.readings?.map((one) =>
                      one.instrument === gauge ? { ...one, value } : one,
                    ),
                  }
                : bodyOf(entry),
            );
            const a = viewOfEntries(rewritten([...flightA.entries, ...amendment], bodyOf));
            const b = viewOfEntries(readSo);
            expect(numbersOf(liveEstimate(a))).toEqual(numbersOf(liveEstimate(b)));
            expect(numbersOf(pointResults(a))).toEqual(numbersOf(pointResults(b)));
          },
        ),
        { numRuns: 12 },
      );
    },
    SLOW_MS,
  );
});

describe('a scale error that all gauges share', () => {
  /** With no corrections and no rates the total is the gauge alone, so that the scale is exact. */
  const plain: FlightSheet = {
    ...sheetA,
    instruments: sheetA.instruments.map((gauge) =>
      gauge.quantity === 'fuelFlow' ? { ...gauge, calibration: { correction: 0 } } : gauge,
    ),
  };

  function scaled(factor: number): FlightView {
    const row = (reading: Reading): Reading => {
      if (!('value' in reading)) return reading;
      if (reading.instrument === 'FF1' || reading.instrument === 'FF2') {
        return { ...reading, value: reading.value * factor };
      }
      const rate = reading.instrument === 'MDRIFT' || reading.instrument === 'CLIMB';
      return rate ? { ...reading, value: 0 } : reading;
    };
    const entries = rewritten(withSheet(flightA.entries, plain), (entry) =>
      'body' in entry && entry.body.readings !== undefined
        ? { ...entry.body, readings: entry.body.readings.map(row) }
        : bodyOf(entry),
    );
    return viewOfEntries(
      without(entries, ({ kind }) => kind === 'entryAmended' || kind === 'calibrationChecked'),
    );
  }

  it(
    'leaves every reduction as it is',
    () => {
      const reductions = (view: FlightView): readonly number[] =>
        pointResults(view).flatMap(({ result }) =>
          'fuel' in result ? [result.fuel.fraction] : [],
        );
      const asRead = reductions(scaled(1));
      expect(asRead.length).toBe(8);
      fc.assert(
        fc.property(fc.double({ min: 0.97, max: 1.03, noNaN: true }), (factor) => {
          reductions(scaled(factor)).forEach((fraction, index) => {
            expect(fraction).toBeCloseTo(asRead[index] ?? NaN, 12);
          });
        }),
        { numRuns: 8 },
      );
    },
    SLOW_MS,
  );
});

describe('the same flight in metric units', () => {
  const metric = viewOfEntries(
    rewritten(flightA.entries, (entry) =>
      entry.kind === 'flightOpened'
        ? { ...entry.body, sheet: metricSheet(sheetA) }
        : metricBody(entry, sheetA),
    ),
  );

  it('gives the same percentages and intervals at every reading', () => {
    const glances = fuelGlances(whole);
    expect(fuelGlances(metric)).toEqual(glances);
    expect(glances.length).toBe(31);
    for (const glance of glances) {
      const a = liveEstimateOf(whole, glance);
      const b = liveEstimateOf(metric, glance);
      expect(b.kind).toBe(a.kind);
      if ('fuel' in a && 'fuel' in b) {
        expect(b.fuel.fraction).toBeCloseTo(a.fuel.fraction, 10);
        expect(b.fuel.interval95.low).toBeCloseTo(a.fuel.interval95.low, 10);
        expect(b.broken).toEqual(a.broken);
      }
    }
  });

  it('gives the same results after landing', () => {
    const fractions = (view: FlightView): readonly number[] =>
      pointResults(view).flatMap(({ result }) =>
        'fuel' in result ? [result.fuel.fraction, result.netFraction ?? NaN] : [],
      );
    fractions(metric).forEach((fraction, index) => {
      expect(fraction).toBeCloseTo(fractions(whole)[index] ?? NaN, 10);
    });
  });
});

describe('readings and flight sheets that make no sense', () => {
  const anyNumber = fc.oneof(
    // Seven boxes are the most a pad or a form has.
    fc.double({ noNaN: true, min: -1e7, max: 1e7 }),
    fc.constantFrom(0, -1, 1e-300, 90_000),
    fc.integer({ min: -2000, max: 50_000 }),
  );
  const gauges = sheetA.instruments.map(({ id }) => id);

  /** Every number in a value is finite, at any depth. */
  function finite(value: unknown): boolean {
    if (typeof value === 'number') return Number.isFinite(value);
    if (typeof value !== 'object' || value === null) return true;
    return Object.values(value).every(finite);
  }

  it(
    'give a number or a reason, never NaN and never an exception',
    () => {
      fc.assert(
        fc.property(
          fc.array(fc.tuple(fc.constantFrom(...gauges), fc.nat({ max: 40 }), anyNumber), {
            maxLength: 12,
          }),
          fc.record({
            doubt: anyNumber,
            slope: anyNumber,
            elasticity: anyNumber,
            resolution: fc.double({ min: 0, max: 1e6, noNaN: true }),
            mach: anyNumber,
            rampLb: anyNumber,
          }),
          fc.nat({ max: 63 }),
          (odd, junk, which) => {
            const touched = (bit: number): boolean => (which >> bit) % 2 === 1;
            const sheet: FlightSheet = {
              ...sheetA,
              ...(touched(0) && { machHoldStandardUncertainty: junk.doubt }),
              ...(touched(1) && {
                engineMap: {
                  idleFlow: { value: junk.doubt, unit: 'lb/h' },
                  flowPerThrust: { value: junk.slope, unit: 'lb/h/lbf' },
                },
              }),
              ...(touched(2) && {
                borrowedBaseline: {
                  weightElasticity: junk.elasticity,
                  standardUncertainty: junk.doubt,
                  from: 'nowhere',
                },
              }),
              ...(touched(3) && {
                instruments: sheetA.instruments.map((gauge) => ({
                  ...gauge,
                  resolution: junk.resolution,
                  repeatability: 0,
                })),
              }),
              ...(touched(4) && { condition: { ...sheetA.condition, mach: junk.mach } }),
            };
            let reading = 0;
            const entries = rewritten(withSheet(flightA.entries, sheet), (entry) => {
              if (entry.kind === 'preflightDone' && touched(5)) {
                return { ...entry.body, rampWeight: { value: junk.rampLb, unit: 'lb' } };
              }
              if (entry.kind !== 'fuelRead') return bodyOf(entry);
              const mine = odd.filter(([, at]) => at === reading);
              reading += 1;
              const rows = (entry.body.readings ?? []).map((row) => {
                const [, , value] = mine.find(([id]) => id === row.instrument) ?? [];
                return value === undefined || 'blank' in row ? row : { ...row, value };
              });
              return { ...entry.body, readings: rows };
            });
            const view = viewOfEntries(entries);
            expect(pointResults(view).every(finite)).toBe(true);
            expect(liveHistory(view, epochMs(0)).every(finite)).toBe(true);
            expect(cardProgress(view).length).toBe(9);
          },
        ),
        { numRuns: 40 },
      );
    },
    SLOW_MS,
  );
});

describe('the trend', () => {
  it('holds every fuel reading since an instant, oldest first, as each alone would show it', () => {
    const since = epochMs(Date.parse('2032-06-02T23:30:00Z'));
    const history = liveHistory(whole, since);
    const expected = fuelGlances(whole)
      .map((glance) => liveEstimateOf(whole, glance))
      .filter(({ at }) => at !== null && at >= since);
    expect(history).toEqual(expected);
    expect(history.length).toBeGreaterThan(10);
  });
});

describe('a longer record', () => {
  /** A view that counts how many chunks of glances were opened. */
  function counted(view: FlightView): { readonly view: FlightView; readonly opened: () => number } {
    let opened = 0;
    const { glances } = view.state;
    const chunks = new Proxy(glances.chunks, {
      get: (target, key, receiver): unknown => {
        if (typeof key === 'string' && /^\d+$/.test(key)) opened += 1;
        return Reflect.get(target, key, receiver);
      },
    });
    return {
      view: { ...view, state: { ...view.state, glances: { ...glances, chunks } } },
      opened: () => opened,
    };
  }

  it(
    'does not make the live figure look at more of it',
    () => {
      const last = flightA.entries.filter((entry) => entry.kind === 'fuelRead').at(-6);
      if (last === undefined) throw new RangeError('the flight must have readings');
      const until = flightA.entries.slice(0, flightA.entries.indexOf(last) + 1);
      const repeated = (times: number): FlightView =>
        viewOfEntries([
          ...until,
          ...sealed(
            Array.from({ length: times }, (_, index) => ({
              kind: 'fuelRead' as const,
              body: last.kind === 'fuelRead' ? { readings: last.body.readings ?? [] } : {},
              stamp: touchAt(last.wall + (index + 1) * 1000),
            })),
          ),
        ]);
      const few = counted(repeated(60));
      const many = counted(repeated(1200));
      expect(liveEstimate(few.view).kind).toBe('value');
      expect(liveEstimate(many.view).kind).toBe('value');
      expect(many.opened()).toBeLessThanOrEqual(few.opened() * 1.1);
    },
    SLOW_MS,
  );
});

describe('cards of flight A', () => {
  it('are complete but for the one that the pilot stopped', () => {
    const states = Object.fromEntries(
      cardProgress(whole).map(({ point, state }) => [point, state]),
    );
    expect(states['TP06']).toBe('terminated');
    expect(Object.values(states).filter((state) => state === 'complete').length).toBe(8);
  });

  it('to fly again: TP06, and nothing else', () => {
    expect(reflyList(whole)).toEqual([{ point: 'TP06', priority: 3, because: 'terminated' }]);
    expect(nextCard(whole)?.point).toBe('TP06');
  });

  it('come one after the other', () => {
    const flight = startFlight();
    const order: string[] = [];
    for (const entry of flightA.entries) {
      const view = flight.add([entry]);
      if (entry.kind === 'testPointStarted' || entry.kind === 'flightOpened') {
        order.push(nextCard(view)?.point ?? '');
      }
    }
    expect(order).toEqual([
      'TP01',
      'TP01',
      'TP02',
      'TP03',
      'TP04',
      'TP04',
      'TP05',
      'TP06',
      'TP07',
      'TP08',
      'TP09',
    ]);
  });
});
