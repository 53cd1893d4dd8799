import { describe, expect, it } from 'vitest';
import { associations, type Question } from '../../../src/analysis/encounters/associations.ts';
import { probeHistory } from '../../../src/analysis/encounters/probeHistory.ts';
import { recoveryTimes } from '../../../src/analysis/encounters/recovery.ts';
import { sampleResults } from '../../../src/analysis/encounters/samples.ts';
import oracle from '../../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { flightA, viewOfEntries } from '../flights.ts';
import { answerOf, reasonOf, relative } from './reading.ts';

/*
 * Expected values: the worked debrief of flight A (test/flights/scripts/flight-a-oracle.json), tolerances its own
 * `compareWithin`.
 */
const within = oracle.compareWithin;
const view = viewOfEntries(flightA.entries);

describe('samples of flight A', () => {
  const { samples, unmatched } = sampleResults(view);

  it('finds every sample and matches every result', () => {
    expect(samples.map(({ sample }) => sample)).toEqual(oracle.samples.map((row) => row.sample));
    expect(oracle.samples.length).toBe(4);
    expect(unmatched).toEqual([]);
  });

  it.each(oracle.samples)('$sample: exposure, encounter and result', (row) => {
    const sample = samples.find((one) => one.sample === row.sample);
    if (sample === undefined) throw new RangeError(`${row.sample} must be found`);
    expect(sample.purpose).toBe(row.purpose);
    const { exposureS } = answerOf(sample.exposure);
    expect(Math.abs(exposureS - row.exposure_s)).toBeLessThan(within.lags_s);
    expect(sample.joins.map(({ label }) => label)).toEqual(
      row.joins.map(({ encounter }) => encounter),
    );
    for (const [place, join] of row.joins.entries()) {
      const own = sample.joins[place];
      expect(Math.abs((own?.overlapS ?? NaN) - join.overlap_s)).toBeLessThan(within.lags_s);
      expect(own?.shareOfExposure).toBeCloseTo(join.shareOfExposure, 6);
      expect(own?.weight).toBe(1);
    }
    const lab = answerOf(sample.lab);
    expect(lab.method).toBe(row.lab.method);
    expect((lab.numberPerM3 ?? NaN) / 1000).toBeCloseTo(row.lab.number_per_litre, 9);
    if (row.lab.meanSize_um === null) expect(lab.meanSizeM).toBeNull();
    else expect((lab.meanSizeM ?? NaN) * 1e6).toBeCloseTo(row.lab.meanSize_um, 9);
  });

  it('takes the clear-air blank off the number that was found the same way', () => {
    const [blank, first] = samples;
    if (blank === undefined || first === undefined) throw new RangeError('two samples at least');
    // 120 a litre in the cloud, 0.6 in clear air.
    expect(answerOf(first.lessBlank).numberPerM3).toBeCloseTo(119_400, 6);
    expect(answerOf(first.blank).sample).toBe('S-01');
    expect(reasonOf(blank.blank)).toBe('isABlank');
    expect(reasonOf(blank.lessBlank)).toBe('isABlank');
  });
});

describe('associations of flight A', () => {
  const QUESTIONS: readonly Question[] = [
    'lossInMoisture',
    'turbulentBehindHungCover',
    'turbulentWithFinding',
    'particleSizeAndLoss',
  ];
  const found = associations(view);

  it('asks the questions of the worked debrief in its order', () => {
    expect(found.map(({ question }) => question)).toEqual(QUESTIONS);
    expect(oracle.fisher.length).toBe(4);
  });

  it.each(oracle.fisher.map((row, place) => ({ ...row, place })))('$question', (row) => {
    const own = found[row.place];
    if (own === undefined) throw new RangeError('an association must be found');
    expect(own.cautions[0]).toBe('associationNotCause');
    if (row.p === null || row.table === undefined) {
      expect(own.table).toBeNull();
      expect(reasonOf(own.test)).toBe('tooFewJoinedSamples');
      return;
    }
    expect(own.table).toEqual(row.table);
    expect(relative(answerOf(own.test).pTwoSided, row.p)).toBeLessThan(within.p_relative);
  });

  it('leaves the panel nobody inspected out, and says so', () => {
    expect(found[2]?.leftOut).toEqual([{ because: 'notInspected', count: 1 }]);
    expect(found[3]?.leftOut).toEqual([]);
  });

  it('names an odds ratio that has no upper end', () => {
    const { oddsRatio, interval95 } = answerOf((found[0] ?? { test: NONE }).test);
    expect(oddsRatio).toBe('infinite');
    expect(interval95.high).toBe('infinite');
    expect(interval95.low).toBeGreaterThan(1);
  });
});

const NONE = { kind: 'noAnswer', because: 'zeroMargin', entries: [] } as const;

describe('probes of flight A', () => {
  const found = probeHistory(view);
  const notAlways = found.filter(
    ({ inClearRuns }) => inClearRuns.kind === 'answer' && inClearRuns.value.notLaminarRuns > 0,
  );

  it('names the probes that were not always laminar and no other', () => {
    expect(found.length).toBe(48);
    expect(notAlways.map(({ probe }) => probe)).toEqual(
      oracle.probesNotAlwaysLaminar.map((row) => row.probe),
    );
    expect(oracle.probesNotAlwaysLaminar.length).toBe(14);
  });

  it.each(oracle.probesNotAlwaysLaminar)('$probe', (row) => {
    const own = notAlways.find(({ probe }) => probe === row.probe);
    if (own === undefined) throw new RangeError(`${row.probe} must be found`);
    const { clearRuns, notLaminarRuns, bySetting } = answerOf(own.inClearRuns);
    expect(own.panel).toBe(row.panel);
    expect(clearRuns).toBe(row.clearRuns);
    expect(notLaminarRuns).toBe(row.turbulentRuns);
    expect(
      Object.fromEntries(
        bySetting.map(({ setting, laminarFraction }) => [setting, laminarFraction]),
      ),
    ).toEqual(row.bySetting);
    expect(own.coverHung).toBe(row.coverHung);
    expect(own.inspection?.words).toBe(row.inspection);
  });
});

describe('times to loss and recovery of flight A', () => {
  const times = recoveryTimes([view]);

  it('gives the list and no curve for three encounters', () => {
    for (const { L, R } of [times.loss, times.recoveryToCount, times.recoverySustained]) {
      for (const wing of [L, R]) {
        expect(reasonOf(wing.curve)).toBe('fewEvents');
        expect(wing.outcomes.length).toBe(3);
        expect(wing.outcomes.every(({ observed }) => observed)).toBe(true);
      }
    }
    const lags = times.recoveryToCount.R.outcomes.map(({ durationS }) => Math.round(durationS));
    expect(lags).toEqual(oracle.encounters.map((row) => row.recovery.R.lag_s));
  });

  it('draws a curve once two such flights give six events', () => {
    const { curve, outcomes } = recoveryTimes([view, view]).loss.L;
    expect(outcomes.length).toBe(6);
    // 23, 23, 32, 32, 44, 44 s: four of six left after the first time, half of that after the second.
    const { steps } = answerOf(curve);
    expect(steps.map(({ survival }) => survival)).toEqual([
      expect.closeTo(4 / 6, 9),
      expect.closeTo(2 / 6, 9),
      expect.closeTo(0, 9),
    ]);
  });
});
