import { describe, expect, it } from 'vitest';
import { airState } from '../../src/aero/atmosphere.ts';
import { baselineAt, pairBaseline } from '../../src/aero/baseline.ts';
import * as conversions from '../../src/aero/conversions.ts';
import { mapElsewhere } from '../../src/aero/engines.ts';
import { flightCondition } from '../../src/aero/flightCondition.ts';
import * as fuelFlow from '../../src/aero/fuelFlow.ts';
import { fuelReductionFraction } from '../../src/aero/savings.ts';
import { dragReductionOnMap, slopeAtFuelFlow } from '../../src/aero/thrustMap.ts';
import { given, valueOf } from './referenceRow.ts';

/*
 * Readings of an invented flight from gauge to drag, against an independent program that printed flows to
 * 0.1 lb/h and weights to 1 lb. Corrected flow, weight, Mach, pressure altitude, static temperature, Mach
 * drift and pressure altitude rate; then the flow and weight at the card's 37 000 ft on a standard day.
 */
const READINGS = [
  [2360, 39_840, 0.721, 36_980, -55, 0.0002, 0, 2346.6, 39_802],
  [1690, 39_282, 0.72, 37_030, -55, 0.0002, -10, 1690.7, 39_339],
  [1700, 39_206, 0.72, 37_020, -55, 0.0002, -10, 1699.9, 39_244],
] as const;

const LB_PER_HOUR_PER_LBF =
  conversions.kgPerSFromLbPerHour(1) / conversions.newtonsFromPoundsForce(1);
const map = {
  kind: 'line',
  idleKgPerS: conversions.kgPerSFromLbPerHour(126),
  slopeKgPerSPerN: 0.748 * LB_PER_HOUR_PER_LBF,
} as const;
const card = given(airState({ pressureAltitudeM: conversions.metresFromFeet(37_000) }));

describe('a reading on its way to the card', () => {
  it.each(READINGS)(
    '%d lb/h at %d lb',
    (flow, weight, mach, altitudeFt, satC, driftPerMin, climbFtPerMin, cardFlow, cardWeight) => {
      const { air, trueAirspeedMPerS } = given(
        flightCondition({
          mach,
          pressureAltitudeM: conversions.metresFromFeet(altitudeFt),
          temperature: { kind: 'static', kelvin: conversions.kelvinFromCelsius(satC) },
        }),
      );
      const day = {
        temperatureK: air.temperatureK,
        standardTemperatureK: air.standardTemperatureK,
      };
      const weightN = conversions.newtonsFromPoundsForce(weight);
      const fuelFlowKgPerS = conversions.kgPerSFromLbPerHour(flow);
      const here = mapElsewhere({
        map,
        pressureRatio: air.pressureRatio / card.pressureRatio,
        temperatureRatio: air.temperatureRatio / card.temperatureRatio,
      });
      const level = fuelFlow.levelFuelFlow({
        fuelFlowKgPerS,
        slopeKgPerSPerN: valueOf(slopeAtFuelFlow(here, fuelFlowKgPerS)),
        excessForceN: fuelFlow.excessForceN({
          weightN,
          climbRateMPerS: fuelFlow.geometricClimbRateMPerS({
            pressureAltitudeRateMPerS: conversions.metresPerSecondFromFeetPerMinute(climbFtPerMin),
            ...day,
          }),
          accelerationMPerS2: fuelFlow.accelerationFromMachRate({
            machRatePerS: driftPerMin / 60,
            temperatureK: air.temperatureK,
          }),
          trueAirspeedMPerS,
        }),
      });
      const atCard = fuelFlow.fuelFlowAtKgPerS({
        referredFuelFlowKgPerS: fuelFlow.referredFuelFlowKgPerS({
          fuelFlowKgPerS: level.fuelFlowKgPerS,
          pressureRatio: air.pressureRatio,
          temperatureRatio: air.temperatureRatio,
        }),
        pressureRatio: card.pressureRatio,
        temperatureRatio: card.temperatureRatio,
      });
      expect(Math.abs(conversions.lbPerHourFromKgPerS(atCard) - cardFlow)).toBeLessThan(0.06);
      const referredN = fuelFlow.referredWeightN({ weightN, pressureRatio: air.pressureRatio });
      const weightAtCard = conversions.poundsForceFromNewtons(referredN * card.pressureRatio);
      expect(Math.abs(weightAtCard - cardWeight)).toBeLessThan(0.6);
    },
  );
});

describe('a reading against the first suction-off run', () => {
  // Mean of three readings at the card; elasticity 0.54 borrowed from earlier flights.
  const pair = pairBaseline(
    {
      fuelFlowKgPerS: (2346.6 + 2339.7 + 2347.8) / 3,
      weightN: (39_802 + 39_703 + 39_622) / 3,
      standardUncertaintyKgPerS: 5.87,
      readingCount: 3,
    },
    { elasticity: 0.54, standardUncertainty: 0.05 },
  );

  it.each([
    [1690.7, 39_339, 2332.8, 27.53, 29.1],
    [1699.9, 39_244, 2329.8, 27.04, 28.58],
    [1691.2, 39_134, 2326.3, 27.3, 28.86],
  ])('%d lb/h at %d lb', (flow, weight, baseline, fuelPercent, dragPercent) => {
    const { fuelFlowKgPerS: found } = baselineAt(pair, weight);
    // Its own inputs are rounded to 0.1 lb/h and 1 lb, and so is what it printed.
    expect(Math.abs(found - baseline)).toBeLessThan(0.12);
    const flows = { fuelFlowKgPerS: flow, baselineFuelFlowKgPerS: found };
    expect(Math.abs(100 * fuelReductionFraction(flows) - fuelPercent)).toBeLessThan(0.01);
    // In lb/h throughout: a share does not mind, nor does the slope matter.
    const drag = valueOf(dragReductionOnMap({ map: { ...map, idleKgPerS: 126 }, ...flows }));
    expect(Math.abs(100 * drag.dragReductionFraction - dragPercent)).toBeLessThan(0.01);
  });
});
