import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  calibratedFromMach,
  dynamicPressurePa,
  machFromCalibrated,
} from '../../src/aero/airspeed.ts';
import { airState, geometricAltitudeM, geopotentialAltitudeM } from '../../src/aero/atmosphere.ts';
import { pressureAltitudeM, standardPressurePa } from '../../src/aero/atmosphere.ts';
import { baselineAt, fitBaseline, type BaselineRun } from '../../src/aero/baseline.ts';
import { mapElsewhere } from '../../src/aero/engines.ts';
import { referredFuelFlowKgPerS } from '../../src/aero/fuelFlow.ts';
import { polarDrag } from '../../src/aero/polar.ts';
import { compareWithBaseline, type Comparison } from '../../src/aero/reduction.ts';
import { normalCdf, normalQuantile } from '../../src/aero/statistics/distributions.ts';
import { studentTCdf, studentTQuantile } from '../../src/aero/statistics/distributions.ts';
import {
  dragReductionOnMap,
  fuelFlowOfThrust,
  thrustTable,
  type ThrustMap,
} from '../../src/aero/thrustMap.ts';
import { fromSi, toSi, UNITS } from '../../src/aero/units.ts';
import { given, valueOf } from './referenceRow.ts';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

function alike(found: number, expected: number, relative: number): void {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
}

describe('every unit', () => {
  it.each(UNITS.map((unit) => [unit]))('%s comes back from SI, and SI from it', (unit) => {
    const density = { fuelDensityKgPerM3: 803.1 };
    fc.assert(
      fc.property(within(-1e6, 1e6), (value) => {
        const si = valueOf(toSi({ value, unit, ...density })).value;
        const back = valueOf(fromSi({ value: si, unit, ...density }));
        // A temperature keeps the rounding of the some 300 K between the zeros.
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * (Math.abs(value) + 1000));
        const out = valueOf(fromSi({ value, unit, ...density }));
        const again = valueOf(toSi({ value: out, unit, ...density })).value;
        expect(Math.abs(again - value)).toBeLessThanOrEqual(1e-12 * (Math.abs(value) + 1000));
      }),
    );
  });
});

describe('inverse functions invert, from either side', () => {
  it('Mach and calibrated airspeed', () => {
    fc.assert(
      fc.property(within(20, 170), within(20_000, 101_325), (calibratedMPerS, pressurePa) => {
        const mach = machFromCalibrated({ calibratedMPerS, pressurePa });
        fc.pre(mach.kind === 'ready');
        const back = valueOf(calibratedFromMach({ mach: valueOf(mach), pressurePa }));
        alike(back, calibratedMPerS, 1e-10);
      }),
    );
  });

  it('pressure and its altitude', () => {
    fc.assert(
      fc.property(within(900, 177_000), (pressurePa) => {
        alike(standardPressurePa(pressureAltitudeM(pressurePa)), pressurePa, 1e-11);
      }),
    );
  });

  it('geometric and geopotential height', () => {
    fc.assert(
      fc.property(within(-5000, 80_000), (geometricM) => {
        const back = geometricAltitudeM(geopotentialAltitudeM(geometricM));
        expect(Math.abs(back - geometricM)).toBeLessThan(1e-8);
      }),
    );
  });

  it('quantile and probability', () => {
    fc.assert(
      fc.property(within(-30, 30), within(0.5, 3e4), (t, degreesOfFreedom) => {
        const probability = studentTCdf(t, degreesOfFreedom);
        // Nearer to one than this a probability has no digits left to come back by.
        fc.pre(probability < 1 - 1e-7 && probability > 1e-300);
        const back = studentTQuantile({ probability, degreesOfFreedom });
        expect(Math.abs(back - t)).toBeLessThan(1e-7 * (1 + Math.abs(t)));
      }),
    );
    fc.assert(
      fc.property(within(-30, 5), (z) => {
        expect(Math.abs(normalQuantile(normalCdf(z)) - z)).toBeLessThan(1e-7);
      }),
    );
  });
});

describe('referred fuel flow', () => {
  /** Invented: at sea level pressure and temperature, so that flow and thrust are referred ones. */
  const wing = { wingAreaM2: 57, zeroLiftCoefficient: 0.018, liftFactor: 0.06 };
  const line: ThrustMap = { kind: 'line', idleKgPerS: 0.2, slopeKgPerSPerN: 2.2e-5 };
  const table = valueOf(
    thrustTable([
      { thrustN: 20_000, fuelFlowKgPerS: 0.6 },
      { thrustN: 60_000, fuelFlowKgPerS: 1.3 },
      { thrustN: 110_000, fuelFlowKgPerS: 2.4 },
      { thrustN: 200_000, fuelFlowKgPerS: 5 },
    ]),
  );

  it.each([
    ['a line', line],
    ['a table', table],
  ])('of a polar and %s is the same at every height and temperature of one W/δ', (_, map) => {
    const flowAt = (heightM: number, kelvin: number, mach: number, referredN: number) => {
      const air = given(airState({ pressureAltitudeM: heightM, staticTemperatureK: kelvin }));
      const { pressureRatio, temperatureRatio, pressurePa } = air;
      const { dragN } = polarDrag({
        ...wing,
        dynamicPressurePa: dynamicPressurePa({ mach, pressurePa }),
        weightN: referredN * pressureRatio,
      });
      const here = mapElsewhere({ map, pressureRatio, temperatureRatio });
      const fuelFlowKgPerS = valueOf(fuelFlowOfThrust(here, dragN));
      return {
        fuelFlowKgPerS,
        referred: referredFuelFlowKgPerS({ fuelFlowKgPerS, pressureRatio, temperatureRatio }),
      };
    };
    const anyHeight = within(5000, 15_000);
    const anyKelvin = within(200, 250);
    fc.assert(
      fc.property(
        fc.tuple(anyHeight, anyKelvin),
        fc.tuple(anyHeight, anyKelvin),
        within(0.65, 0.8),
        within(6e5, 1.1e6),
        (a, b, mach, referredN) => {
          const one = flowAt(...a, mach, referredN);
          const other = flowAt(...b, mach, referredN);
          alike(other.referred, one.referred, 1e-11);
        },
      ),
    );
    // The flow itself is not: a law that held for anything would say nothing.
    const [low, high] = [5000, 12_000].map((heightM) => flowAt(heightM, 220, 0.72, 8e5));
    expect(low?.fuelFlowKgPerS).toBeGreaterThan(2 * (high?.fuelFlowKgPerS ?? Infinity));
  });
});

describe('a scale error common to all gauges', () => {
  const runs: readonly BaselineRun[] = [
    { fuelFlowKgPerS: 1.32, weightN: 420_000, standardUncertaintyKgPerS: 0.004, readingCount: 3 },
    { fuelFlowKgPerS: 1.24, weightN: 390_000, standardUncertaintyKgPerS: 0.003, readingCount: 3 },
    { fuelFlowKgPerS: 1.19, weightN: 360_000, standardUncertaintyKgPerS: 0.005, readingCount: 3 },
    { fuelFlowKgPerS: 1.1, weightN: 330_000, standardUncertaintyKgPerS: 0.004, readingCount: 3 },
  ];
  const scaled = (scale: number): readonly BaselineRun[] =>
    runs.map((run) => ({ ...run, fuelFlowKgPerS: run.fuelFlowKgPerS * scale }));
  const none = { standardUncertainty: 0, degreesOfFreedom: Infinity };

  function reductionAt(scale: number, flowKgPerS: number, weightN: number) {
    const baseline = given(fitBaseline({ runs: scaled(scale), trust: 'relative' }));
    const at = baselineAt(baseline, weightN);
    const of: Comparison = {
      levelFuelFlowKgPerS: flowKgPerS * scale,
      referredFuelFlowKgPerS: flowKgPerS * scale,
      baselineFuelFlowKgPerS: at.fuelFlowKgPerS,
      weightElasticity: at.weightElasticity,
      machSensitivity: 1.5,
      slopeKgPerSPerN: 2e-5 * scale,
      weightN,
      trueAirspeedMPerS: 220,
      temperatureK: 216.65,
      fuelFlowDoubtsKgPerS: [{ standardUncertainty: 0.003 * scale, degreesOfFreedom: 4 }],
      climbRateDoubtMPerS: { ...none, standardUncertainty: 0.02 },
      accelerationDoubtMPerS2: none,
      pressureRatioRelativeDoubt: none,
      temperatureDoubtK: none,
      weightDoubtN: { ...none, standardUncertainty: 1500 },
      machDoubt: none,
      baselineDoubtKgPerS: {
        standardUncertainty: at.standardUncertaintyKgPerS,
        degreesOfFreedom: baseline.fit.degreesOfFreedom,
      },
    };
    return compareWithBaseline(of);
  }

  it('changes neither the reduction nor its interval', () => {
    fc.assert(
      fc.property(
        within(0.8, 1.25),
        within(0.9, 1.4),
        within(330_000, 420_000),
        (scale, flowKgPerS, weightN) => {
          const plain = reductionAt(1, flowKgPerS, weightN);
          const wrong = reductionAt(scale, flowKgPerS, weightN);
          expect(wrong.reductionFraction).toBeCloseTo(plain.reductionFraction, 11);
          expect(wrong.standardUncertainty).toBeCloseTo(plain.standardUncertainty, 11);
          alike(wrong.degreesOfFreedom, plain.degreesOfFreedom, 1e-7);
        },
      ),
    );
  });

  it('changes a drag reduction by no more than its map says', () => {
    const map: ThrustMap = { kind: 'line', idleKgPerS: 0.2, slopeKgPerSPerN: 2.2e-5 };
    const flows = { fuelFlowKgPerS: 1.08, baselineFuelFlowKgPerS: 1.2 };
    const plain = valueOf(dragReductionOnMap({ map, ...flows }));
    const step = 1e-6;
    const wrong = valueOf(
      dragReductionOnMap({
        map,
        fuelFlowKgPerS: 1.08 * (1 + step),
        baselineFuelFlowKgPerS: 1.2 * (1 + step),
      }),
    );
    const stated = plain.perFuelFlow * 1.08 + plain.perBaselineFuelFlow * 1.2;
    const moved = wrong.dragReductionFraction - plain.dragReductionFraction;
    expect(moved / step).toBeCloseTo(stated, 5);
    // On a map scaled alike it does not change at all.
    const alsoScaled = { ...map, idleKgPerS: 0.2 * 1.1, slopeKgPerSPerN: 2.2e-5 * 1.1 };
    const both = { fuelFlowKgPerS: 1.08 * 1.1, baselineFuelFlowKgPerS: 1.2 * 1.1 };
    expect(
      valueOf(dragReductionOnMap({ map: alsoScaled, ...both })).dragReductionFraction,
    ).toBeCloseTo(plain.dragReductionFraction, 12);
  });
});
