import { describe, expect, it } from 'vitest';
import { recorderOffset } from '../../../src/analysis/recorder/clockOffset.ts';
import { lineThrough } from '../../../src/analysis/recorder/lineThrough.ts';
import { recorderResults } from '../../../src/analysis/recorder/recorderResults.ts';
import { scribeSide } from '../../../src/analysis/recorder/scribeSide.ts';
import oracle from '../../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { recorderA } from '../../flights/recorderA.ts';
import { flightA, viewOfEntries } from '../flights.ts';

const view = viewOfEntries(flightA.entries);
const even = recorderA();
const offset = recorderOffset(even, scribeSide(view));
if (offset.kind === 'noOffset') throw new RangeError(offset.because);
const points = recorderResults(view, even, offset);

describe('reductions of flight A from the recorder', () => {
  it('lie beside every one of the scribe’s', () => {
    expect(points.map(({ point, run }) => `${point} ${run}`)).toEqual([
      'TP01 1',
      'TP02 1',
      'TP03 1',
      'TP04 1',
      'TP04 2',
      'TP05 1',
      'TP06 1',
      'TP07 1',
      'TP08 1',
      'TP09 1',
    ]);
    expect(points.every(({ difference }) => difference?.agrees === true)).toBe(true);
  });

  it.each(oracle.points)('$testPoint run $run lies within the interval of the oracle', (row) => {
    const mine = points.find(({ point, run }) => point === row.testPoint && run === row.run);
    if (mine?.recorder.kind !== 'reduction') throw new RangeError('a reduction is expected');
    const [low = 0, high = 0] = row.interval95_pct;
    expect(100 * mine.recorder.fuel.fraction).toBeGreaterThan(low);
    expect(100 * mine.recorder.fuel.fraction).toBeLessThan(high);
  });

  it.each(oracle.truthAgainstOracle.points)(
    '$testPoint run $run holds the truth in its interval',
    (row) => {
      const mine = points.find(({ point, run }) => point === row.testPoint && run === row.run);
      if (mine?.recorder.kind !== 'reduction') throw new RangeError('a reduction is expected');
      const { low, high } = mine.recorder.fuel.interval95;
      expect(row.trueFuelReduction_pct / 100).toBeGreaterThan(low);
      expect(row.trueFuelReduction_pct / 100).toBeLessThan(high);
    },
  );

  it('cut out what the record and the card cut out', () => {
    const cut = (point: string): object =>
      points.find((one) => one.point === point)?.secondsCut ?? {};
    expect(cut('TP02')).toHaveProperty('beforeOnCondition');
    expect(cut('TP04')).toHaveProperty('moisture');
    expect(cut('TP05')).toHaveProperty('climb');
    expect(cut('TP01')).toEqual({});
  });

  it('is the same with the recorder’s clock seven hours off, once that is found', () => {
    const late = { ...even, startMs: even.startMs + 7 * 3600_000 };
    const moved = recorderResults(view, late, { ...offset, offsetS: offset.offsetS + 7 * 3600 });
    const fractions = (all: typeof points): readonly unknown[] =>
      all.map(({ recorder }) => (recorder.kind === 'reduction' ? recorder.fuel.fraction : null));
    for (const [index, fraction] of fractions(moved).entries()) {
      const before = fractions(points)[index];
      if (typeof before === 'number') expect(fraction).toBeCloseTo(before, 6);
      else expect(fraction).toBeNull();
    }
  });

  it('says why there is none', () => {
    const because = (all: typeof points): readonly string[] => [
      ...new Set(
        all.map(({ recorder }) => (recorder.kind === 'none' ? recorder.because : 'number')),
      ),
    ];
    expect(because(recorderResults(view, { ...even, mach: null }, offset))).toEqual([
      'channelMissing',
    ]);
    const away = { ...offset, offsetS: 86_400 };
    expect(because(recorderResults(view, even, away))).toEqual(['notRecorded']);
    const empty = even.engines.map((flow) => flow.map(() => Number.NaN));
    expect(because(recorderResults(view, { ...even, engines: empty }, offset))).toEqual([
      'everySecondCut',
    ]);
    expect(recorderResults(viewOfEntries([]), even, offset)).toEqual([]);
  });
});

describe('a line through recorded seconds', () => {
  it('is exact through points of a line, without doubt', () => {
    const values = Float64Array.from({ length: 100 }, (_, second) => 5 + 0.25 * second);
    expect(lineThrough(values, 10, 60)?.mean).toBeCloseTo(5 + 0.25 * 34.5, 12);
    expect(lineThrough(values, 10, 60)?.perS).toBeCloseTo(0.25, 12);
    expect(lineThrough(values, 10, 60)?.perSUncertainty).toBeCloseTo(0, 9);
  });

  it('doubts a wander more than scatter of the same size', () => {
    const scatter = Float64Array.from({ length: 200 }, (_, second) => (second % 2 === 0 ? 1 : -1));
    const wander = Float64Array.from({ length: 200 }, (_, second) => (second % 40 < 20 ? 1 : -1));
    const of = (values: Float64Array): number => lineThrough(values, 0, 200)?.perSUncertainty ?? 0;
    expect(of(wander)).toBeGreaterThan(3 * of(scatter));
  });

  it('is not drawn over a gap, over too few seconds or beyond the end', () => {
    const values = Float64Array.from({ length: 50 }, (_, second) =>
      second === 30 ? Number.NaN : 1,
    );
    expect(lineThrough(values, 20, 45)).toBeNull();
    expect(lineThrough(values, 0, 10)).toBeNull();
    expect(lineThrough(values, 32, 60)).toBeNull();
  });
});
