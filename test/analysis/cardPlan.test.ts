import { describe, expect, it } from 'vitest';
import { cardPlan, type CardPlan } from '../../src/analysis/cardPlan.ts';
import { cardProgress, nextCard } from '../../src/analysis/cards.ts';
import type { Draft, Entry } from '../../src/record/entry.ts';
import type { Measure } from '../../src/record/measure.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { entriesUntil } from '../flights/scriptToEntries.ts';
import { flightA, sealed, sheetA, touchAt, viewOfEntries, withSheet } from './flights.ts';

const KG_PER_LB = 0.45359237;
const lb = (value: number): Measure => ({ value, unit: 'lb' });
const pounds = (massKg: number | null): number | null =>
  massKg === null ? null : Math.round(massKg / KG_PER_LB);

const LEFT: FlightSheet['instruments'][number] = {
  id: 'FREM',
  name: 'fuel remaining',
  quantity: 'fuelRemaining',
  unit: 'lb',
  format: { wholeDigits: 5, decimals: 0, signed: false },
  resolution: 10,
  calibration: { correction: 0 },
  serviceable: true,
};

/** Three cards of 300, 250 and 200 lb, wanted in the order 3, 1, 2, and a gauge that shows what is left. */
function sheetWith(joker: Measure | null): FlightSheet {
  const [first] = sheetA.testCards;
  if (first === undefined) throw new RangeError('the flight sheet must have a card');
  const { joker: _joker, ...limits } = sheetA.limits;
  return {
    ...sheetA,
    limits: { ...limits, ...(joker !== null && { joker }) },
    instruments: [...sheetA.instruments, LEFT],
    testCards: [
      { ...first, id: 'A', order: 1, priority: 2, expectedFuel: lb(300) },
      { ...first, id: 'B', order: 2, priority: 3, expectedFuel: lb(250) },
      { ...first, id: 'C', order: 3, priority: 1, expectedFuel: lb(200) },
    ],
  };
}

function flownTo(leftLb: number | null, joker: Measure | null = lb(2000)): readonly Entry[] {
  const at = Date.parse('2032-06-02T22:00:00Z');
  const drafts: readonly Draft[] = [
    {
      kind: 'flightOpened',
      body: {
        nature: 'practice',
        title: 'plan',
        date: '2032-06-02',
        device: 'tablet',
        sheet: sheetWith(joker),
      },
      stamp: touchAt(at),
    },
    ...(leftLb === null
      ? []
      : [
          {
            kind: 'fuelStateRead' as const,
            body: { readings: [{ instrument: 'FREM', value: leftLb, unit: 'lb' as const }] },
            stamp: touchAt(at + 60_000),
          },
        ]),
  ];
  return sealed(drafts);
}

function planOf(entries: readonly Entry[]): CardPlan {
  const view = viewOfEntries(entries);
  return cardPlan(view, cardProgress(view));
}

describe('the cards against what is left', () => {
  it('enough for all: 750 lb wanted, 1 000 above joker; the cards keep their order', () => {
    const plan = planOf(flownTo(3000));
    expect(plan).toMatchObject({ verdict: 'enough', unknown: 0, left: { from: 'gauge' } });
    expect([pounds(plan.neededKg), pounds(plan.aboveJokerKg)]).toEqual([750, 1000]);
    expect(nextCard(viewOfEntries(flownTo(3000)))?.point).toBe('A');
  });

  it('short: the most wanted come first, and one that does not fit leaves its fuel to the next', () => {
    // 480 above joker: C takes 200, A would take 300 of the 280 left, B takes 250.
    const plan = planOf(flownTo(2480));
    expect(plan.verdict).toBe('short');
    expect(plan.wanted.map(({ point, fits }) => [point, fits])).toEqual([
      ['C', true],
      ['A', false],
      ['B', true],
    ]);
    expect(nextCard(viewOfEntries(flownTo(2480)))?.point).toBe('C');
  });

  it('says so when nothing fits any more, and the order of the cards stands', () => {
    const plan = planOf(flownTo(1900));
    expect(plan.verdict).toBe('short');
    expect(pounds(plan.aboveJokerKg)).toBe(-100);
    expect(plan.wanted.every(({ fits }) => fits === false)).toBe(true);
    expect(nextCard(viewOfEntries(flownTo(1900)))?.point).toBe('A');
  });

  it.each([
    ['nobody read what is left', flownTo(null)],
    ['there is no joker', flownTo(3000, null)],
  ])('is unknown where %s', (_why, entries) => {
    const plan = planOf(entries);
    expect(plan.verdict).toBe('unknown');
    expect(plan.wanted.every(({ fits }) => fits === null)).toBe(true);
  });
});

describe('what is left without a gauge for it', () => {
  it('is the gross weight less the weight without fuel', () => {
    const view = viewOfEntries(withSheet(entriesUntil(flightA, 81), sheetA));
    const { left } = cardPlan(view, cardProgress(view));
    const ramp = sheetA.weights.ramp?.value ?? Number.NaN;
    const empty = sheetA.weights.zeroFuel?.value ?? Number.NaN;
    const burnt = Object.values(view.state.counters).reduce(
      (total, { reading }) => total + ('value' in reading ? reading.value : 0),
      0,
    );
    expect(left?.from).toBe('weight');
    // The counters were read some minutes before the newest flow, which carries them on: below 200 lb.
    expect(Math.abs((pounds(left?.massKg ?? null) ?? 0) - (ramp - empty - burnt))).toBeLessThan(
      200,
    );
  });
});
