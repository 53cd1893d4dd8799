import type { Chance } from './chance.ts';
import {
  fuelKgPerS,
  GRAVITY_M_PER_S2,
  standardDay,
  weightElasticity,
  type Aircraft,
} from './nature.ts';

const FOOT_M = 0.3048;
/** Of the ramp weight, halfway through the points. */
const MIDDLE_SHARE = 0.91;
const SECONDS_PER_H = 3600;
export const KG_PER_UNIT = { lb: 0.45359237, kg: 1 } as const;

/** A flow gauge, in the mass unit of the flight an hour. */
export interface FlowGauge {
  readonly step: number;
  readonly correction: number;
  /** Scatter of one look, one standard deviation. */
  readonly scatter: number;
  /** What its calibration says may be left, one standard deviation, and what is left. */
  readonly residual: number;
  readonly error: number;
}

interface PlannedRun {
  readonly point: string;
  readonly suction: 'on' | 'off';
  readonly laminarShare: number;
  readonly unitKgPerS: number;
  readonly readings: number;
}

/** One flight before it is flown: what is so, and what its flight sheet says. */
export interface Drawn {
  readonly unit: 'lb' | 'kg';
  readonly aircraft: Aircraft;
  readonly cardAltitudeFt: number;
  readonly engineShares: readonly number[];
  readonly rampKg: number;
  readonly counterScale: number;
  readonly day: { readonly offsetK: number; readonly perHourK: number };
  readonly gauges: readonly FlowGauge[];
  readonly unitGauge: FlowGauge;
  readonly temperatureErrorK: number;
  readonly altitudeErrorFt: number;
  readonly runs: readonly PlannedRun[];
  readonly says: {
    readonly rampKg: number;
    readonly weightDoubtKg: number;
    readonly machHold: number;
    readonly repeatability: boolean;
    readonly idleKgPerS: number;
    readonly idleDoubtKgPerS: number;
    readonly kgPerSPerN: number;
    readonly elasticity: number;
    readonly elasticityDoubt: number;
  };
}

/** Display step and scatter of the air data, as every simulated flight has them. */
export const AIR_GAUGES = {
  mach: { step: 0.001, scatter: 0.0003 },
  altitudeFt: { step: 10, scatter: 5 },
  temperatureC: { step: 0.5, scatter: 0.2, residual: 0.5 },
  machPerMin: { step: 0.0002, scatter: 0.0001 },
  climbFtPerMin: { step: 10, scatter: 3 },
} as const;
/** Common to all readings; nobody declares it, because it cancels in a comparison. */
const ALTIMETER_ERROR_FT = 15;

export function drawn(chance: Chance): Drawn {
  const unit = chance.oneOf(['lb', 'kg']);
  const rampKg = Math.exp(chance.between(Math.log(14_000), Math.log(80_000)));
  const cardAltitudeFt = 1000 * chance.whole(30, 41);
  const altitudeM = cardAltitudeFt * FOOT_M;
  const middleN = MIDDLE_SHARE * rampKg * GRAVITY_M_PER_S2;
  const aircraft = anAircraft(chance, middleN, altitudeM);
  const weightDoubtKg = chance.between(0.0015, 0.004) * rampKg;
  const elasticityDoubt = chance.between(0.03, 0.08);
  const idleDoubt = chance.between(0.1, 0.25);
  const day = standardDay(altitudeM);
  const rootTheta = Math.sqrt(day.temperatureK / 288.15);
  const engineShares = someShares(chance, chance.oneOf([2, 2, 3, 4]));
  const flowPerH =
    (SECONDS_PER_H / KG_PER_UNIT[unit]) *
    fuelKgPerS(aircraft, {
      weightN: middleN,
      pressureAltitudeM: altitudeM,
      temperatureK: day.temperatureK,
      mach: aircraft.mach,
      laminarShare: 0,
    });
  const unitShare = chance.between(0.02, 0.05);
  return {
    unit,
    aircraft,
    cardAltitudeFt,
    engineShares,
    rampKg: rampKg + chance.normal(weightDoubtKg),
    counterScale: 1 + chance.normal(0.0005),
    day: { offsetK: chance.normal(7), perHourK: chance.normal(0.7) },
    gauges: engineShares.map((share) => aGauge(chance, flowPerH * share)),
    unitGauge: aGauge(chance, flowPerH * unitShare),
    temperatureErrorK: chance.normal(AIR_GAUGES.temperatureC.residual),
    altitudeErrorFt: chance.normal(ALTIMETER_ERROR_FT),
    runs: someRuns(chance, (unitShare * flowPerH * KG_PER_UNIT[unit]) / SECONDS_PER_H),
    says: {
      rampKg,
      weightDoubtKg,
      machHold: chance.between(0.0006, 0.0012),
      repeatability: chance.happens(0.7),
      idleKgPerS:
        aircraft.idleKgPerS * day.pressureRatio * rootTheta * (1 + chance.normal(idleDoubt)),
      idleDoubtKgPerS: aircraft.idleKgPerS * day.pressureRatio * rootTheta * idleDoubt,
      kgPerSPerN: aircraft.kgPerSPerN * rootTheta * (1 + chance.normal(0.01)),
      elasticity: weightElasticity(aircraft, middleN, altitudeM) + chance.normal(elasticityDoubt),
      elasticityDoubt,
    },
  };
}

/** The same flight with all engines on one gauge. */
export function onOneGauge(flight: Drawn): Drawn {
  const [gauge] = flight.gauges;
  if (gauge === undefined) throw new RangeError('a flight has at least one gauge');
  return { ...flight, engineShares: [1], gauges: [gauge] };
}

function anAircraft(chance: Chance, middleN: number, altitudeM: number): Aircraft {
  const { pressureRatio, temperatureK } = standardDay(altitudeM);
  const dragN = middleN / chance.between(13, 18) / pressureRatio;
  const induced = chance.between(0.3, 0.45);
  const kgPerSPerN =
    chance.between(0.6, 0.8) / SECONDS_PER_H / GRAVITY_M_PER_S2 / Math.sqrt(temperatureK / 288.15);
  const idle = chance.between(0.03, 0.1);
  return {
    mach: chance.whole(68, 80) / 100,
    parasiteN: dragN * (1 - induced),
    inducedPerN: (dragN * induced) / (middleN / pressureRatio) ** 2,
    idleKgPerS: (kgPerSPerN * dragN * idle) / (1 - idle),
    kgPerSPerN,
    machPower: { turbulent: chance.between(0.6, 1.2), laminar: chance.between(0.3, 0.7) },
  };
}

function someShares(chance: Chance, engines: number): readonly number[] {
  const raw = Array.from({ length: engines }, () => 1 + chance.normal(0.01));
  const total = raw.reduce((sum, share) => sum + share, 0);
  return raw.map((share) => share / total);
}

const STEPS = [0.5, 1, 2, 5, 10, 20, 50];

function aGauge(chance: Chance, flowPerH: number): FlowGauge {
  const wanted = flowPerH * chance.between(0.003, 0.01);
  const step = STEPS.findLast((size) => size <= wanted) ?? 0.2;
  const residual = flowPerH * chance.between(0.003, 0.008);
  return {
    step,
    correction: step * chance.whole(-3, 3),
    scatter: step * chance.between(0.5, 1.2),
    residual,
    error: chance.normal(residual),
  };
}

interface Range {
  readonly low: number;
  readonly high: number;
}

/** Readings of a point, so that each class of the table is flown as often. */
function someReadings(chance: Chance): number {
  const { low, high } = chance.oneOf<Range>([
    { low: 3, high: 3 },
    { low: 4, high: 5 },
    { low: 6, high: 8 },
    { low: 9, high: 12 },
  ]);
  return chance.whole(low, high);
}

/** A baseline first, then points with suction on, baselines between them or after; at times only the first. */
function someRuns(chance: Chance, unitKgPerS: number): readonly PlannedRun[] {
  const onlyOneBaseline = chance.happens(0.2);
  const baselines = onlyOneBaseline
    ? [someReadings(chance)]
    : splitReadings(chance, chance.whole(5, 12));
  const points = chance.whole(3, 5);
  const endsWithBaseline = chance.happens(0.75);
  const slots = baselines.map((_, index) => {
    if (index === 0) return 0;
    const last = points - (endsWithBaseline ? 0 : 1);
    return Math.round((last * index) / (baselines.length - 1));
  });
  const runs: PlannedRun[] = [];
  for (let place = 0; place <= points; place += 1) {
    baselines.forEach((readings, index) => {
      if (slots[index] !== place) return;
      runs.push({
        point: `B${index + 1}`,
        suction: 'off',
        laminarShare: 0,
        unitKgPerS: 0,
        readings,
      });
    });
    if (place === points) break;
    runs.push({
      point: `P${place + 1}`,
      suction: 'on',
      laminarShare: chance.between(0.02, 0.5),
      unitKgPerS: unitKgPerS * chance.between(0.7, 1.3),
      readings: someReadings(chance),
    });
  }
  return runs;
}

/** Two to four runs of at least two readings. */
function splitReadings(chance: Chance, total: number): readonly number[] {
  const runs = chance.whole(2, Math.min(4, Math.floor(total / 2)));
  const counts = Array.from({ length: runs }, () => 2);
  for (let left = total - 2 * runs; left > 0; left -= 1) {
    const at = chance.whole(0, runs - 1);
    counts[at] = (counts[at] ?? 0) + 1;
  }
  return counts;
}
