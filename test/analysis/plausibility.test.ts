import { describe, expect, it } from 'vitest';
import { judgeReading, type Judgement } from '../../src/analysis/plausibility.ts';
import { historyOf } from '../../src/analysis/readingHistory.ts';
import { epochMs } from '../../src/record/brand.ts';
import type { Instrument } from '../../src/record/sheet.ts';
import { flightA, sheetA, viewOfEntries } from './flights.ts';

const ff: Instrument = {
  id: 'FF1',
  name: 'fuel flow, engine 1',
  quantity: 'fuelFlow',
  consumer: 1,
  unit: 'kg/h',
  format: { wholeDigits: 4, decimals: 0, signed: false },
  resolution: 1,
  rangeLow: 500,
  rangeHigh: 2000,
  calibration: { correction: 0 },
  serviceable: true,
};
const steady = [1230, 1228, 1234, 1231, 1229];

function judge(value: number, history: readonly number[] = steady): Judgement {
  return judgeReading({ instrument: ff, value, history });
}

function gauge(id: string): Instrument {
  const found = sheetA.instruments.find((instrument) => instrument.id === id);
  if (found === undefined) throw new RangeError(`${id} must be on the flight sheet`);
  return found;
}

describe('the band about the last readings', () => {
  // Median 1230: 8 % is 98.4, four median deviations of 1 are 4, so the band is 1131.6 to 1328.4.
  it.each([1230, 1132, 1328])('%d raises no question', (value) => {
    expect(judge(value)).toEqual({ kind: 'fine' });
  });

  it.each([1131, 1329])('%d does', (value) => {
    expect(judge(value).kind).toBe('query');
  });

  it('is wider where the readings themselves scatter more than 8 %', () => {
    // Median 1000, deviations 0, 60, 60, 90, 100: their median 60, times four is 240.
    expect(judge(1239, [900, 940, 1000, 1060, 1090])).toEqual({ kind: 'fine' });
    expect(judge(1241, [900, 940, 1000, 1060, 1090]).kind).toBe('query');
  });

  it('uses the last five only', () => {
    expect(judge(700, [1230, 1230, 1230, 1230, 1230, 700, 700, 700, 700, 700])).toEqual({
      kind: 'fine',
    });
  });

  it('is the range of the gauge before the first reading', () => {
    expect(judge(1999, [])).toEqual({ kind: 'fine' });
    expect(judge(2001, [])).toEqual({
      kind: 'query',
      percentOff: null,
      // Swaps give 201 and 2010, both out of range; the key beside 2 gives 1001.
      candidate: 1001,
      cause: 'neighbourKey',
    });
  });

  it('says how far off in per cent', () => {
    const judged = judge(1845);
    // (1845 - 1230) / 1230.
    expect(judged.kind === 'query' && judged.percentOff).toBeCloseTo(50, 9);
  });

  it('cannot see a swap of the last two digits', () => {
    // 1 234 for 1 243 is 0.7 %: inside any honest band. Debrief lists such pairs instead.
    expect(judge(1243)).toEqual({ kind: 'fine' });
  });
});

describe('what may have been meant', () => {
  it.each([
    ['ten times too little', 123, 'tenth', 1230],
    ['ten times too much', 9990, 'timesTen', 999],
    ['two digits swapped', 2130, 'swapped', 1230],
    ['one digit dropped', 230, 'doubledOrDropped', 1230],
    ['a neighbouring key', 1530, 'neighbourKey', 1230],
  ] as const)('%s: %d', (_, value, cause, meant) => {
    const history = cause === 'timesTen' ? [1000, 1000, 1000] : steady;
    const judged = judge(value, history);
    if (judged.kind !== 'query') throw new Error(judged.kind);
    expect(judged.cause).toBe(cause);
    expect(judged.candidate).toBe(meant);
  });

  it('a digit keyed twice: 1 122 for 122', () => {
    expect(judge(1122, [121, 122, 123])).toMatchObject({
      candidate: 122,
      cause: 'doubledOrDropped',
    });
  });

  it('of several values that one cause explains, the nearest to the reference', () => {
    // 230 may have lost its 1 from 1230; 1230 is the reference itself.
    expect(judge(230)).toMatchObject({ candidate: 1230 });
  });

  it('nothing is offered where no slip explains it', () => {
    expect(judge(1900)).toMatchObject({ kind: 'query', candidate: null, cause: null });
  });

  it('the mis-keyed digit of flight A: 910 for 810', () => {
    expect(
      judgeReading({ instrument: gauge('FF2'), value: 910, history: [820, 820, 830, 810] }),
    ).toMatchObject({ kind: 'query', candidate: 810, cause: 'neighbourKey' });
  });

  it('keeps the printed point: 0.272 for 0.722', () => {
    expect(
      judgeReading({ instrument: gauge('MACH'), value: 0.272, history: [0.72, 0.721] }),
    ).toMatchObject({ kind: 'query', candidate: 0.722, cause: 'swapped' });
  });
});

describe('a real change', () => {
  it('two readings that agree outside the old band are both kept', () => {
    expect(judgeReading({ instrument: ff, value: 900, history: steady, lastQueried: 880 })).toEqual(
      { kind: 'realChange' },
    );
  });

  it('two that disagree are two questions', () => {
    expect(
      judgeReading({ instrument: ff, value: 900, history: steady, lastQueried: 1600 }).kind,
    ).toBe('query');
  });
});

describe('rates and counters', () => {
  it('a rate about zero is judged by its range alone', () => {
    const climb = gauge('CLIMB');
    expect(judgeReading({ instrument: climb, value: 110, history: [0, 0, 10] })).toEqual({
      kind: 'fine',
    });
    expect(judgeReading({ instrument: climb, value: -3100, history: [0, 0] }).kind).toBe('query');
  });

  it('a counter is judged by where the flow should have carried it', () => {
    const counter = gauge('FU1');
    const asked = { instrument: counter, history: [1107], expected: 1157 };
    expect(judgeReading({ ...asked, value: 1157 })).toEqual({ kind: 'fine' });
    // 30 % of the 50 expected is 15.
    expect(judgeReading({ ...asked, value: 1172 })).toEqual({ kind: 'fine' });
    expect(judgeReading({ ...asked, value: 1175 }).kind).toBe('query');
    expect(judgeReading({ ...asked, value: 1100 }).kind).toBe('query');
  });
});

describe('history of a gauge in flight A', () => {
  const until = (n: number): ReturnType<typeof viewOfEntries> => {
    const position = flightA.entries.findIndex((entry) => entry.id === flightA.idOf.get(n));
    return viewOfEntries(flightA.entries.slice(0, position + 1));
  };
  const at = (iso: string): ReturnType<typeof epochMs> => epochMs(Date.parse(iso));

  it('holds the readings of the run, oldest first', () => {
    const { history, lastValue } = historyOf(until(42), 'FF1', at('2032-06-02T22:48:00Z'));
    // Lines 39, 40, 42; the throttle was moved before them.
    expect(history).toEqual([880, 890, 880]);
    expect(lastValue).toBe(880);
  });

  it('starts anew with a change of suction, yet still shows the last value', () => {
    const { history, lastValue } = historyOf(until(47), 'FF1', at('2032-06-02T22:56:00Z'));
    expect(history).toEqual([]);
    expect(lastValue).toBe(880);
  });

  it('starts anew when cloud is entered', () => {
    expect(historyOf(until(59), 'FF1', at('2032-06-02T23:11:00Z')).history).toEqual([]);
  });

  it('expects a counter where the flow carries it, through every change', () => {
    // Line 42: counter 1455 lb at 22:46:40.8 on the tablet, flow 880 - 20 lb/h: 100 s later 23.9 lb more.
    const { expected } = historyOf(until(47), 'FU1', epochMs(Date.parse('2032-06-02T22:48:20.8Z')));
    expect(expected).toBeCloseTo(1455 + (860 * 100) / 3600, 1);
  });
});
