import type { FlightSheet } from '../../src/record/sheet.ts';

/**
 * Results of a flight worked out a second time, on purpose with nothing of the application: plain arithmetic in
 * kilograms, metres and seconds, the standard atmosphere written out (ICAO Doc 7488/3 constants, troposphere and
 * isothermal layer), the two-run baseline solved in closed form and the uncertainty by moving every input a little
 * (numerical derivatives) instead of by formula.
 */

export interface GlanceNumbers {
  readonly point: string;
  readonly run: number;
  /** Flow of each engine as shown, with its unit. */
  readonly flows: readonly { readonly instrument: string; readonly value: number }[];
  /** All counters together. */
  readonly usedKg: number;
  readonly mach: number;
  readonly heightM: number;
  readonly tempDegC: number;
  readonly machPerMin: number;
  readonly climbMPerS: number;
}

export interface SecondResult {
  readonly fuelFraction: number;
  readonly dragFraction: number;
  readonly standardUncertainty: number;
}

const POUND_KG = 0.45359237;
const FOOT_M = 0.3048;
const GRAVITY = 9.80665;
const GAS = 287.053;

/** Reduction of one suction-on run against two suction-off runs. Every reading given is used. */
export function secondMethod(
  sheet: FlightSheet,
  on: readonly GlanceNumbers[],
  off: readonly [readonly GlanceNumbers[], readonly GlanceNumbers[]],
): SecondResult {
  const answer = (moved: Moves): { fuel: number; drag: number } => {
    const [a, b] = off.map((run, index) => runMean(sheet, run, moved, `off${index}`)) as [
      Mean,
      Mean,
    ];
    const own = runMean(sheet, on, moved, 'on');
    const slope = (a.flow - b.flow) / (a.weight ** 2 - b.weight ** 2);
    const baseline = a.flow + slope * (own.weight ** 2 - a.weight ** 2);
    const idle = mapOf(sheet).idleKgPerS;
    return {
      fuel: 1 - own.flow / baseline,
      drag: (baseline - own.flow) / (baseline - idle),
    };
  };
  const still = answer({});
  const variance = sourcesOf(sheet, { on, off0: off[0], off1: off[1] }).reduce((sum, source) => {
    const moved = answer(source.moves).fuel - still.fuel;
    return sum + moved ** 2;
  }, 0);
  return {
    fuelFraction: still.fuel,
    dragFraction: still.drag,
    standardUncertainty: Math.sqrt(variance),
  };
}

/** One input moved by one standard uncertainty; the answer's change is that input's part. */
interface Moves {
  readonly [key: string]: number;
}

interface Mean {
  readonly flow: number;
  readonly weight: number;
}

function runMean(
  sheet: FlightSheet,
  glances: readonly GlanceNumbers[],
  moves: Moves,
  run: string,
): Mean {
  const at = (key: string): number => moves[key] ?? 0;
  const map = mapOf(sheet);
  const card = air(metres(sheet.condition.pressureAltitude), 0);
  const cardTemp = card.tempK;
  let flowSum = 0;
  let weightSum = 0;
  for (const [index, glance] of glances.entries()) {
    const key = `${run}/${index}`;
    let flow = 0;
    for (const { instrument, value } of glance.flows) {
      flow += kgPerS(sheet, instrument, value);
      flow += at(`${key}/${instrument}`) + at(`cal/${instrument}`);
    }
    const here = air(glance.heightM + at(`${key}/height`), glance.tempDegC + at(`${key}/temp`));
    const weight = (massKg(sheet.weights.ramp) - glance.usedKg + at('weight')) * GRAVITY;
    const sound = Math.sqrt(1.4 * GAS * here.tempK);
    const speed = glance.mach * sound;
    const climb = (glance.climbMPerS + at(`${key}/climb`)) * (here.tempK / here.standardTempK);
    const acceleration = ((glance.machPerMin + at(`${key}/drift`)) / 60) * sound;
    const excess = weight * (climb / speed + acceleration / GRAVITY);
    const level = flow - map.kgPerSPerN * Math.sqrt(here.tempK / here.standardTempK) * excess;
    const scale = (card.delta / here.delta) * Math.sqrt(cardTemp / here.tempK);
    flowSum += level * scale;
    weightSum += weight * (card.delta / here.delta);
  }
  const flow = flowSum / glances.length;
  return { flow: flow * (1 + at(`${run}/mach`)), weight: weightSum / glances.length };
}

function sourcesOf(
  sheet: FlightSheet,
  runs: Readonly<Record<'on' | 'off0' | 'off1', readonly GlanceNumbers[]>>,
): readonly { readonly moves: Moves }[] {
  const one = (key: string, value: number): { readonly moves: Moves } => ({
    moves: { [key]: value },
  });
  const display = (quantity: string): number => {
    const gauge = sheet.instruments.find((row) => row.quantity === quantity);
    return Math.hypot((gauge?.resolution ?? 0) / Math.sqrt(12), gauge?.repeatability ?? 0);
  };
  const sources = [
    one('weight', massKg(sheet.weights.grossWeightStandardUncertainty)),
    ...sheet.instruments
      .filter((row) => row.quantity === 'fuelFlow')
      .map((row) =>
        one(
          `cal/${row.id}`,
          (row.calibration.residualStandardUncertainty ?? 0) * unitKgPerS(row.unit),
        ),
      ),
  ];
  const heightScale = sheet.heightUnit === 'ft' ? FOOT_M : 1;
  const climbScale = sheet.tolerances.climb.unit === 'ft/min' ? FOOT_M / 60 : 1;
  for (const [run, glances] of Object.entries(runs)) {
    const sensitivity =
      (run === 'on'
        ? sheet.aircraft.machSensitivitySuctionOn
        : sheet.aircraft.machSensitivitySuctionOff) ?? 0;
    const hold = sheet.machHoldStandardUncertainty ?? 0;
    sources.push(one(`${run}/mach`, (sensitivity / sheet.condition.mach) * hold));
    for (const [index, glance] of glances.entries()) {
      const key = `${run}/${index}`;
      sources.push(
        one(`${key}/height`, display('pressureAltitude') * heightScale),
        one(`${key}/temp`, display('staticAirTemp')),
        one(`${key}/climb`, display('altitudeRate') * climbScale),
        one(`${key}/drift`, display('machRate')),
      );
      for (const { instrument } of glance.flows) {
        const gauge = sheet.instruments.find((row) => row.id === instrument);
        const doubt = Math.hypot(
          (gauge?.resolution ?? 0) / Math.sqrt(12),
          gauge?.repeatability ?? 0,
        );
        sources.push(one(`${key}/${instrument}`, doubt * unitKgPerS(gauge?.unit ?? '')));
      }
    }
  }
  return sources;
}

function kgPerS(sheet: FlightSheet, instrument: string, shown: number): number {
  const gauge = sheet.instruments.find((row) => row.id === instrument);
  if (gauge === undefined) {
    throw new RangeError(`no instrument ${instrument} on the flight sheet`);
  }
  return (shown + gauge.calibration.correction) * unitKgPerS(gauge.unit);
}

function unitKgPerS(unit: string): number {
  return (unit === 'lb/h' ? POUND_KG : 1) / 3600;
}

function massKg(measure: { readonly value: number; readonly unit: string } | undefined): number {
  return measure === undefined ? 0 : measure.value * (measure.unit === 'lb' ? POUND_KG : 1);
}

function metres(measure: { readonly value: number; readonly unit: string }): number {
  return measure.value * (measure.unit === 'ft' ? FOOT_M : 1);
}

function mapOf(sheet: FlightSheet): { readonly idleKgPerS: number; readonly kgPerSPerN: number } {
  const map = sheet.engineMap;
  if (map === undefined) {
    throw new RangeError('the second method needs an engine map');
  }
  const pounds = map.idleFlow.unit === 'lb/h';
  return {
    idleKgPerS: map.idleFlow.value * unitKgPerS(map.idleFlow.unit),
    kgPerSPerN: (map.flowPerThrust.value / 3600) * (pounds ? POUND_KG / (POUND_KG * GRAVITY) : 1),
  };
}

interface AirHere {
  readonly delta: number;
  readonly tempK: number;
  readonly standardTempK: number;
}

/** @param tempDegC 0 stands for the standard day at the card */
function air(heightM: number, tempDegC: number): AirHere {
  const standardTempK = heightM < 11_000 ? 288.15 - 0.0065 * heightM : 216.65;
  const delta =
    heightM < 11_000
      ? (standardTempK / 288.15) ** (GRAVITY / (0.0065 * GAS))
      : 0.2233609 * Math.exp((-GRAVITY * (heightM - 11_000)) / (GAS * 216.65));
  return { delta, standardTempK, tempK: tempDegC === 0 ? standardTempK : tempDegC + 273.15 };
}
