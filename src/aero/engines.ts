import {
  ready,
  requireNotNegative,
  requirePositive,
  unavailable,
  type Outcome,
} from './outcome.ts';
import { fuelFlowOfThrust, type ThrustMap } from './thrustMap.ts';

/* Engine maps put together, and carried to another height or day. */

/**
 * The map of the whole aircraft from one map an engine, all engines at equal thrust.
 *
 * Lines make a line; with a table among them the answer is a table over the thrusts that all of them know.
 *
 * @returns `noEngine`, or `noCommonThrust` where the tables do not overlap
 */
export function mapOfEngines(
  engines: readonly ThrustMap[],
): Outcome<ThrustMap, 'noEngine' | 'noCommonThrust'> {
  if (engines.length === 0) return unavailable('noEngine');
  const lines = engines.filter((map) => map.kind === 'line');
  if (lines.length === engines.length) {
    for (const { idleKgPerS, slopeKgPerSPerN } of lines) {
      requireNotNegative('idle flow', idleKgPerS);
      requirePositive('slope', slopeKgPerSPerN);
    }
    return ready({
      kind: 'line',
      idleKgPerS: sum(lines.map((line) => line.idleKgPerS)),
      slopeKgPerSPerN: sum(lines.map((line) => line.slopeKgPerSPerN)) / lines.length,
    });
  }
  const tables = engines.filter((map) => map.kind === 'table');
  const thrusts = tables.map(({ rows }) => rows.map((row) => row.thrustN));
  const lowest = Math.max(...thrusts.map((each) => Math.min(...each)));
  const highest = Math.min(...thrusts.map((each) => Math.max(...each)));
  if (!(lowest < highest)) return unavailable('noCommonThrust');
  const shared = [...new Set(thrusts.flat())].filter((thrust) => within(thrust, lowest, highest));
  const rows = shared
    .toSorted((a, b) => a - b)
    .map((thrustN) => ({
      thrustN: thrustN * engines.length,
      fuelFlowKgPerS: sum(engines.map((map) => knownFlow(map, thrustN))),
    }));
  return ready({ kind: 'table', rows });
}

/**
 * The map at another height or on another day at the same Mach number: thrust goes with pressure, flow
 * with pressure and the root of temperature.
 *
 * @param pressureRatio of the air there to the air of the map; likewise the temperature
 * @throws RangeError unless both are above zero
 * @see SFTE Reference Handbook (2013), jet fuel-flow standardization
 */
export function mapElsewhere({
  map,
  pressureRatio,
  temperatureRatio,
}: {
  readonly map: ThrustMap;
  readonly pressureRatio: number;
  readonly temperatureRatio: number;
}): ThrustMap {
  requirePositive('pressure ratio', pressureRatio);
  requirePositive('temperature ratio', temperatureRatio);
  const perFlow = pressureRatio * Math.sqrt(temperatureRatio);
  if (map.kind === 'line') {
    return {
      kind: 'line',
      idleKgPerS: map.idleKgPerS * perFlow,
      slopeKgPerSPerN: map.slopeKgPerSPerN * Math.sqrt(temperatureRatio),
    };
  }
  return {
    kind: 'table',
    rows: map.rows.map(({ thrustN, fuelFlowKgPerS }) => ({
      thrustN: thrustN * pressureRatio,
      fuelFlowKgPerS: fuelFlowKgPerS * perFlow,
    })),
  };
}

function knownFlow(map: ThrustMap, thrustN: number): number {
  const flow = fuelFlowOfThrust(map, thrustN);
  if (flow.kind === 'unavailable') {
    throw new RangeError(`thrust must lie in every map, got ${thrustN} N`);
  }
  return flow.value;
}

function within(value: number, low: number, high: number): boolean {
  return value >= low && value <= high;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
