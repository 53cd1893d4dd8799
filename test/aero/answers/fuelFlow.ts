import { dragReductionFromSlope } from '../../../src/aero/engineMap.ts';
import {
  excessForceN,
  liftCoefficient,
  referredFuelFlowKgPerS,
  referredWeightN,
} from '../../../src/aero/fuelFlow.ts';
import { polarDrag, type PolarDrag } from '../../../src/aero/polar.ts';
import { breguetRangeM, fuelFractionForSameRange, grossAndNet } from '../../../src/aero/savings.ts';
import { impactPressurePa, totalTemperatureK } from '../../../src/aero/airspeed.ts';
import { valueOf, type Answers, type RowReader } from '../referenceRow.ts';
import { conditionOf } from './airspeed.ts';

function excess(row: RowReader): number {
  return excessForceN({
    weightN: row.si('W'),
    climbRateMPerS: row.si('hdot_geometric'),
    accelerationMPerS2: row.si('Vdot'),
    trueAirspeedMPerS: conditionOf(row).trueAirspeedMPerS,
  });
}

function polarAt(row: RowReader, weightName: string): PolarDrag {
  return polarDrag({
    dynamicPressurePa: conditionOf(row).dynamicPressurePa,
    wingAreaM2: row.si('S'),
    zeroLiftCoefficient: row.raw('CD0'),
    liftFactor: row.raw('K'),
    weightN: row.si(weightName),
  });
}

function totalReferred(mach: number, total: boolean): number {
  return referredFuelFlowKgPerS({
    fuelFlowKgPerS: 1,
    pressureRatio: total ? 1 + impactPressurePa({ mach, pressurePa: 1 }) : 1,
    temperatureRatio: total
      ? totalTemperatureK({ staticTemperatureK: 1, mach, recoveryFactor: 1 })
      : 1,
  });
}

function savings(row: RowReader): ReturnType<typeof grossAndNet> {
  return grossAndNet({
    mainFlowKgPerS: row.si('Wf_main_suction'),
    baselineFlowKgPerS: row.si('Wf_main_baseline'),
    drive: {
      kind: 'separatePlant',
      plantFlowKgPerS: row.has('Wf_suction_plant') ? row.si('Wf_suction_plant') : 0,
    },
  });
}

export const fuelFlowAnswers: Answers = {
  'referred fuel flow Wf/(delta sqrt(theta)), ambient ratios': (row) => {
    const { pressureRatio, temperatureRatio } = conditionOf(row).air;
    const fuelFlowKgPerS = row.si('Wf');
    return row.out(referredFuelFlowKgPerS({ fuelFlowKgPerS, pressureRatio, temperatureRatio }));
  },
  'W/delta': (row) =>
    row.out(
      referredWeightN({
        weightN: row.si('W'),
        pressureRatio: conditionOf(row).air.pressureRatio,
      }),
    ),
  'ratio of (delta sqrt(theta)) built on total conditions to that on ambient conditions': (row) =>
    totalReferred(row.raw('M'), false) / totalReferred(row.raw('M'), true),
  '0.7 p0 in CL = (W/delta)/(k M^2 S)': (row) =>
    row.out(1 / liftCoefficient({ referredWeightN: 1, mach: 1, wingAreaM2: 1 })),
  'excess thrust W(hdot/V + Vdot/g)': (row) => row.out(excess(row)),
  'excess thrust, climb only': (row) => row.out(excess(row)),
  'drag error share of a 10 ft/min climb rate, L/D = 16': (row) =>
    excessForceN({
      weightN: row.raw('LoverD'),
      climbRateMPerS: row.si('hdot_geometric'),
      accelerationMPerS2: 0,
      trueAirspeedMPerS: conditionOf(row).trueAirspeedMPerS,
    }),
  'drag error share of 1 kt/min, L/D = 16': (row) =>
    excessForceN({
      weightN: row.raw('LoverD'),
      climbRateMPerS: 0,
      accelerationMPerS2: row.si('Vdot'),
      trueAirspeedMPerS: 1,
    }),
  'drag of a parabolic polar': (row) => row.out(polarAt(row, 'W').dragN),
  'lift-dependent share of drag': (row) => polarAt(row, 'W').liftDependentShare,
  'drag ratio when weight rises to 76000 lbf': (row) =>
    polarAt(row, 'W_std').dragN / polarAt(row, 'W').dragN,
  'drag reduction from fuel-flow reduction with local TSFC slope s = dln(c)/dln(T)': (row) =>
    valueOf(
      dragReductionFromSlope({
        fuelReductionFraction: row.raw('fuel_flow_reduction'),
        slope: row.raw('s'),
      }),
    ).dragReductionFraction,
  'gross fuel saving': (row) => valueOf(savings(row).gross).fraction,
  'net fuel saving including suction gas-generator fuel': (row) => savings(row).net.fraction,
  'Breguet range': (row) =>
    row.out(
      breguetRangeM({
        trueAirspeedMPerS: row.si('V'),
        specificConsumptionKgPerSPerN: row.si('TSFC'),
        liftToDrag: row.raw('LoverD'),
        initialWeight: row.raw('Wi'),
        finalWeight: row.raw('Wf'),
      }),
    ),
  'fuel fraction for the same range with drag reduced 10 percent (turbulent fraction 0.25)': (
    row,
  ) =>
    fuelFractionForSameRange({
      fuelFraction: row.raw('fuel_fraction_turbulent'),
      dragReductionFraction: row.raw('drag_reduction'),
    }),
};
