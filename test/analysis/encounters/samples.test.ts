import { describe, expect, it } from 'vitest';
import { particleEncounters } from '../../../src/analysis/encounters/particles.ts';
import { sampleResults, type SampleResult } from '../../../src/analysis/encounters/samples.ts';
import { answerOf, reasonOf } from './reading.ts';
import { ALL, flightOf, laminarFlight, say, turbulent, type Line } from './smallFlight.ts';

const MOISTURE: readonly Line[] = [
  say(1000, 'moistureEntered', { encounter: 'M1' }),
  say(1030, 'laminarLost', turbulent(ALL)),
  say(1100, 'moistureExited', { encounter: 'M1' }),
  say(1150, 'laminarGained', turbulent([])),
  say(1200, 'moistureEntered', { encounter: 'M2' }),
  say(1300, 'moistureExited', { encounter: 'M2' }),
];

const exposed = (
  sample: string,
  openS: number,
  closeS: number,
  purpose = 'cloud',
): readonly Line[] => [
  say(openS, 'samplerOpened', { sample, sampler: 'slide', purpose }),
  say(closeS, 'samplerClosed', { sample }),
];
const result = (afterS: number, sample: string, body: object): Line =>
  say(afterS, 'labResultReceived', { sample, method: 'microscope', ...body });

function resultsOf(...lines: readonly Line[]): ReturnType<typeof sampleResults> {
  const inOrder = [...MOISTURE, ...lines].toSorted((a, b) => a.afterS - b.afterS);
  return sampleResults(flightOf([...laminarFlight(), ...inOrder]));
}

function sampleOf(results: ReturnType<typeof sampleResults>, id: string): SampleResult {
  const found = results.samples.find(({ sample }) => sample === id);
  if (found === undefined) throw new RangeError(`${id} must be found`);
  return found;
}

describe('exposures', () => {
  it('are weighed by overlap where one covers two encounters', () => {
    const { joins, inMoistureFraction, exposure } = sampleOf(
      resultsOf(...exposed('S1', 1060, 1260)),
      'S1',
    );
    // 40 s in the first, 60 s in the second, 200 s in all.
    expect(answerOf(exposure).exposureS).toBe(200);
    expect(joins).toEqual([
      { encounter: 0, label: 'M1', overlapS: 40, shareOfExposure: 0.2, weight: 0.4 },
      { encounter: 1, label: 'M2', overlapS: 60, shareOfExposure: 0.3, weight: 0.6 },
    ]);
    expect(answerOf(inMoistureFraction)).toBeCloseTo(0.5, 9);
  });

  it('say so when they were never closed', () => {
    const open = sampleOf(resultsOf(say(1010, 'samplerOpened', { sample: 'S1' })), 'S1');
    expect(reasonOf(open.exposure)).toBe('stillOpen');
    expect(open.joins).toEqual([]);
  });
});

describe('laboratory results', () => {
  it('stay in a tray of their own where nobody exposed such a sample', () => {
    const { unmatched, samples } = resultsOf(
      ...exposed('S1', 1010, 1090),
      result(9000, 'S7', { meanSizeMicrometre: 30 }),
    );
    expect(unmatched.map(({ sample }) => sample)).toEqual(['S7']);
    expect(samples.map(({ lab }) => reasonOf(lab))).toEqual(['noResultYet']);
  });

  it('are never overwritten: two that differ are both shown and none is used', () => {
    const twice = (second: number): SampleResult =>
      sampleOf(
        resultsOf(
          ...exposed('S1', 1010, 1090),
          result(9000, 'S1', { meanSizeMicrometre: 30 }),
          result(9100, 'S1', { meanSizeMicrometre: second }),
        ),
        'S1',
      );
    expect(reasonOf(twice(31).lab)).toBe('resultsDisagree');
    expect(twice(31).labResults.length).toBe(2);
    expect(answerOf(twice(30).lab).meanSizeM).toBeCloseTo(30e-6, 12);
  });

  it('belong to no exposure where the same id was exposed twice, or none was given', () => {
    const { samples } = resultsOf(
      ...exposed('S1', 1010, 1050),
      ...exposed('S1', 1060, 1090),
      say(1210, 'samplerOpened', {}),
      say(1220, 'samplerClosed', {}),
      result(9000, 'S1', { meanSizeMicrometre: 30 }),
    );
    expect(samples.map(({ lab }) => reasonOf(lab))).toEqual([
      'sampleExposedTwice',
      'sampleExposedTwice',
      'noSampleId',
    ]);
  });
});

describe('the blank', () => {
  const cloud = [...exposed('S1', 1010, 1090), result(9000, 'S1', { numberPerLitre: 50 })];
  const blank = exposed('B1', 500, 600, 'clear-air blank');

  it('is taken off where both were found in the same way', () => {
    const less = (method: object): SampleResult['lessBlank'] =>
      sampleOf(
        resultsOf(...cloud, ...blank, result(9001, 'B1', { numberPerLitre: 2, ...method })),
        'S1',
      ).lessBlank;
    // 50 less 2 a litre, in numbers a cubic metre.
    expect(answerOf(less({})).numberPerM3).toBeCloseTo(48_000, 6);
    expect(answerOf(less({ method: ' Microscope' })).numberPerM3).toBeCloseTo(48_000, 6);
    expect(reasonOf(less({ method: 'optical counter' }))).toBe('methodsDiffer');
  });

  it('leaves a number below zero as it is', () => {
    const results = resultsOf(...cloud, ...blank, result(9001, 'B1', { numberPerLitre: 60 }));
    expect(answerOf(sampleOf(results, 'S1').lessBlank).numberPerM3).toBeCloseTo(-10_000, 6);
  });

  it('says what is missing', () => {
    expect(reasonOf(sampleOf(resultsOf(...cloud), 'S1').lessBlank)).toBe('noBlank');
    expect(reasonOf(sampleOf(resultsOf(...cloud, ...blank), 'S1').lessBlank)).toBe('noBlankResult');
    const sized = resultsOf(...cloud, ...blank, result(9001, 'B1', { meanSizeMicrometre: 5 }));
    expect(reasonOf(sampleOf(sized, 'S1').lessBlank)).toBe('noNumber');
  });

  it('is none when it was exposed in moisture, whatever it was called', () => {
    const wet = exposed('B1', 1210, 1220, 'clear-air blank');
    const results = resultsOf(...cloud, ...wet, result(9001, 'B1', { numberPerLitre: 2 }));
    expect(reasonOf(sampleOf(results, 'S1').lessBlank)).toBe('noBlank');
  });
});

describe('particles of an encounter', () => {
  it('are the mean of its samples by overlap, beside its lag and its depth', () => {
    const lines = [
      ...MOISTURE,
      ...exposed('S1', 1000, 1020),
      ...exposed('S2', 1020, 1100),
      result(9000, 'S1', { meanSizeMicrometre: 20, numberPerLitre: 10 }),
      result(9001, 'S2', { meanSizeMicrometre: 40, numberPerLitre: 20 }),
    ].toSorted((a, b) => a.afterS - b.afterS);
    const [first, second] = particleEncounters(flightOf([...laminarFlight(), ...lines]));
    if (first === undefined || second === undefined) throw new RangeError('two are expected');
    // 20 s of the one and 80 s of the other.
    expect(answerOf(first.meanSize).meanSizeM).toBeCloseTo(36e-6, 12);
    expect(answerOf(first.number).numberPerM3).toBeCloseTo(18_000, 6);
    expect(answerOf(first.firstLoss).lagS).toBe(30);
    expect(answerOf(first.depth).lostFraction).toBe(1);
    expect(reasonOf(second.meanSize)).toBe('noSample');
    expect(reasonOf(second.firstLoss)).toBe('nothingLost');
  });
});
