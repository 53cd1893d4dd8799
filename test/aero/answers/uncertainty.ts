import { baselineAt, fitBaseline } from '../../../src/aero/baseline.ts';
import { dragReductionFromSlope } from '../../../src/aero/engineMap.ts';
import {
  excessForceN,
  levelFuelFlow,
  referredFuelFlowKgPerS,
  referredWeightN,
} from '../../../src/aero/fuelFlow.ts';
import { pressureFallPerM } from '../../../src/aero/atmosphere.ts';
import { compareWithBaseline, type Reduction } from '../../../src/aero/reduction.ts';
import { effectiveSampleSize, mean } from '../../../src/aero/statistics/descriptive.ts';
import { sampleStandardDeviation } from '../../../src/aero/statistics/descriptive.ts';
import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
  expandedUncertainty,
  meanUncertainty,
  resolutionUncertainty,
  type Component,
} from '../../../src/aero/statistics/uncertainty.ts';
import { given, itemAt, valueOf, type Answers, type RowReader } from '../referenceRow.ts';
import { conditionOf } from './airspeed.ts';

function gaugeBlock(row: RowReader): readonly Component[] {
  const degrees = row.list('nu_i');
  return row.list('u_i').map((standardUncertainty, index) => ({
    sensitivity: 1,
    standardUncertainty,
    degreesOfFreedom: itemAt(degrees, index),
  }));
}

interface Worked {
  readonly referredKgPerS: number;
  readonly baselineKgPerS: number;
  readonly elasticity: number;
  readonly reduction: Reduction;
}

const stated = (standardUncertainty: number) => ({
  standardUncertainty,
  degreesOfFreedom: Infinity,
});

/** The worked example of a burst of five readings against a fitted baseline. */
function worked(row: RowReader): Worked {
  const condition = conditionOf(row);
  const { pressureRatio, temperatureRatio, temperatureK, pressureAltitudeM } = condition.air;
  const readings = row.siList('readings_main_fuel_flow');
  const weightN = row.si('W');
  const slopeKgPerSPerN = row.si('incremental_fuel_slope');
  const excessN = excessForceN({
    weightN,
    climbRateMPerS: row.si('hdot_geometric'),
    accelerationMPerS2: 0,
    trueAirspeedMPerS: condition.trueAirspeedMPerS,
  });
  const levelKgPerS = levelFuelFlow({
    fuelFlowKgPerS: mean(readings),
    slopeKgPerSPerN,
    excessForceN: excessN,
  }).fuelFlowKgPerS;
  const data = row.through('baseline');
  const weights = data.siList('W_over_delta');
  const baseline = given(
    fitBaseline({
      runs: data.siList('referred_fuel_flow').map((fuelFlowKgPerS, index) => ({
        fuelFlowKgPerS,
        weightN: itemAt(weights, index),
        standardUncertaintyKgPerS: 1,
        readingCount: 1,
      })),
      trust: 'relative',
    }),
  );
  const at = baselineAt(baseline, referredWeightN({ weightN, pressureRatio }));
  const referredKgPerS = referredFuelFlowKgPerS({
    fuelFlowKgPerS: levelKgPerS,
    pressureRatio,
    temperatureRatio,
  });
  const reduction = compareWithBaseline({
    levelFuelFlowKgPerS: levelKgPerS,
    referredFuelFlowKgPerS: referredKgPerS,
    baselineFuelFlowKgPerS: at.fuelFlowKgPerS,
    weightElasticity: at.weightElasticity,
    machSensitivity: row.raw('dlnY_dM'),
    slopeKgPerSPerN,
    weightN,
    trueAirspeedMPerS: condition.trueAirspeedMPerS,
    temperatureK,
    fuelFlowDoubtsKgPerS: [
      {
        standardUncertainty: meanUncertainty({
          standardDeviation: sampleStandardDeviation(readings),
          count: readings.length,
        }),
        degreesOfFreedom: readings.length - 1,
      },
      stated(resolutionUncertainty(row.si('gauge_resolution'))),
    ],
    climbRateDoubtMPerS: stated(row.si('u_hdot')),
    accelerationDoubtMPerS2: stated(0),
    pressureRatioRelativeDoubt: stated(row.si('u_Hp') * pressureFallPerM(pressureAltitudeM)),
    temperatureDoubtK: stated(row.si('u_SAT')),
    weightDoubtN: stated(row.si('u_W')),
    machDoubt: stated(row.raw('u_M')),
    baselineDoubtKgPerS: {
      standardUncertainty: at.standardUncertaintyKgPerS,
      degreesOfFreedom: baseline.fit.degreesOfFreedom,
    },
  });
  return {
    referredKgPerS,
    baselineKgPerS: at.fuelFlowKgPerS,
    elasticity: at.weightElasticity,
    reduction,
  };
}

export const uncertaintyAnswers: Answers = {
  'combined standard uncertainty': (row) => combinedUncertainty(gaugeBlock(row)),
  'combined standard uncertainty, full precision': (row) => combinedUncertainty(gaugeBlock(row)),
  'effective degrees of freedom (Welch-Satterthwaite)': (row) =>
    effectiveDegreesOfFreedom(gaugeBlock(row)),
  'expanded uncertainty, 99 percent': (row) =>
    expandedUncertainty({
      standardUncertainty: combinedUncertainty(gaugeBlock(row)),
      // The printed factor 2.92 is that of 16 degrees of freedom: the GUM truncates.
      degreesOfFreedom: Math.floor(effectiveDegreesOfFreedom(gaugeBlock(row))),
      confidence: 0.99,
    }),
  'drag-reduction ratio R = 1 - L/T on referred fuel flow': (row) =>
    worked(row).reduction.reductionFraction,
  'referred laminar fuel flow after energy correction': (row) =>
    row.out(worked(row).referredKgPerS),
  'baseline prediction at the same W/delta': (row) => row.out(worked(row).baselineKgPerS),
  'elasticity of the baseline with W/delta': (row) => worked(row).elasticity,
  'combined standard uncertainty of R': (row) => worked(row).reduction.standardUncertainty,
  'effective degrees of freedom': (row) => worked(row).reduction.degreesOfFreedom,
  '95 percent expanded uncertainty of R': (row) => worked(row).reduction.expanded95,
  'drag reduction after a TSFC slope of -0.15': (row) =>
    valueOf(
      dragReductionFromSlope({
        fuelReductionFraction: worked(row).reduction.reductionFraction,
        slope: row.raw('s'),
      }),
    ).dragReductionFraction,
  'effective sample size, first-order autocorrelation, large-n form n(1-r)/(1+r)': (row) =>
    effectiveSampleSize({ count: row.raw('n'), lag1: row.raw('r1') }),
};
