import { describe } from 'vitest';
import { baselineAt, fitBaseline, liveBaseline, pairBaseline } from '../../src/aero/baseline.ts';
import { baselineGates } from '../../src/aero/baselineGates.ts';
import { bracketAt } from '../../src/aero/bracket.ts';
import { mapElsewhere, mapOfEngines } from '../../src/aero/engines.ts';
import * as engineMap from '../../src/aero/engineMap.ts';
import { fitBaselineWithMach } from '../../src/aero/machTerm.ts';
import { compareWithBaseline, type Comparison } from '../../src/aero/reduction.ts';
import * as savings from '../../src/aero/savings.ts';
import { thrustOfFuelFlow } from '../../src/aero/thrustMap.ts';
import { given } from './referenceRow.ts';
import { BAD, refusalsOf } from './refusals.ts';

const { negative, none, notFinite } = BAD;

describe('a saving of nothing is refused', () => {
  const flows = { fuelFlowKgPerS: 0.36, baselineFuelFlowKgPerS: 0.4 };
  refusalsOf('fuel reduction', savings.fuelReductionFraction, flows, [
    ['fuelFlowKgPerS', 'fuel flow', notFinite],
    ['baselineFuelFlowKgPerS', 'baseline fuel flow', none],
  ]);
  const plant = { mainFlowKgPerS: 0.36, baselineFlowKgPerS: 0.4, costKgPerS: 0.01 };
  const byPlant = ({ costKgPerS, ...main }: typeof plant) =>
    savings.grossAndNet({ ...main, drive: { kind: 'separatePlant', plantFlowKgPerS: costKgPerS } });
  refusalsOf('gross and net of a plant', byPlant, plant, [
    ['mainFlowKgPerS', 'main fuel flow', notFinite],
    ['baselineFlowKgPerS', 'baseline fuel flow', none],
    ['costKgPerS', 'suction plant flow', negative],
  ]);
  const byBleed = ({ costKgPerS, ...main }: typeof plant) =>
    savings.grossAndNet({ ...main, drive: { kind: 'bleed', bleedPenaltyKgPerS: costKgPerS } });
  refusalsOf('gross and net of bleed', byBleed, plant, [['costKgPerS', 'bleed penalty', negative]]);
  const cruise = {
    specificConsumptionKgPerSPerN: 1.7e-5,
    liftToDrag: 16,
    initialWeight: 40,
    finalWeight: 30,
    trueAirspeedMPerS: 220,
  };
  refusalsOf('range', savings.breguetRangeM, cruise, [
    ['specificConsumptionKgPerSPerN', 'specific consumption', none],
    ['liftToDrag', 'lift to drag ratio', none],
    ['initialWeight', 'initial weight', [29, Number.NaN]],
    ['finalWeight', 'final weight', none],
    ['trueAirspeedMPerS', 'true airspeed', none],
  ]);
  const gain = ({ r }: { r: number }) => savings.rangeGainFraction(r);
  refusalsOf('range gained', gain, { r: 0.1 }, [['r', 'drag reduction', [1, Number.NaN]]]);
  const same = { fuelFraction: 0.25, dragReductionFraction: 0.1 };
  refusalsOf('fuel for one range', savings.fuelFractionForSameRange, same, [
    ['fuelFraction', 'fuel fraction', [-0.1, 1, Number.NaN]],
    ['dragReductionFraction', 'drag reduction', [1, Number.NaN]],
  ]);
});

describe('an engine that is none is refused', () => {
  const line = {
    idleKgPerS: 0.02,
    slopeKgPerSPerN: 2e-5,
    fuelFlowKgPerS: 0.3,
  };
  const bySlope = { fuelReductionFraction: 0.1, slope: -0.2 };
  refusalsOf('drag by a slope', engineMap.dragReductionFromSlope, bySlope, [
    ['fuelReductionFraction', 'fuel reduction', [1, Number.NaN]],
    ['slope', 'slope', notFinite],
  ]);
  const bound = { excessForceN: 1, weightN: 3e5, fuelFlowKgPerS: 0.4, liftToDragAtMost: 18 };
  refusalsOf('bound of the excess force', engineMap.energyHalfRangeKgPerS, bound, [
    ['excessForceN', 'excess force', notFinite],
    ['weightN', 'weight', none],
    ['fuelFlowKgPerS', 'fuel flow', none],
    ['liftToDragAtMost', 'lift to drag ratio', none],
  ]);
  const map = { kind: 'line', idleKgPerS: 0.02, slopeKgPerSPerN: 2e-5 } as const;
  const asMap = (of: typeof line) => thrustOfFuelFlow({ ...of, kind: 'line' }, of.fuelFlowKgPerS);
  refusalsOf('thrust off a map', asMap, line, [
    ['idleKgPerS', 'idle flow', negative],
    ['slopeKgPerSPerN', 'slope', none],
    ['fuelFlowKgPerS', 'fuel flow', none],
  ]);
  const together = (of: typeof line) => mapOfEngines([map, { ...of, kind: 'line' }]);
  refusalsOf('engines together', together, line, [
    ['idleKgPerS', 'idle flow', negative],
    ['slopeKgPerSPerN', 'slope', none],
  ]);
  const elsewhere = { map, pressureRatio: 1, temperatureRatio: 1 };
  refusalsOf('map elsewhere', mapElsewhere, elsewhere, [
    ['pressureRatio', 'pressure ratio', none],
    ['temperatureRatio', 'temperature ratio', none],
  ]);
});

describe('a baseline of nothing is refused', () => {
  const run = {
    fuelFlowKgPerS: 1.3,
    weightN: 4e5,
    standardUncertaintyKgPerS: 0.004,
    readingCount: 3,
    mach: 0.75,
  };
  const other = { ...run, fuelFlowKgPerS: 1.2, weightN: 3.6e5 };
  const borrowed = { elasticity: 0.6, standardUncertainty: 0.05 };
  const ofRun: readonly (readonly [keyof typeof run, string, readonly number[]])[] = [
    ['fuelFlowKgPerS', 'fuel flow', none],
    ['weightN', 'weight', none],
    ['standardUncertaintyKgPerS', 'uncertainty of a run', none],
  ];
  refusalsOf('pair', (of: typeof run) => pairBaseline(of, borrowed), run, ofRun);
  const absolute = { trust: 'absolute' } as const;
  refusalsOf(
    'fit',
    (of: typeof run) => fitBaseline({ runs: [of, other], ...absolute }),
    run,
    ofRun,
  );
  const known = { slopeKgPerSPerMach: 3, standardUncertainty: 0.5 };
  refusalsOf(
    'fit with Mach',
    (of: typeof run) => fitBaselineWithMach({ runs: [of, other], ...absolute, known }),
    run,
    [...ofRun, ['mach', 'Mach number', none]],
  );
  const doubt = ({ u }: { u: number }) =>
    pairBaseline(run, { ...borrowed, standardUncertainty: u });
  refusalsOf('pair', doubt, { u: 0.05 }, [['u', 'elasticity uncertainty', negative]]);
  const held = ({ u }: { u: number }) =>
    liveBaseline([run, other], { ...borrowed, standardUncertainty: u });
  refusalsOf('live', held, { u: 0.05 }, [['u', 'elasticity uncertainty', none]]);
  const about = ({ n }: { n: number }) =>
    fitBaseline({ runs: [run, other], ...absolute, referenceWeightN: n });
  refusalsOf('reference', about, { n: 4e5 }, [['n', 'reference weight', none]]);
  const withMach = { referenceMach: 0.75, referenceWeightN: 4e5 };
  const aboutMach = (of: typeof withMach) =>
    fitBaselineWithMach({ runs: [run, other], ...absolute, known, ...of });
  refusalsOf('reference', aboutMach, withMach, [
    ['referenceMach', 'reference Mach number', none],
    ['referenceWeightN', 'reference weight', none],
  ]);
  const slope = (of: typeof known) =>
    fitBaselineWithMach({ runs: [run, other], ...absolute, known: of });
  refusalsOf('Mach slope', slope, known, [
    ['slopeKgPerSPerMach', 'Mach slope', notFinite],
    ['standardUncertainty', 'doubt of the Mach slope', negative],
  ]);
  const pair = pairBaseline(run, borrowed);
  const fit = given(fitBaselineWithMach({ runs: [run, other], ...absolute, known }));
  for (const [name, baseline] of [
    ['pair', pair],
    ['fit', fit],
  ] as const) {
    const at = ({ n }: { n: number }) => baselineAt(baseline, n);
    refusalsOf(`${name} at`, at, { n: 4e5 }, [['n', 'weight', none]]);
  }
  const atMach = ({ mach }: { mach: number }) => baselineAt(fit, 4e5, mach);
  refusalsOf('fit at', atMach, { mach: 0.75 }, [['mach', 'Mach difference', notFinite]]);
  const between = ({ n }: { n: number }) =>
    bracketAt({ before: run, after: run, weightN: n, borrowed });
  refusalsOf('bracket at', between, { n: 4e5 }, [['n', 'weight', none]]);
  const condition = { weightN: 4e5, machDifference: 0, altitudeDifferenceM: 0 };
  refusalsOf(
    'gates',
    (of: typeof condition) => baselineGates({ baseline: pair, ...of }),
    condition,
    [
      ['weightN', 'weight', none],
      ['machDifference', 'Mach difference', notFinite],
      ['altitudeDifferenceM', 'altitude difference', notFinite],
    ],
  );
  const stated = { standardUncertainty: 0.001, degreesOfFreedom: Infinity };
  const comparison: Comparison = {
    levelFuelFlowKgPerS: 0.36,
    referredFuelFlowKgPerS: 1.8,
    baselineFuelFlowKgPerS: 2,
    weightElasticity: 0.7,
    machSensitivity: 1.5,
    slopeKgPerSPerN: 2e-5,
    weightN: 3e5,
    trueAirspeedMPerS: 220,
    temperatureK: 217,
    fuelFlowDoubtsKgPerS: [stated],
    climbRateDoubtMPerS: stated,
    accelerationDoubtMPerS2: stated,
    pressureRatioRelativeDoubt: stated,
    temperatureDoubtK: stated,
    weightDoubtN: stated,
    machDoubt: stated,
    baselineDoubtKgPerS: stated,
  };
  refusalsOf('comparison', compareWithBaseline, comparison, [
    ['levelFuelFlowKgPerS', 'level fuel flow', none],
    ['referredFuelFlowKgPerS', 'referred fuel flow', none],
    ['baselineFuelFlowKgPerS', 'baseline fuel flow', none],
    ['weightN', 'weight', none],
    ['trueAirspeedMPerS', 'true airspeed', none],
    ['temperatureK', 'temperature', none],
    ['slopeKgPerSPerN', 'slope', notFinite],
    ['machSensitivity', 'sensitivity', notFinite],
  ]);
});
