import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recorderOffset, type RecorderOffset } from '../../../src/analysis/recorder/clockOffset.ts';
import { stepsIn } from '../../../src/analysis/recorder/recordedSteps.ts';
import { scribeSide, type ScribeSide } from '../../../src/analysis/recorder/scribeSide.ts';
import type { EvenTrace } from '../../../src/analysis/recorder/trace.ts';
import { epochMs } from '../../../src/record/brand.ts';
import { recorderA } from '../../flights/recorderA.ts';
import { flightA, viewOfEntries } from '../flights.ts';

const T0 = Date.UTC(2032, 5, 2, 22);

function found(even: EvenTrace, scribe: ScribeSide): RecorderOffset {
  const offset = recorderOffset(even, scribe);
  if (offset.kind === 'noOffset') throw new RangeError(offset.because);
  return offset;
}

/** A flow that stands on these levels for so many seconds each. */
function levels(...pairs: readonly (readonly [kgPerS: number, seconds: number])[]): EvenTrace {
  const flow = pairs.flatMap(([level, seconds]) =>
    Array.from({ length: seconds }, (_, second) => level + 0.0004 * Math.sin(second * 1.7)),
  );
  return {
    startMs: T0,
    seconds: flow.length,
    engines: [Float64Array.from(flow)],
    suctionUnit: null,
    mach: null,
    pressureAltitudeM: null,
    staticTemperatureK: null,
    rowEveryS: 1,
  };
}

function readings(...pairs: readonly (readonly [second: number, kgPerS: number])[]): ScribeSide {
  return {
    timeBaseUncertaintyS: 0,
    marks: [],
    readings: pairs.map(([second, kgPerS]) => ({
      at: epochMs(T0 + second * 1000),
      doubtS: 3,
      kgPerS,
      standardUncertaintyKgPerS: 0.002,
    })),
  };
}

/** Even draws in [0, 1): a linear congruential generator, constants of Numerical Recipes (from memory). */
function uniformDraws(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

describe('the clock of flight A’s recorder', () => {
  const view = viewOfEntries(flightA.entries);
  const scribe = scribeSide(view);
  const even = recorderA();

  it('stood on the aircraft time base, as its file says, and the stated doubt holds that', () => {
    const { offsetS, standardUncertaintyS, readings: read, marks } = found(even, scribe);
    expect(Math.abs(offsetS)).toBeLessThan(2 * standardUncertaintyS);
    expect(standardUncertaintyS).toBeLessThan(2);
    expect(read).toEqual({ agree: 31, of: 31 });
    expect(marks.filter(({ residualS }) => residualS !== null)).toHaveLength(marks.length);
  });

  it('is found by fuel-flow steps alone, with a wider doubt', () => {
    const alone = found(even, { ...scribe, marks: [] });
    expect(Math.abs(alone.offsetS)).toBeLessThan(2 * alone.standardUncertaintyS);
    expect(alone.standardUncertaintyS).toBeGreaterThan(found(even, scribe).standardUncertaintyS);
  });

  it('is found wherever it was set, a time zone away too', () => {
    fc.assert(
      fc.property(fc.integer({ min: -7 * 3600_000, max: 7 * 3600_000 }), (lateMs) => {
        const set = found({ ...even, startMs: even.startMs + lateMs }, scribe);
        expect(Math.abs(set.offsetS - lateMs / 1000)).toBeLessThan(2 * set.standardUncertaintyS);
      }),
      { numRuns: 4 },
    );
  });

  it('is found from marks whose hands were off by their stated doubt, about as often as two sigma says', () => {
    const uniform = uniformDraws(4);
    // Box and Muller 1958: two uniform draws make a normal one.
    const normal = (): number =>
      Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
    let inside = 0;
    for (let flight = 0; flight < 8; flight += 1) {
      const marks = scribe.marks.map((mark) => ({
        ...mark,
        at: epochMs(Math.round(mark.at + normal() * mark.doubtS * 1000)),
      }));
      const { offsetS, standardUncertaintyS } = found(even, { ...scribe, marks });
      if (Math.abs(offsetS) < 2 * standardUncertaintyS) inside += 1;
    }
    // 95 % of 8 is 7.6; two misses or more have a chance of 6 % (binomial).
    expect(inside).toBeGreaterThanOrEqual(7);
  });

  it('is not moved by one reading with a wrong digit', () => {
    const wrong = scribe.readings.map((reading, index) =>
      index === 10 ? { ...reading, kgPerS: reading.kgPerS * 1.3 } : reading,
    );
    const clean = found(even, { ...scribe, marks: [] });
    const off = found(even, { ...scribe, readings: wrong, marks: [] });
    expect(off.readings.agree).toBe(30);
    expect(Math.abs(off.offsetS - clean.offsetS)).toBeLessThan(clean.standardUncertaintyS);
  });
});

describe('matching by hand-made steps', () => {
  const steps = levels([0.3, 600], [0.2, 400], [0.28, 700], [0.22, 300], [0.3, 600]);
  const taken = readings(
    [550, 0.3],
    [650, 0.2],
    [950, 0.2],
    [1050, 0.28],
    [1650, 0.28],
    [1750, 0.22],
    [1950, 0.22],
    [2050, 0.3],
  );

  it('lays readings between steps: ±50 s fits evenly, so the doubt is 100/√12 s and is refused as too wide', () => {
    expect(recorderOffset(steps, taken)).toMatchObject({
      kind: 'noOffset',
      because: 'tooFewSteps',
    });
  });

  it('finds the middle of what fits when readings stand close to the steps', () => {
    const close = readings(
      [580, 0.3],
      [620, 0.2],
      [980, 0.2],
      [1020, 0.28],
      [1680, 0.28],
      [1720, 0.22],
      [1980, 0.22],
      [2020, 0.3],
    );
    const { offsetS, standardUncertaintyS } = found(steps, close);
    expect(Math.abs(offsetS)).toBeLessThan(2);
    // 40 s wide and even: 40/√12 is 11.5 s; the edges are softened by the readings' own 3 s.
    expect(standardUncertaintyS).toBeGreaterThan(8);
    expect(standardUncertaintyS).toBeLessThan(15);
  });

  it('refuses with a reason', () => {
    const flat = levels([0.3, 2000]);
    expect(
      recorderOffset(flat, readings([500, 0.3], [700, 0.3], [900, 0.3], [1100, 0.3])),
    ).toMatchObject({
      because: 'ambiguous',
    });
    expect(recorderOffset(steps, readings([550, 0.3]))).toMatchObject({
      because: 'tooFewReadings',
    });
    expect(recorderOffset({ ...steps, engines: [] }, taken)).toMatchObject({
      because: 'nothingToMatch',
    });
    const twice = levels([0.3, 600], [0.2, 600], [0.3, 600], [0.2, 600], [0.3, 600]);
    const either = readings([580, 0.3], [620, 0.2], [1180, 0.2], [1220, 0.3]);
    expect(recorderOffset(twice, either)).toMatchObject({ because: 'ambiguous' });
    const other = readings(
      [580, 0.9],
      [620, 0.1],
      [980, 0.5],
      [1020, 0.95],
      [1680, 0.05],
      [1720, 0.6],
    );
    expect(recorderOffset(steps, other).kind).toBe('noOffset');
  });

  it('sees steps where they are and none in noise', () => {
    const [flow = new Float64Array(0)] = steps.engines;
    expect(stepsIn(flow)).toEqual([600, 1000, 1700, 2000]);
    expect(stepsIn(flow.subarray(0, 590))).toEqual([]);
    expect(stepsIn(new Float64Array(0))).toEqual([]);
  });
});
