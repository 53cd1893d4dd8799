import { describe, expect, it } from 'vitest';
import * as airspeed from '../../src/aero/airspeed.ts';
import * as atmosphere from '../../src/aero/atmosphere.ts';
import { flightCondition } from '../../src/aero/flightCondition.ts';
import * as friction from '../../src/aero/friction.ts';
import * as fuelFlow from '../../src/aero/fuelFlow.ts';
import { coverageDragReduction, coverageVerdict } from '../../src/aero/laminarArea.ts';
import { polarDrag } from '../../src/aero/polar.ts';
import { judgeProbe } from '../../src/aero/probes.ts';
import { chordReynolds, unitReynoldsPerM } from '../../src/aero/reynolds.ts';
import { BAD, refusalsOf } from './refusals.ts';

/* A broken precondition throws and names what was wrong: here field by field. */

const { negative, none, notFinite } = BAD;

describe('air that is no air is refused', () => {
  refusalsOf('airState', atmosphere.airState, { pressureAltitudeM: 0, staticTemperatureK: 288 }, [
    ['pressureAltitudeM', 'pressure altitude', notFinite],
    ['staticTemperatureK', 'static temperature', notFinite],
  ]);
  refusalsOf('density', atmosphere.densityKgPerM3, { pressurePa: 20_000, temperatureK: 220 }, [
    ['pressurePa', 'pressure', none],
    ['temperatureK', 'temperature', none],
  ]);
  const sound = ({ kelvin }: { kelvin: number }) => atmosphere.speedOfSoundMPerS(kelvin);
  refusalsOf('speed of sound', sound, { kelvin: 220 }, [['kelvin', 'temperature', none]]);
  const viscosity = ({ kelvin }: { kelvin: number }) => atmosphere.dynamicViscosityPaS(kelvin);
  refusalsOf('viscosity', viscosity, { kelvin: 220 }, [['kelvin', 'temperature', none]]);
  const potential = ({ m }: { m: number }) => atmosphere.geopotentialAltitudeM(m);
  refusalsOf('geopotential height', potential, { m: 0 }, [
    ['m', 'earth radius', [Number.NaN, -6_356_766, -7e6]],
  ]);
  const geometric = ({ m }: { m: number }) => atmosphere.geometricAltitudeM(m);
  refusalsOf('geometric height', geometric, { m: 0 }, [
    ['m', 'earth radius', [Number.NaN, 6_356_766, 7e6]],
  ]);
});

describe('a speed that is none is refused', () => {
  const at = { mach: 0.7, pressurePa: 20_000 };
  refusalsOf('dynamic pressure', airspeed.dynamicPressurePa, at, [
    ['mach', 'Mach number', negative],
    ['pressurePa', 'static pressure', none],
  ]);
  refusalsOf('impact pressure', airspeed.impactPressurePa, at, [
    ['mach', 'Mach number', [...negative, 1.01]],
    ['pressurePa', 'static pressure', none],
  ]);
  refusalsOf('calibrated airspeed', airspeed.calibratedFromMach, at, [
    ['mach', 'Mach number', [...negative, 1.01]],
    ['pressurePa', 'static pressure', none],
  ]);
  refusalsOf('equivalent airspeed', airspeed.equivalentFromMach, at, [
    ['mach', 'Mach number', negative],
    ['pressurePa', 'static pressure', none],
  ]);
  const impact = { impactPressurePa: 5000, pressurePa: 20_000 };
  refusalsOf('Mach of impact pressure', airspeed.machFromImpactPressure, impact, [
    ['impactPressurePa', 'impact pressure', negative],
    ['pressurePa', 'static pressure', none],
  ]);
  const calibrated = { calibratedMPerS: 100, pressurePa: 50_000 };
  refusalsOf('Mach of calibrated airspeed', airspeed.machFromCalibrated, calibrated, [
    ['calibratedMPerS', 'Mach number', [-1, Number.NaN]],
    ['pressurePa', 'static pressure', none],
  ]);
  refusalsOf('true airspeed', airspeed.trueFromMach, { mach: 0.7, temperatureK: 220 }, [
    ['mach', 'Mach number', negative],
    ['temperatureK', 'temperature', none],
  ]);
  refusalsOf(
    'Mach of true airspeed',
    airspeed.machFromTrue,
    { trueMPerS: 200, temperatureK: 220 },
    [
      ['trueMPerS', 'true airspeed', negative],
      ['temperatureK', 'temperature', none],
    ],
  );
  const probe = { mach: 0.7, recoveryFactor: 0.98 };
  refusalsOf(
    'total temperature',
    airspeed.totalTemperatureK,
    { ...probe, staticTemperatureK: 220 },
    [
      ['staticTemperatureK', 'static temperature', none],
      ['mach', 'Mach number', negative],
      ['recoveryFactor', 'recovery factor', [-0.01, 1.01, Number.NaN]],
    ],
  );
  refusalsOf(
    'static temperature',
    airspeed.staticTemperatureK,
    { ...probe, totalTemperatureK: 240 },
    [
      ['totalTemperatureK', 'total temperature', none],
      ['mach', 'Mach number', negative],
    ],
  );
  const condition = ({ mach, kelvin }: { mach: number; kelvin: number }) =>
    flightCondition({ mach, pressureAltitudeM: 11_000, temperature: { kind: 'static', kelvin } });
  refusalsOf('a flight condition', condition, { mach: 0.7, kelvin: 217 }, [
    ['mach', 'Mach number', notFinite],
    ['kelvin', 'temperature', notFinite],
  ]);
  const air = { mach: 0.7, pressurePa: 20_000, temperatureK: 220 };
  refusalsOf('unit Reynolds number', unitReynoldsPerM, air, [
    ['mach', 'Mach number', negative],
    ['pressurePa', 'pressure', none],
    ['temperatureK', 'temperature', none],
  ]);
  refusalsOf('chord Reynolds number', chordReynolds, { ...air, chordM: 5 }, [
    ['chordM', 'chord', none],
  ]);
});

describe('a flow, a force or a weight that is none is refused', () => {
  const warm = { pressureAltitudeRateMPerS: 1, temperatureK: 226, standardTemperatureK: 217 };
  refusalsOf('climb rate', fuelFlow.geometricClimbRateMPerS, warm, [
    ['pressureAltitudeRateMPerS', 'rate of pressure altitude', notFinite],
    ['temperatureK', 'temperature', none],
    ['standardTemperatureK', 'standard temperature', none],
  ]);
  const drift = { machRatePerS: 1e-4, temperatureK: 217 };
  refusalsOf('acceleration', fuelFlow.accelerationFromMachRate, drift, [
    ['machRatePerS', 'rate of Mach', notFinite],
    ['temperatureK', 'temperature', none],
  ]);
  const excess = {
    weightN: 3e5,
    climbRateMPerS: 0.1,
    accelerationMPerS2: 0.01,
    trueAirspeedMPerS: 220,
  };
  refusalsOf('excess force', fuelFlow.excessForceN, excess, [
    ['weightN', 'weight', none],
    ['trueAirspeedMPerS', 'true airspeed', none],
    ['climbRateMPerS', 'climb rate', notFinite],
    ['accelerationMPerS2', 'acceleration', notFinite],
  ]);
  const level = { fuelFlowKgPerS: 0.4, slopeKgPerSPerN: 2e-5, excessForceN: 100 };
  refusalsOf('level flow', fuelFlow.levelFuelFlow, level, [
    ['fuelFlowKgPerS', 'fuel flow', none],
    ['slopeKgPerSPerN', 'slope', negative],
    ['excessForceN', 'excess force', notFinite],
  ]);
  const heat = { fuelFlowKgPerS: 0.4, heatingValue: 43, referenceHeatingValue: 43 };
  refusalsOf('flow of the reference fuel', fuelFlow.sameHeatFuelFlowKgPerS, heat, [
    ['fuelFlowKgPerS', 'fuel flow', none],
    ['heatingValue', 'heating value', none],
    ['referenceHeatingValue', 'reference heating value', none],
  ]);
  const ratios = { pressureRatio: 0.2, temperatureRatio: 0.75 };
  refusalsOf('referred flow', fuelFlow.referredFuelFlowKgPerS, { fuelFlowKgPerS: 0.4, ...ratios }, [
    ['fuelFlowKgPerS', 'fuel flow', notFinite],
    ['pressureRatio', 'pressure ratio', none],
    ['temperatureRatio', 'temperature ratio', none],
  ]);
  const referred = { referredFuelFlowKgPerS: 2, ...ratios };
  refusalsOf('flow at a height', fuelFlow.fuelFlowAtKgPerS, referred, [
    ['referredFuelFlowKgPerS', 'referred fuel flow', notFinite],
    ['pressureRatio', 'pressure ratio', none],
    ['temperatureRatio', 'temperature ratio', none],
  ]);
  refusalsOf('referred weight', fuelFlow.referredWeightN, { weightN: 3e5, pressureRatio: 0.2 }, [
    ['weightN', 'weight', none],
    ['pressureRatio', 'pressure ratio', none],
  ]);
  const lift = { referredWeightN: 1e6, mach: 0.7, wingAreaM2: 57 };
  refusalsOf('lift coefficient', fuelFlow.liftCoefficient, lift, [
    ['referredWeightN', 'referred weight', none],
    ['mach', 'Mach number', none],
    ['wingAreaM2', 'wing area', none],
  ]);
  const polar = {
    dynamicPressurePa: 7400,
    wingAreaM2: 57,
    zeroLiftCoefficient: 0.018,
    liftFactor: 0.06,
    weightN: 3e5,
  };
  refusalsOf('polar', polarDrag, polar, [
    ['dynamicPressurePa', 'dynamic pressure', none],
    ['wingAreaM2', 'wing area', none],
    ['zeroLiftCoefficient', 'zero-lift coefficient', negative],
    ['liftFactor', 'lift factor', none],
    ['weightN', 'weight', none],
  ]);
});

describe('a layer that is none is refused', () => {
  const laminar = ({ reynolds }: { reynolds: number }) =>
    friction.laminarPlateCoefficient(reynolds);
  refusalsOf('laminar plate', laminar, { reynolds: 1e7 }, [['reynolds', 'Reynolds number', none]]);
  const plate = { reynolds: 2e7, transitionFraction: 0.5 };
  for (const [name, call] of [
    ['virtual origin', friction.virtualOriginCoefficient],
    ['transition constant', friction.transitionConstantCoefficient],
  ] as const) {
    refusalsOf(name, call, plate, [
      ['reynolds', 'Reynolds number', none],
      ['transitionFraction', 'transition', [-0.01, 1.01, Number.NaN]],
    ]);
  }
  const place = { distanceM: 5, reynolds: 2e7 };
  for (const [name, call] of [
    ['laminar thickness', friction.laminarLayerThicknessM],
    ['turbulent thickness', friction.turbulentLayerThicknessM],
  ] as const) {
    refusalsOf(name, call, place, [
      ['distanceM', 'distance', negative],
      ['reynolds', 'Reynolds number', none],
    ]);
  }
  const share = [-0.01, 1.01, Number.NaN];
  const coverage = { laminarFraction: 0.5, coefficientRatio: 0.1, treatedShare: 0.2 };
  refusalsOf('drag of coverage', coverageDragReduction, coverage, [
    ['laminarFraction', 'laminar fraction', share],
    ['coefficientRatio', 'friction coefficient ratio', share],
    ['treatedShare', 'treated share', share],
  ]);
  const verdict = { dragReductionFraction: 0.1, expanded95: 0.01, coverageEstimate: 0.1 };
  refusalsOf('verdict of coverage', coverageVerdict, verdict, [
    ['dragReductionFraction', 'drag reduction', notFinite],
    ['expanded95', 'expanded uncertainty', negative],
    ['coverageEstimate', 'coverage estimate', notFinite],
  ]);
  const probe = {
    deficitPa: 300,
    gaugeErrorPa: 25,
    dynamicPressurePa: 7000,
    impactPressurePa: 8000,
    limitPa: 500,
    deadBandPa: 50,
  };
  const judged = (of: typeof probe) =>
    judgeProbe({
      deficitPa: of.deficitPa,
      gaugeErrorPa: of.gaugeErrorPa,
      stream: of,
      laminarBelow: { kind: 'pressure', limitPa: of.limitPa, deadBandPa: of.deadBandPa },
    });
  refusalsOf('probe', judged, probe, [
    ['deficitPa', 'total-pressure deficit', notFinite],
    ['gaugeErrorPa', 'gauge error', negative],
    ['dynamicPressurePa', 'dynamic pressure', none],
    ['impactPressurePa', 'impact pressure', none],
    ['limitPa', 'laminar limit', negative],
    ['deadBandPa', 'dead band', negative],
  ]);
});

describe('every refusal', () => {
  it('names the value it got', () => {
    expect(() => atmosphere.speedOfSoundMPerS(-3)).toThrow(/got -3$/);
    expect(() => atmosphere.standardTemperatureK(40_000)).toThrow(/got 40000 m$/);
  });
});
