import { describe, expect, it } from 'vitest';
import { fuelBalance } from '../../../src/analysis/fuel/balance.ts';
import type {
  FuelBalance,
  FuelPair,
  FuelSource,
} from '../../../src/analysis/fuel/balanceResults.ts';
import type { FlightSheet } from '../../../src/record/sheet.ts';
import { answerOf, reasonOf } from '../encounters/reading.ts';
import {
  atS,
  burntLb,
  changed,
  DOWN_S,
  flightOf,
  POUND_KG,
  say,
  SHUT_S,
  STAGES,
  steadyLines,
  TANK_START_LB,
  unread,
  type Line,
} from './steadyFlight.ts';

const BURNT_LB = 2 * burntLb(STAGES, SHUT_S) + burntLb(STAGES, SHUT_S, 'unitLbPerH');

function booksOf(lines: readonly Line[], sheet?: FlightSheet): FuelBalance {
  return fuelBalance(flightOf(lines, sheet));
}

function pairOf({ pairs }: FuelBalance, one: FuelSource, other: FuelSource): FuelPair {
  const pair = pairs.find((candidate) => candidate.one === one && candidate.other === other);
  if (pair === undefined) throw new Error(`${one} and ${other} must be compared`);
  return answerOf(pair.compared);
}

function whyNot({ pairs }: FuelBalance, one: FuelSource, other: FuelSource): string {
  const pair = pairs.find((candidate) => candidate.one === one && candidate.other === other);
  if (pair === undefined) throw new Error(`${one} and ${other} must be compared`);
  return reasonOf(pair.compared);
}

/** The tank gauges read so much more at the end. */
function restReadsMore(lb: number, lines: readonly Line[] = steadyLines()): readonly Line[] {
  return changed(lines, (line) =>
    line.kind === 'engineShutDown'
      ? {
          ...line,
          body: {
            ...line.body,
            readings: (line.body?.readings ?? []).map((row) =>
              row.instrument === 'TANK' ? { ...row, value: row.value + lb } : row,
            ),
          },
        }
      : line,
  );
}

const tank = (afterS: number, lb: number): Line =>
  say(afterS, 'fuelStateRead', { readings: [{ instrument: 'TANK', value: lb, unit: 'lb' }] });

describe('books that balance', () => {
  const books = booksOf(steadyLines());

  it('have counters and tanks say the same over the time the engines ran', () => {
    const { differenceKg, from, to } = pairOf(books, 'counters', 'tanks');
    expect(differenceKg).toBeCloseTo(0, 6);
    expect([from, to]).toEqual([atS(0), atS(SHUT_S)]);
    expect(answerOf(books.used.counters).kg / POUND_KG).toBeCloseTo(BURNT_LB, 6);
    expect(answerOf(books.used.tanks).kg / POUND_KG).toBeCloseTo(BURNT_LB, 6);
  });

  it('have the gauges agree over the cruise, with a doubt for what nobody saw', () => {
    const { from, to, differenceKg, standardUncertaintyKg, agrees } = pairOf(
      books,
      'flow',
      'counters',
    );
    // From the first reading of TP01 to the last of TP03.
    expect([from, to]).toEqual([atS(1860), atS(7500)]);
    expect(agrees).toBe(true);
    // Unseen: suction coming on between 2100 and 3660 s and going off between 6000 and 7260 s, 600 lb/h apart. A line
    // through either change is wrong by at most half of that.
    expect(Math.abs(differenceKg / POUND_KG)).toBeLessThan((300 * (1560 + 1260)) / 3600);
    const gapsLb = Math.hypot(1560, 1260) * (600 / 3600 / Math.sqrt(12));
    expect(standardUncertaintyKg / POUND_KG).toBeGreaterThan(gapsLb);
    expect(standardUncertaintyKg / POUND_KG).toBeLessThan(1.2 * gapsLb);
    expect(books.verdict).toEqual({ kind: 'allAgree' });
  });

  it('say which sources have no time in common', () => {
    expect(whyNot(books, 'flow', 'tanks')).toBe('noCommonTime');
    expect(whyNot(books, 'tanks', 'uplift')).toBe('sourceMissing');
  });

  it('compare gauges and tanks where the tanks were read twice in the cruise', () => {
    const lines = [
      ...steadyLines(),
      tank(2000, TANK_START_LB - 2 * burntLb(STAGES, 2000)),
      tank(7400, TANK_START_LB - 2 * burntLb(STAGES, 7400) - 80),
    ];
    const { from, to, agrees } = pairOf(booksOf(lines), 'flow', 'tanks');
    expect([from, to]).toEqual([atS(2000), atS(7400)]);
    expect(agrees).toBe(true);
  });
});

describe('books that do not', () => {
  it('name the tanks: gauges and counters agree and could not, were the counters off by that much', () => {
    // 1000 lb of 6547 lb would be 15 % of what was counted in the cruise too.
    expect(booksOf(restReadsMore(1000)).verdict).toEqual({ kind: 'oddOneOut', odd: 'tanks' });
  });

  it('name nobody where the gauges are too coarse to take a side', () => {
    const books = booksOf(restReadsMore(150));
    expect(pairOf(books, 'counters', 'tanks').agrees).toBe(false);
    expect(pairOf(books, 'flow', 'counters').agrees).toBe(true);
    expect(books.verdict).toEqual({ kind: 'nobodyCanTell' });
  });

  it('name nobody where only two can be compared', () => {
    const noFlow = changed(restReadsMore(1000), (line) => unread(line, 'FF1'));
    expect(booksOf(noFlow).verdict).toEqual({ kind: 'nobodyCanTell' });
  });

  it('name the gauges where the tanks bear out the counters', () => {
    const off = changed(steadyLines(), (line) => ({
      ...line,
      body: {
        ...line.body,
        ...(line.body?.readings && {
          readings: line.body.readings.map((row) =>
            row.instrument.startsWith('FF') ? { ...row, value: row.value * 1.3 } : row,
          ),
        }),
      },
    }));
    expect(booksOf(off).verdict).toEqual({ kind: 'oddOneOut', odd: 'flow' });
  });
});

describe('uplift after the flight', () => {
  const refilled = (amount: object, also: object = {}): readonly Line[] => [
    ...steadyLines(),
    say(SHUT_S + 1800, 'fuelUplifted', { amount, docket: 'D-114', ...also }),
    tank(SHUT_S + 2000, TANK_START_LB),
  ];

  it('says what was burnt, by what it takes to fill the tanks again', () => {
    const books = booksOf(refilled({ value: BURNT_LB, unit: 'lb' }));
    expect(answerOf(books.used.uplift).kg / POUND_KG).toBeCloseTo(BURNT_LB, 6);
    expect(pairOf(books, 'counters', 'uplift').agrees).toBe(true);
    expect(pairOf(books, 'tanks', 'uplift').differenceKg).toBeCloseTo(0, 6);
    // The tanks of the flight itself end before it.
    expect(answerOf(books.used.tanks).kg / POUND_KG).toBeCloseTo(BURNT_LB, 6);
  });

  it('takes a volume with its density', () => {
    const gallons = { value: BURNT_LB / 6.7, unit: 'USgal' };
    const books = booksOf(refilled(gallons, { density: { value: 6.7, unit: 'lb/USgal' } }));
    expect(answerOf(books.used.uplift).kg / POUND_KG).toBeCloseTo(BURNT_LB, 6);
    const litres = { value: (BURNT_LB * POUND_KG) / 0.8, unit: 'l' };
    const metric = booksOf(refilled(litres, { density: { value: 0.8, unit: 'kg/l' } }));
    expect(answerOf(metric.used.uplift).kg / POUND_KG).toBeCloseTo(BURNT_LB, 6);
  });

  it('is no mass without a density, not even with that of the fuel before it', () => {
    const preflight = say(-1800, 'preflightDone', {
      fuelDensity: { value: 6.7, unit: 'lb/USgal' },
    });
    const books = booksOf([preflight, ...refilled({ value: 900, unit: 'USgal' })]);
    expect(reasonOf(books.used.uplift)).toBe('noDensity');
  });

  it('is no fuel in a unit of something else', () => {
    expect(reasonOf(booksOf(refilled({ value: 900, unit: 'ft' })).used.uplift)).toBe('unitUnknown');
  });

  it('says nothing where the tanks were not read after it', () => {
    const lines = refilled({ value: BURNT_LB, unit: 'lb' }).slice(0, -1);
    expect(reasonOf(booksOf(lines).used.uplift)).toBe('tanksNotReadAboutUplift');
  });

  it('bears out the counters against tank gauges that were off at the end', () => {
    const lines = restReadsMore(600, refilled({ value: BURNT_LB, unit: 'lb' }));
    expect(booksOf(lines).verdict).toEqual({ kind: 'oddOneOut', odd: 'tanks' });
  });
});

describe('uplift before the flight', () => {
  const loaded = (body: object): readonly Line[] => [
    tank(-3000, 4000),
    say(-2400, 'fuelUplifted', body),
    ...steadyLines(),
  ];

  it('stands beside what the tank gauges say came in', () => {
    const { pairs, used } = booksOf(loaded({ amount: { value: 6000, unit: 'lb' } }));
    const pair = pairs.find(({ one, other }) => one === 'uplift' && other === 'tanks');
    expect(pair && answerOf(pair.compared).differenceKg).toBeCloseTo(0, 6);
    // It was there before the engines started, so it is no part of what the flight burnt.
    expect(reasonOf(used.uplift)).toBe('noUplift');
    expect(answerOf(used.tanks).kg / POUND_KG).toBeCloseTo(BURNT_LB, 6);
  });

  it('takes the density of the preflight sample, and names another temperature', () => {
    const preflight = say(-1800, 'preflightDone', {
      fuelDensity: { value: 0.8, unit: 'kg/l' },
      fuelTemperature: { value: 15, unit: 'degC' },
    });
    const amount = { value: (6000 * POUND_KG) / 0.8, unit: 'l' };
    const withSample = (temperature: number): FuelBalance =>
      booksOf([
        ...loaded({ amount, temperature: { value: temperature, unit: 'degC' } }),
        preflight,
      ]);
    const brokenAt = (temperature: number): readonly string[] => {
      const pair = withSample(temperature).pairs.find(({ one }) => one === 'uplift');
      if (pair?.compared.kind !== 'answer') throw new Error('it must be compared');
      expect(pair.compared.value.differenceKg).toBeCloseTo(0, 6);
      return pair.compared.how.broken;
    };
    expect(brokenAt(17)).toEqual([]);
    expect(brokenAt(30)).toEqual(['densityAtOtherTemperature']);
  });
});

describe('a source that cannot be had', () => {
  it('is a flow with half an hour unseen', () => {
    const lines = changed(steadyLines(), (line) =>
      line.kind === 'fuelRead' && line.atS > 3700 && line.atS < 7000 ? null : line,
    );
    expect(reasonOf(booksOf(lines).used.flow)).toBe('tooSparse');
  });

  it('is a flow never read, or read once', () => {
    const never = changed(steadyLines(), (line) => (line.kind === 'fuelRead' ? null : line));
    expect(reasonOf(booksOf(never).used.flow)).toBe('noReading');
    const once = changed(steadyLines(), (line) =>
      line.kind === 'fuelRead' && line.atS !== 1860 ? null : line,
    );
    expect(reasonOf(booksOf(once).used.flow)).toBe('oneReading');
  });

  it('is tanks read once', () => {
    const lines = changed(steadyLines(), (line) =>
      line.atS < DOWN_S ? unread(line, 'TANK') : line,
    );
    const sheetless = booksOf(lines, withoutRampFuel());
    expect(reasonOf(sheetless.used.tanks)).toBe('tanksNotRead');
  });

  it('is not tanks whose start stands on the flight sheet: it is used, and named', () => {
    const lines = changed(steadyLines(), (line) =>
      line.atS < DOWN_S ? unread(line, 'TANK') : line,
    );
    const { used } = booksOf(lines);
    expect(used.tanks.kind === 'answer' && used.tanks.how.broken).toEqual(['startNotGauged']);
    expect(answerOf(used.tanks).kg / POUND_KG).toBeCloseTo(BURNT_LB, 6);
  });

  it('is counters that were never read, or go back', () => {
    const unreadCounters = changed(steadyLines(), (line) => unread(line, 'FU1'));
    expect(reasonOf(booksOf(unreadCounters).used.counters)).toBe('countersNotRead');
    const back = changed(steadyLines(), (line) =>
      line.kind === 'engineShutDown'
        ? {
            ...line,
            body: {
              ...line.body,
              readings: [
                { instrument: 'FU1', value: -5, unit: 'lb' },
                { instrument: 'FU2', value: 3400, unit: 'lb' },
                { instrument: 'FUS', value: 80, unit: 'lb' },
              ],
            },
          }
        : line,
    );
    expect(reasonOf(booksOf(back).used.counters)).toBe('counterWentBack');
  });
});

function withoutRampFuel(): FlightSheet {
  const view = flightOf(steadyLines());
  const { sheet } = view.state;
  if (sheet === null) throw new Error('the flight must have a sheet');
  const { rampFuel: _, ...weights } = sheet.weights;
  return { ...sheet, weights };
}
