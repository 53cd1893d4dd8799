import { describe, expect, it } from 'vitest';
import { standardTemperatureK } from '../../src/aero/atmosphere.ts';
import { flightCondition } from '../../src/aero/flightCondition.ts';
import { excessForceN } from '../../src/aero/fuelFlow.ts';
import {
  phugoidPeriodS,
  STABILITY_LIMITS,
  stabilityVerdict,
  type CruiseSamples,
  type Stability,
} from '../../src/aero/stability.ts';
import { given } from './referenceRow.ts';

/** Mach 0.75 at 40 000 ft, a look every half minute for three minutes. */
const HEIGHT_M = 12_192;
const TIMES_S = [0, 30, 60, 90, 120, 150, 180];
const LIFT_TO_DRAG = 16;

interface Wander {
  readonly machPerMin: number;
  readonly climbFtPerMin: number;
  readonly kelvinPerMin: number;
  readonly flowSharePerMin: number;
  /** One look at the middle is off by this. */
  readonly machKick: number;
}

const STEADY: Wander = {
  machPerMin: 0,
  climbFtPerMin: 0,
  kelvinPerMin: 0,
  flowSharePerMin: 0,
  machKick: 0,
};

function cruise(change: Partial<Wander> = {}): CruiseSamples {
  const { machPerMin, climbFtPerMin, kelvinPerMin, flowSharePerMin, machKick } = {
    ...STEADY,
    ...change,
  };
  const series = (at: (minutes: number) => number) =>
    TIMES_S.map((timeS) => ({ timeS, value: at((timeS - 90) / 60) }));
  return {
    mach: series((t) => 0.75 + machPerMin * t + (t === 0 ? machKick : 0)),
    pressureAltitudeM: series((t) => HEIGHT_M + climbFtPerMin * 0.3048 * t),
    staticTemperatureK: series((t) => 216.65 + kelvinPerMin * t),
    fuelFlowKgPerS: series((t) => 0.4 * (1 + flowSharePerMin * t)),
  };
}

function verdict(samples: CruiseSamples, flowPerForceShare = LIFT_TO_DRAG): Stability {
  return given(stabilityVerdict({ samples, endS: 180, flowPerForceShare }));
}

describe('the stability of a cruise', () => {
  it('is stable where nothing moves', () => {
    const found = verdict(cruise());
    expect(found).toMatchObject({ kind: 'stable', failing: [], machRange: 0, altitudeRangeM: 0 });
    expect(found.correctionFraction).toBeCloseTo(0, 13);
  });

  it.each([
    ['stable', [], { climbFtPerMin: 13.9 }],
    ['correctable', ['climb'], { climbFtPerMin: 14.1 }],
    ['correctable', ['climb'], { climbFtPerMin: -14.1 }],
    ['stable', [], { machPerMin: 0.0006 }],
    ['correctable', ['acceleration'], { machPerMin: 0.00065 }],
    ['correctable', ['acceleration'], { machPerMin: -0.00065 }],
    // Steady Mach in warming air: 0.3 K a minute of 216.65 K is 0.3 kt a minute; 0.33 K too, and 0.99 K in all.
    ['stable', [], { kelvinPerMin: 0.3 }],
    ['unstable', ['temperatureRange'], { kelvinPerMin: 0.34 }],
    ['unstable', ['machRange'], { machKick: 0.0101 }],
    ['stable', [], { machKick: 0.01 }],
    ['unstable', ['fuelFlowRange'], { flowSharePerMin: 0.0101 }],
    ['stable', [], { flowSharePerMin: 0.0099 }],
    ['unstable', ['altitudeRange', 'climb'], { climbFtPerMin: 34 }],
    ['correctable', ['climb', 'acceleration'], { climbFtPerMin: 20, machPerMin: 0.001 }],
  ] as const)('is %s, naming %j', (kind, failing, change) => {
    const found = verdict(cruise(change));
    expect(found.kind).toBe(kind);
    expect(found.failing).toEqual(failing);
  });

  it('is unstable when the correction would be too large', () => {
    // 30 ft/min is 1.11 % of drag at L/D 16: three times that needs L/D 45.
    expect(verdict(cruise({ climbFtPerMin: 30 })).failing).toEqual(['climb']);
    const heavy = verdict(cruise({ climbFtPerMin: 30 }), 45);
    expect(heavy).toMatchObject({ kind: 'unstable', failing: ['climb', 'correction'] });
    expect(heavy.correctionFraction).toBeGreaterThan(0.03);
    expect(verdict(cruise({ climbFtPerMin: -30 }), 45).failing).toContain('correction');
  });

  it('calls for correction at half a per cent of drag by either term', () => {
    // Published sizes at L/D 16, M 0.75, 40 000 ft: 10 ft/min is 0.37 % of drag, 1 kt/min is 1.40 %.
    const climb = verdict(cruise({ climbFtPerMin: 10 }));
    expect(climb.correctionFraction).toBeCloseTo(0.0037, 4);
    expect(climb.climbMPerS).toBeCloseTo(0.0508, 10);
    const knotPerMin = verdict(cruise({ machPerMin: 1 / 573.57 }));
    expect(knotPerMin.correctionFraction).toBeCloseTo(0.014, 4);
    const atLimit = (LIFT_TO_DRAG * STABILITY_LIMITS.climbMPerS) / 221.3;
    expect(atLimit).toBeCloseTo(0.005, 3);
    expect((LIFT_TO_DRAG * STABILITY_LIMITS.accelerationMPerS2) / 9.80665).toBeCloseTo(0.005, 4);
  });

  it('corrects by the same force as a reading is corrected by', () => {
    const samples = cruise({ climbFtPerMin: 8, machPerMin: 0.0004, kelvinPerMin: 0.1 });
    const { correctionFraction, climbMPerS, accelerationMPerS2 } = verdict(samples);
    const condition = given(
      flightCondition({
        mach: 0.75,
        pressureAltitudeM: HEIGHT_M,
        temperature: { kind: 'static', kelvin: 216.65 },
      }),
    );
    const weightN = 300_000;
    const forceN = excessForceN({
      weightN,
      climbRateMPerS: climbMPerS,
      accelerationMPerS2,
      trueAirspeedMPerS: condition.trueAirspeedMPerS,
    });
    expect(correctionFraction).toBeCloseTo((LIFT_TO_DRAG * forceN) / weightN, 12);
    // True airspeed at the two ends of the window, by the formula itself.
    const speed = (minutes: number) =>
      given(
        flightCondition({
          mach: 0.75 + 0.0004 * minutes,
          pressureAltitudeM: HEIGHT_M,
          temperature: { kind: 'static', kelvin: 216.65 + 0.1 * minutes },
        }),
      ).trueAirspeedMPerS;
    expect(accelerationMPerS2).toBeCloseTo((speed(1.5) - speed(-1.5)) / 180, 7);
  });

  it('climbs faster than its altimeter says in warm air', () => {
    const warm = cruise({ climbFtPerMin: 10 });
    const staticTemperatureK = TIMES_S.map((timeS) => ({ timeS, value: 226.65 }));
    const found = verdict({ ...warm, staticTemperatureK });
    expect(found.climbMPerS).toBeCloseTo((0.0508 * 226.65) / standardTemperatureK(HEIGHT_M), 10);
  });

  it('looks at the window alone, and at instruments read apart', () => {
    const late = cruise();
    const before = { timeS: -1, value: 0.5 };
    const after = { timeS: 181, value: 0.9 };
    const shifted = late.fuelFlowKgPerS.map(({ timeS, value }) => ({ timeS: timeS - 11, value }));
    const samples = {
      ...late,
      mach: [before, ...late.mach, after],
      fuelFlowKgPerS: shifted.toReversed(),
    };
    expect(verdict(samples)).toMatchObject({ kind: 'stable', machRange: 0 });
  });

  it('says how well its slopes are known', () => {
    const found = verdict(cruise({ machKick: 0.007 }));
    // One of seven off by 0.007: the slope stays, its doubt is s/√Sxx with s² = 0.007² (6/7)/5, Sxx = 25 200 s².
    const s = 0.007 * Math.sqrt(6 / 7 / 5);
    const soundMPerS = 295.0695;
    expect(found.accelerationMPerS2).toBeCloseTo(0, 12);
    expect(found.accelerationStandardUncertaintyMPerS2).toBeCloseTo(
      (soundMPerS * s) / Math.sqrt(25_200),
      6,
    );
    expect(found.climbStandardUncertaintyMPerS).toBeLessThan(1e-9);
  });

  it('takes the limits of the card', () => {
    const of = (machRange: number) =>
      given(
        stabilityVerdict({
          samples: cruise({ machKick: 0.004 }),
          endS: 180,
          flowPerForceShare: LIFT_TO_DRAG,
          limits: { ...STABILITY_LIMITS, machRange },
        }),
      ).kind;
    expect(of(0.004)).toBe('stable');
    expect(of(0.0039)).toBe('unstable');
  });
});

describe('stability that cannot be told', () => {
  const ask = (samples: CruiseSamples) =>
    stabilityVerdict({ samples, endS: 180, flowPerForceShare: LIFT_TO_DRAG });

  it.each(['mach', 'pressureAltitudeM', 'staticTemperatureK', 'fuelFlowKgPerS'] as const)(
    'lacks looks at %s',
    (of) => {
      const samples = cruise();
      expect(ask({ ...samples, [of]: samples[of].slice(0, 2) })).toEqual({
        kind: 'unavailable',
        because: 'tooFewSamples',
        of,
      });
      // Four looks in the last minute and a half make half the window, three do not.
      expect(ask({ ...samples, [of]: samples[of].slice(3) }).kind).toBe('stable');
      expect(ask({ ...samples, [of]: samples[of].slice(4) })).toEqual({
        kind: 'unavailable',
        because: 'spanTooShort',
        of,
      });
    },
  );

  it('has looks at one moment only', () => {
    const samples = cruise();
    const mach = samples.mach.map((sample) => ({ ...sample, timeS: 100 }));
    const limits = { ...STABILITY_LIMITS, leastSpanFraction: 0 };
    expect(
      stabilityVerdict({ samples: { ...samples, mach }, endS: 180, flowPerForceShare: 16, limits }),
    ).toEqual({ kind: 'unavailable', because: 'tooFewSamples', of: 'mach' });
  });

  it('refuses what is no number', () => {
    const samples = cruise();
    const asked = { samples, endS: 180, flowPerForceShare: LIFT_TO_DRAG };
    expect(() => stabilityVerdict({ ...asked, endS: Number.NaN })).toThrow(RangeError);
    expect(() => stabilityVerdict({ ...asked, flowPerForceShare: -1 })).toThrow(RangeError);
    const limits = { ...STABILITY_LIMITS, windowS: 0 };
    expect(() => stabilityVerdict({ ...asked, limits })).toThrow(RangeError);
    const mach = samples.mach.map(({ timeS }) => ({ timeS, value: 0 }));
    expect(() => ask({ ...samples, mach })).toThrow(RangeError);
  });
});

describe('the phugoid', () => {
  it('swings in proportion to the speed', () => {
    // At 220.7 m/s: 1.41421 π · 220.7/9.80665 = 99.99 s.
    expect(phugoidPeriodS(220.7)).toBeCloseTo(99.99, 2);
    expect(phugoidPeriodS(441.4) / phugoidPeriodS(220.7)).toBeCloseTo(2, 14);
    expect(() => phugoidPeriodS(0)).toThrow(RangeError);
  });
});
