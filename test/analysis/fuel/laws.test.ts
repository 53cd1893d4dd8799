import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectedDrag } from '../../../src/analysis/coverage/expectedDrag.ts';
import { laminarByTime } from '../../../src/analysis/coverage/laminarByTime.ts';
import { fuelBalance } from '../../../src/analysis/fuel/balance.ts';
import { flowBesideCounters } from '../../../src/analysis/fuel/flowBesideCounters.ts';
import { labour } from '../../../src/analysis/fuel/labour.ts';
import { suctionSpans } from '../../../src/analysis/fuel/spans.ts';
import type { Entry } from '../../../src/record/entry.ts';
import type { FlightView } from '../../../src/record/flight.ts';
import type { FlightSheet } from '../../../src/record/sheet.ts';
import { flightA, rewritten, sheetA, viewOfEntries, withSheet } from '../flights.ts';
import { metricBody, metricSheet } from '../metric.ts';

/** For a machine that does other work as well. */
const SLOW_MS = 120_000;

const stated: FlightSheet = {
  ...sheetA,
  aircraft: {
    ...sheetA.aircraft,
    treatedDragShare: { fraction: 0.6, standardUncertainty: 0.05, from: 'invented' },
  },
};
const entriesA = withSheet(flightA.entries, stated);

interface Results {
  readonly spans: ReturnType<typeof suctionSpans>;
  readonly flows: ReturnType<typeof flowBesideCounters>;
  readonly balance: ReturnType<typeof fuelBalance>;
  readonly labour: ReturnType<typeof labour>;
  readonly laminar: ReturnType<typeof laminarByTime>;
  readonly expected: ReturnType<typeof expectedDrag>;
}

function resultsOf(view: FlightView): Results {
  return {
    spans: suctionSpans(view),
    flows: flowBesideCounters(view),
    balance: fuelBalance(view),
    labour: labour(view),
    laminar: laminarByTime(view),
    expected: expectedDrag(view),
  };
}

const whole = resultsOf(viewOfEntries(entriesA));

/** Every number of a result by its place, entry ids left out: they name the writing, not what was written. */
function numbersOf(value: unknown, path = ''): ReadonlyMap<string, unknown> {
  if (typeof value !== 'object' || value === null) return new Map([[path, value]]);
  const numbers = new Map<string, unknown>();
  for (const [key, item] of Object.entries(value)) {
    if (key === 'entries') continue;
    for (const [place, leaf] of numbersOf(item, `${path}.${key}`)) numbers.set(place, leaf);
  }
  return numbers;
}

describe('fuel and coverage', () => {
  it(
    'do not depend on the order in which entries arrive',
    () => {
      fc.assert(
        fc.property(
          fc.shuffledSubarray([...entriesA], { minLength: entriesA.length }),
          (shuffled) => {
            expect(resultsOf(viewOfEntries(shuffled))).toEqual(whole);
          },
        ),
        { numRuns: 8 },
      );
    },
    SLOW_MS,
  );

  it('say the same of a flight written in metric units', () => {
    const metric = rewritten(entriesA, (entry) =>
      entry.kind === 'flightOpened'
        ? { ...entry.body, sheet: metricSheet(stated) }
        : metricBody(entry, stated),
    );
    const imperial = numbersOf(whole);
    const found = numbersOf(resultsOf(viewOfEntries(metric)));
    expect([...found.keys()]).toEqual([...imperial.keys()]);
    for (const [place, expected] of imperial) {
      const actual = found.get(place);
      if (typeof expected !== 'number' || typeof actual !== 'number') {
        expect(actual, place).toEqual(expected);
        continue;
      }
      const scale = Math.max(Math.abs(expected), 1e-6);
      expect(Math.abs(actual - expected) / scale, place).toBeLessThan(1e-6);
    }
    expect(imperial.size).toBeGreaterThan(300);
  });

  it(
    'give a number or a reason for any part of a flight, and never NaN',
    () => {
      const finite = (value: unknown): boolean =>
        [...numbersOf(value).values()].every(
          (leaf) => typeof leaf !== 'number' || Number.isFinite(leaf),
        );
      fc.assert(
        fc.property(partOfFlight(entriesA), (part) => {
          expect(finite(resultsOf(viewOfEntries(part)))).toBe(true);
        }),
        { numRuns: 60 },
      );
    },
    SLOW_MS,
  );
});

/** The opening and any of the rest: counters, switches, calls and runs go missing in every way. */
function partOfFlight(entries: readonly Entry[]): fc.Arbitrary<readonly Entry[]> {
  const [opened, ...rest] = entries;
  if (opened === undefined) throw new Error('the flight must be opened');
  return fc.subarray(rest).map((part) => [opened, ...part]);
}
