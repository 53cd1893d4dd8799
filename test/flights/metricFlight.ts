import type { FlightSheet, Instrument } from '../../src/record/sheet.ts';
import type { Saying } from './scriptBodies.ts';

/**
 * A generated flight of an invented four-engine aircraft in metric units. Everything is drawn from a seeded generator
 * and a simple model of drag and fuel flow that shares no code with the application.
 */

/** One thing that the scribe writes, and when. */
export interface Step extends Saying {
  readonly utcMs: number;
}

export interface MetricFlight {
  readonly sheet: FlightSheet;
  readonly steps: readonly Step[];
}

const START = Date.UTC(2033, 8, 14, 9, 0, 0);
const GRAVITY = 9.80665;
const ENGINES = [1, 2, 3, 4] as const;
/** No two engines burn alike. */
const ENGINE_SPREAD_KG_PER_H = [6, -4, 3, -5] as const;
const GAUGE_STEP_KG_PER_H = 5;
const GAUGE_SCATTER_KG_PER_H = 2.5;
const RAMP_KG = 52_400;
const MACH = 0.68;
const HEIGHT_M = 11_000;
const WING_M2 = 118;
const IDLE_KG_PER_H = 240;
const SLOPE_KG_PER_H_PER_N = 0.075;

/** Points flown, in order: zero-lift drag taken off by the suction, and what the unit burns for it. */
const POINTS = [
  { id: 'A1', title: 'baseline, heavy', setting: 'suction off', cd0Off: 0, unitKgPerH: 0 },
  { id: 'B1', title: 'nominal suction', setting: 'nominal', cd0Off: 0.0062, unitKgPerH: 41 },
  { id: 'B2', title: 'more suction', setting: '+20 %', cd0Off: 0.0067, unitKgPerH: 52 },
  { id: 'A2', title: 'baseline, light', setting: 'suction off', cd0Off: 0, unitKgPerH: 0 },
] as const;

export function metricFlight(seed: number): MetricFlight {
  const chance = generator(seed);
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
  const corrections = ENGINES.map(() => 5 * Math.round(3 * normal()));
  const steps: Step[] = [];
  const used = { 1: 0, 2: 0, 3: 0, 4: 0, suctionUnit: 0 };
  let nowMs = START;
  const say = (kind: Saying['kind'], body: object): void => {
    steps.push({ kind, body, utcMs: nowMs });
  };
  const burn = (seconds: number, kgPerH: number, unitKgPerH: number): void => {
    nowMs += seconds * 1000;
    for (const engine of ENGINES) {
      used[engine] += ((kgPerH / ENGINES.length) * seconds) / 3600;
    }
    used.suctionUnit += (unitKgPerH * seconds) / 3600;
  };
  const weightKg = (): number => RAMP_KG - Object.values(used).reduce((sum, kg) => sum + kg, 0);
  const counters = (): readonly object[] => [
    ...ENGINES.map((engine) => reading(`FU${engine}`, Math.round(used[engine]), 'kg')),
    reading('FUS', Math.round(used.suctionUnit), 'kg'),
  ];

  say('preflightDone', { rampWeight: { value: RAMP_KG, unit: 'kg' } });
  burn(900, 0, 0);
  say('blocksOff', {});
  burn(600, 1500, 0);
  say('liftedOff', {});
  burn(30, 8000, 0);
  say('gearMoved', { to: 'up' });
  burn(1500, 4200, 0);
  say('levelledOff', {});
  burn(240, 2700, 0);
  for (const [order, point] of POINTS.entries()) {
    const before = POINTS[order - 1];
    if (point.cd0Off > 0) {
      const settings = { wing: 'both', setting: point.setting };
      say(before?.cd0Off === 0 ? 'suctionTurnedOn' : 'suctionChanged', settings);
    } else if (order > 0) {
      say('suctionTurnedOff', { wing: 'both' });
    }
    burn(400, 2500, point.unitKgPerH);
    say('conditionReached', {});
    burn(30, 2500, point.unitKgPerH);
    say('testPointStarted', { point: point.id, run: 1 });
    burn(45, 2500, point.unitKgPerH);
    for (let count = 0; count < 3; count += 1) {
      const air = airOf(normal);
      const flow = trueFlowKgPerH(weightKg(), point.cd0Off, air);
      const shares = ENGINE_SPREAD_KG_PER_H.map((spread) => flow / ENGINES.length + spread);
      say('fuelRead', {
        glance: nowMs,
        readings: [
          ...ENGINES.map((engine, index) => {
            const shown =
              (shares[index] ?? 0) - (corrections[index] ?? 0) + GAUGE_SCATTER_KG_PER_H * normal();
            return reading(`FF${engine}`, stepped(shown, GAUGE_STEP_KG_PER_H), 'kg/h');
          }),
          reading('SU', Math.round(point.unitKgPerH), 'kg/h'),
          ...counters(),
          reading('MACH', stepped(air.mach, 0.001), '1'),
          reading('ALT', stepped(air.heightM, 5), 'm'),
          reading('SAT', stepped(air.tempDegC, 0.5), 'degC'),
          reading('MDRIFT', stepped(air.machPerMin, 0.0002), '1/min'),
          reading('CLIMB', stepped(air.climbMPerS, 0.05), 'm/s'),
        ],
      });
      burn(150, flow, point.unitKgPerH);
    }
    say('testPointEnded', { point: point.id, run: 1 });
    burn(1500, 2500, point.unitKgPerH);
  }
  say('descentBegun', {});
  burn(1500, 1200, 0);
  say('touchedDown', {});
  burn(300, 800, 0);
  say('blocksOn', {});
  return { sheet: sheetOf(corrections), steps };
}

interface Air {
  readonly mach: number;
  readonly heightM: number;
  readonly tempDegC: number;
  readonly machPerMin: number;
  readonly climbMPerS: number;
}

function airOf(normal: () => number): Air {
  return {
    mach: MACH + 0.0012 * normal(),
    heightM: HEIGHT_M - 12 + 8 * normal(),
    tempDegC: -54 + 0.4 * normal(),
    machPerMin: 0.0003 * normal(),
    climbMPerS: 0.04 * normal(),
  };
}

/** Engines' flow for a parabolic polar, a straight engine map and the force that climbs or accelerates. */
function trueFlowKgPerH(massKg: number, cd0Off: number, air: Air): number {
  const pressurePa = 22_632.06 * Math.exp((-GRAVITY * (air.heightM - 11_000)) / (287.053 * 216.65));
  const tempK = air.tempDegC + 273.15;
  const dynamicPa = 0.7 * pressurePa * air.mach ** 2;
  const weightN = massKg * GRAVITY;
  const lift = weightN / (dynamicPa * WING_M2);
  const dragN = dynamicPa * WING_M2 * (0.021 - cd0Off + 0.05 * lift ** 2);
  const sound = Math.sqrt(1.4 * 287.053 * tempK);
  const climb = (air.climbMPerS * (tempK / 216.65)) / (air.mach * sound);
  const acceleration = ((air.machPerMin / 60) * sound) / GRAVITY;
  const thrustN = dragN + weightN * (climb + acceleration);
  return (IDLE_KG_PER_H + SLOPE_KG_PER_H_PER_N * thrustN) * Math.sqrt(tempK / 216.65);
}

function reading(instrument: string, value: number, unit: string): object {
  return { instrument, value, unit, method: 'digits' };
}

/** On the gauge's grid, without the dust of binary fractions. */
function stepped(value: number, step: number): number {
  return Number((step * Math.round(value / step)).toFixed(6));
}

/** A small linear congruential generator, so that a failing flight can be flown again. */
export function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

function sheetOf(corrections: readonly number[]): FlightSheet {
  const instrument = (
    given: Pick<Instrument, 'id' | 'name' | 'quantity' | 'unit' | 'resolution'> & {
      readonly consumer?: Instrument['consumer'];
      readonly correction?: number;
      readonly repeatability?: number;
      readonly residual?: number;
      readonly digits: readonly [whole: number, decimals: number, signed?: boolean];
    },
  ): Instrument => ({
    id: given.id,
    name: given.name,
    quantity: given.quantity,
    ...(given.consumer !== undefined && { consumer: given.consumer }),
    unit: given.unit,
    format: {
      wholeDigits: given.digits[0],
      decimals: given.digits[1],
      signed: given.digits[2] ?? false,
    },
    resolution: given.resolution,
    repeatability: given.repeatability ?? 0,
    calibration: {
      correction: given.correction ?? 0,
      residualStandardUncertainty: given.residual ?? 0,
    },
    serviceable: true,
  });
  const page = Array.from({ length: 12 }, () => null);
  return {
    id: 'sheet-metric',
    revision: 'A',
    title: 'Slotted strip trials',
    massUnit: 'kg',
    heightUnit: 'm',
    legs: ['out', 'home'],
    people: [
      { id: 'S1', role: 'scribe' },
      { id: 'P1', role: 'pilot' },
    ],
    aircraft: {
      mark: 'QZ-KLR',
      wingArea: { value: WING_M2, unit: 'm2' },
      engineCount: 4,
      suctionDrive: 'ownMeteredFuel',
      machSensitivitySuctionOff: 0.9,
      machSensitivitySuctionOn: 0.5,
    },
    engineMap: {
      idleFlow: { value: IDLE_KG_PER_H, unit: 'kg/h' },
      idleStandardUncertainty: { value: 10, unit: 'kg/h' },
      flowPerThrust: { value: SLOPE_KG_PER_H_PER_N, unit: 'kg/h/N' },
    },
    weights: {
      ramp: { value: RAMP_KG, unit: 'kg' },
      grossWeightStandardUncertainty: { value: 60, unit: 'kg' },
    },
    condition: { mach: MACH, pressureAltitude: { value: HEIGHT_M, unit: 'm' } },
    tolerances: {
      mach: 0.006,
      machRatePerMin: 0.0015,
      altitude: { value: 40, unit: 'm' },
      climb: { value: 0.3, unit: 'm/s' },
    },
    machHoldStandardUncertainty: 0.001,
    timeDoubts: { touchS: 2, readingS: 5, lateS: 20 },
    borrowedBaseline: {
      weightElasticity: 0.5,
      standardUncertainty: 0.06,
      from: 'two earlier flights of this aircraft',
    },
    targetReductionFraction: 0.15,
    panels: (['L', 'R'] as const).flatMap((wing) =>
      [1, 2, 3, 4].map((number) => ({
        id: `${wing}${number}`,
        wing,
        number,
        area: { value: 6, unit: 'm2' as const },
      })),
    ),
    probes: (['L', 'R'] as const).flatMap((wing) =>
      [1, 2, 3, 4, 5, 6, 7, 8].map((number) => ({
        id: `${wing}0${number}`,
        wing,
        panel: `${wing}${Math.ceil(number / 2)}`,
        form: 'trailingEdgeTotal' as const,
        area: { value: 3, unit: 'm2' as const },
        serviceable: true,
      })),
    ),
    instruments: [
      ...ENGINES.map((engine, index) =>
        instrument({
          id: `FF${engine}`,
          name: `Fuel flow, engine ${engine}`,
          quantity: 'fuelFlow',
          consumer: engine,
          unit: 'kg/h',
          resolution: GAUGE_STEP_KG_PER_H,
          correction: corrections[index] ?? 0,
          repeatability: GAUGE_SCATTER_KG_PER_H,
          residual: 2,
          digits: [4, 0],
        }),
      ),
      instrument({
        id: 'SU',
        name: 'Suction unit fuel flow',
        quantity: 'suctionFuelFlow',
        consumer: 'suctionUnit',
        unit: 'kg/h',
        resolution: 1,
        repeatability: 0.5,
        residual: 0.5,
        digits: [3, 0],
      }),
      ...[...ENGINES, 'suctionUnit' as const].map((consumer) =>
        instrument({
          id: consumer === 'suctionUnit' ? 'FUS' : `FU${consumer}`,
          name: `Fuel used, ${consumer === 'suctionUnit' ? 'suction unit' : `engine ${consumer}`}`,
          quantity: 'fuelUsed',
          consumer,
          unit: 'kg',
          resolution: 1,
          digits: [5, 0],
        }),
      ),
      instrument({
        id: 'MACH',
        name: 'Mach',
        quantity: 'mach',
        unit: '1',
        resolution: 0.001,
        repeatability: 0.0003,
        digits: [1, 3],
      }),
      instrument({
        id: 'ALT',
        name: 'Pressure altitude',
        quantity: 'pressureAltitude',
        unit: 'm',
        resolution: 5,
        repeatability: 2,
        digits: [5, 0],
      }),
      instrument({
        id: 'SAT',
        name: 'Static air temperature',
        quantity: 'staticAirTemp',
        unit: 'degC',
        resolution: 0.5,
        repeatability: 0.2,
        residual: 0.4,
        digits: [2, 1, true],
      }),
      instrument({
        id: 'MDRIFT',
        name: 'Mach drift',
        quantity: 'machRate',
        unit: '1/min',
        resolution: 0.0002,
        repeatability: 0.0001,
        digits: [1, 4, true],
      }),
      instrument({
        id: 'CLIMB',
        name: 'Height rate',
        quantity: 'altitudeRate',
        unit: 'm/s',
        resolution: 0.05,
        repeatability: 0.02,
        digits: [2, 2, true],
      }),
    ],
    testCards: POINTS.map((point, index) => ({
      id: point.id,
      title: point.title,
      setting: point.setting,
      suction: point.cd0Off === 0 ? 'off' : 'on',
      order: index + 1,
      priority: 1,
      minimumReadings: 3,
    })),
    clocks: [{ id: 'master', owner: 'aircraft time source', scale: 'UTC', resolutionS: 0.1 }],
    limits: { readingEveryS: 300, samplerPlannedS: 300, coversAfterGearUpS: 60 },
    tilePages: { ground: page, climb: page, cruise: page, descent: page },
    ownTiles: [],
  };
}
