import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airState } from '../../src/aero/atmosphere.ts';
import { kgPerSFromLbPerHour, lbPerHourFromKgPerS } from '../../src/aero/conversions.ts';
import { metresFromFeet, newtonsFromPoundsForce } from '../../src/aero/conversions.ts';
import * as fuelFlow from '../../src/aero/fuelFlow.ts';
import { polarDrag } from '../../src/aero/polar.ts';
import { given } from './referenceRow.ts';

const anyFlow = fc.double({ min: 0.01, max: 5, noNaN: true });
const anyRatio = fc.double({ min: 0.05, max: 1.2, noNaN: true });

describe('referred fuel flow', () => {
  it('comes back at the condition it was referred from', () => {
    fc.assert(
      fc.property(anyFlow, anyRatio, anyRatio, (flow, pressureRatio, temperatureRatio) => {
        const ratios = { pressureRatio, temperatureRatio };
        const referred = fuelFlow.referredFuelFlowKgPerS({ fuelFlowKgPerS: flow, ...ratios });
        const back = fuelFlow.fuelFlowAtKgPerS({ referredFuelFlowKgPerS: referred, ...ratios });
        expect(Math.abs(back / flow - 1)).toBeLessThan(1e-14);
      }),
    );
  });

  it('is the flow itself at sea level on a standard day', () => {
    const { pressureRatio, temperatureRatio } = given(airState({ pressureAltitudeM: 0 }));
    expect(
      fuelFlow.referredFuelFlowKgPerS({ fuelFlowKgPerS: 0.4, pressureRatio, temperatureRatio }),
    ).toBeCloseTo(0.4, 15);
  });

  it('depends on pressure as it depends on weight', () => {
    fc.assert(
      fc.property(anyFlow, anyRatio, fc.double({ min: 0.5, max: 2, noNaN: true }), (flow, p, k) => {
        const of = (scale: number) =>
          fuelFlow.referredFuelFlowKgPerS({
            fuelFlowKgPerS: flow * scale,
            pressureRatio: p * scale,
            temperatureRatio: 1,
          });
        expect(Math.abs(of(k) / of(1) - 1)).toBeLessThan(1e-14);
      }),
    );
  });

  it('keeps lift coefficient with Mach and referred weight', () => {
    const lift = { mach: 0.72, wingAreaM2: 56.9 };
    fc.assert(
      fc.property(anyRatio, anyRatio, (a, b) => {
        const at = (pressureRatio: number) =>
          fuelFlow.liftCoefficient({
            referredWeightN: fuelFlow.referredWeightN({
              weightN: 180_000 * pressureRatio,
              pressureRatio,
            }),
            ...lift,
          });
        expect(Math.abs(at(a) / at(b) - 1)).toBeLessThan(1e-14);
      }),
    );
  });

  it('has the lift coefficient of its definition', () => {
    // W/δ = 0.7 · 101 325 · 0.72² · 56.9 · 0.5 newtons.
    const referredWeightN = 0.7 * 101_325 * 0.5184 * 56.9 * 0.5;
    const found = fuelFlow.liftCoefficient({ referredWeightN, mach: 0.72, wingAreaM2: 56.9 });
    expect(found).toBeCloseTo(0.5, 14);
  });

  it('goes to the card and back as arithmetic by hand says', () => {
    // Flight of 2000 lb/h at δ 0.25, √θ 0.9 = 8888.9 lb/h referred; card at δ 0.2, √θ 0.8: 1422.2 lb/h.
    const referred = fuelFlow.referredFuelFlowKgPerS({
      fuelFlowKgPerS: kgPerSFromLbPerHour(2000),
      pressureRatio: 0.25,
      temperatureRatio: 0.81,
    });
    expect(lbPerHourFromKgPerS(referred)).toBeCloseTo(8888.888889, 5);
    const atCard = fuelFlow.fuelFlowAtKgPerS({
      referredFuelFlowKgPerS: referred,
      pressureRatio: 0.2,
      temperatureRatio: 0.64,
    });
    expect(lbPerHourFromKgPerS(atCard)).toBeCloseTo(1422.222222, 5);
  });
});

describe('level, unaccelerated flight', () => {
  it('costs nothing to correct when it was flown', () => {
    const level = fuelFlow.levelFuelFlow({
      fuelFlowKgPerS: 0.3,
      slopeKgPerSPerN: 2e-5,
      excessForceN: 0,
    });
    expect(level).toEqual({ fuelFlowKgPerS: 0.3, correctionFraction: 0, tooLarge: false });
  });

  it.each([
    [0.0299, false],
    [-0.0299, false],
    [0.0301, true],
    [-0.0301, true],
  ])('a correction of %d of the flow is too large: %s', (share, tooLarge) => {
    const level = fuelFlow.levelFuelFlow({
      fuelFlowKgPerS: 0.3,
      slopeKgPerSPerN: 1e-5,
      excessForceN: (0.3 * share) / 1e-5,
    });
    expect(level.tooLarge).toBe(tooLarge);
    expect(level.correctionFraction).toBeCloseTo(Math.abs(share), 12);
    expect(level.fuelFlowKgPerS).toBeCloseTo(0.3 * (1 - share), 12);
  });

  it('takes the limit of the card where it has one', () => {
    const reading = { fuelFlowKgPerS: 0.3, slopeKgPerSPerN: 1e-5, excessForceN: 600 };
    expect(fuelFlow.levelFuelFlow({ ...reading, limitFraction: 0.02 }).tooLarge).toBe(false);
    expect(fuelFlow.levelFuelFlow({ ...reading, limitFraction: 0.0199 }).tooLarge).toBe(true);
  });

  it('is taller in warm air', () => {
    const climb = fuelFlow.geometricClimbRateMPerS({
      pressureAltitudeRateMPerS: 1,
      temperatureK: 226.65,
      standardTemperatureK: 216.65,
    });
    expect(climb).toBeCloseTo(1.0461574, 7);
  });

  it('pays for height and speed together', () => {
    // 50 000 lbf at 400 kt: 10 ft/min and 1 kt/min, by hand from the force balance.
    const excess = fuelFlow.excessForceN({
      weightN: newtonsFromPoundsForce(50_000),
      climbRateMPerS: metresFromFeet(10) / 60,
      accelerationMPerS2: 1852 / 3600 / 60,
      trueAirspeedMPerS: (400 * 1852) / 3600,
    });
    const expectedLbf = 50_000 * (0.0508 / 205.7777778 + 0.00857407407 / 9.80665);
    expect(excess / 4.4482216152605).toBeCloseTo(expectedLbf, 6);
  });

  it('turns a drift of Mach into an acceleration', () => {
    // a at 216.65 K is 295.0696 m/s (U.S. Standard Atmosphere, 1976, prints 295.07).
    const acceleration = fuelFlow.accelerationFromMachRate({
      machRatePerS: 0.006 / 60,
      temperatureK: 216.65,
    });
    expect(acceleration).toBeCloseTo(0.02950696, 8);
  });

  it('of two fuel batches is compared by their heat', () => {
    // A fuel with 1 % more heat would have flowed 1 % less: the reading stands for more of the reference.
    const flow = { fuelFlowKgPerS: 0.4, heatingValue: 43.43, referenceHeatingValue: 43 };
    expect(fuelFlow.sameHeatFuelFlowKgPerS(flow)).toBeCloseTo(0.404, 14);
    expect(() => fuelFlow.sameHeatFuelFlowKgPerS({ ...flow, heatingValue: 0 })).toThrow(RangeError);
  });

  it.each([0, -1, Number.NaN])('refuses a flow, weight or ratio of %d', (bad) => {
    const flow = { fuelFlowKgPerS: bad, slopeKgPerSPerN: 1, excessForceN: 1 };
    expect(() => fuelFlow.levelFuelFlow(flow)).toThrow(RangeError);
    expect(() => fuelFlow.referredWeightN({ weightN: bad, pressureRatio: 1 })).toThrow(RangeError);
    const ratios = { pressureRatio: bad, temperatureRatio: 1 };
    expect(() => fuelFlow.referredFuelFlowKgPerS({ fuelFlowKgPerS: 1, ...ratios })).toThrow(
      RangeError,
    );
  });
});

describe('a parabolic polar', () => {
  it('answers to weight by its stated elasticity', () => {
    fc.assert(
      fc.property(fc.double({ min: 5e4, max: 5e5, noNaN: true }), (weightN) => {
        const drag = (weight: number) =>
          polarDrag({
            dynamicPressurePa: 7400,
            wingAreaM2: 57,
            zeroLiftCoefficient: 0.018,
            liftFactor: 0.06,
            weightN: weight,
          });
        const step = 1e-5;
        const slope =
          Math.log(drag(weightN * (1 + step)).dragN / drag(weightN * (1 - step)).dragN) /
          Math.log((1 + step) / (1 - step));
        expect(drag(weightN).weightElasticity).toBeCloseTo(slope, 6);
      }),
    );
  });
});
