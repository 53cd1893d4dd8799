import { mean, sampleStandardDeviation } from '../../aero/statistics/descriptive.ts';
import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
  resolutionUncertainty,
  type Component,
} from '../../aero/statistics/uncertainty.ts';
import type { EngineFlow, ReducedReading } from '../reduceReading.ts';
import type { FieldValue } from './airData.ts';
import type { AirField } from './looks.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** Readings of one run, averaged at the card. One reading is a run of one. */
export interface RunMean {
  readonly readings: readonly ReducedReading[];
  /** Mean of the corrected gauges, as flown. */
  readonly flowKgPerS: number;
  readonly weightN: number;
  readonly flowAtCardKgPerS: number;
  readonly weightAtCardN: number;
  readonly temperatureK: number;
  readonly mach: number;
  readonly unit: { readonly kgPerS: number; readonly standardUncertaintyKgPerS: number } | null;
  /** Independent of every other run, by source, kg/s. */
  readonly parts: Readonly<Record<RunPart, number>>;
  readonly standardUncertaintyKgPerS: number;
  readonly degreesOfFreedom: number;
  /** Shared by all runs: what calibration leaves on the sum of the gauges. */
  readonly calibrationKgPerS: number;
  readonly repeatabilityDeclared: boolean;
}

type RunPart = 'gauges' | 'energy' | 'temperature' | 'height' | 'machHold' | 'noEngineMap';

/** Scatter of single readings about the means of their runs. */
export interface Scatter {
  readonly standardDeviationKgPerS: number;
  readonly degreesOfFreedom: number;
}

/**
 * @param pooled scatter seen in several runs, for gauges whose repeatability nobody declared
 * @throws RangeError without a reading
 */
export function runMean(
  terms: SheetTerms,
  readings: readonly ReducedReading[],
  pooled: Scatter | null,
): RunMean {
  const [first] = readings;
  if (first === undefined) throw new RangeError('a mean needs at least one reading, got 0');
  const average = (of: (reading: ReducedReading) => number): number => mean(readings.map(of));
  const flowAtCardKgPerS = average((reading) => reading.flowAtCardKgPerS);
  const gauges = gaugesComponents(readings, pooled);
  const air = airParts(readings);
  const sensitivity = first.suctionOn ? terms.machSensitivity.on : terms.machSensitivity.off;
  const machHold = Math.abs((sensitivity / terms.cardMach) * flowAtCardKgPerS * terms.machHold);
  const noEngineMap = average((reading) => reading.energyHalfRangeKgPerS) / Math.sqrt(3);
  const stated = [...Object.values(air), machHold, noEngineMap].map(certain);
  const components = [...gauges.components, ...stated];
  return {
    readings,
    flowKgPerS: average((reading) => reading.flow.kgPerS),
    weightN: average((reading) => reading.weightN),
    flowAtCardKgPerS,
    weightAtCardN: average((reading) => reading.weightAtCardN),
    temperatureK: average((reading) => reading.air.temperature.value),
    mach: average((reading) => reading.air.mach.value),
    unit: unitMean(readings),
    parts: { gauges: combinedUncertainty(gauges.components), ...air, machHold, noEngineMap },
    standardUncertaintyKgPerS: combinedUncertainty(components),
    degreesOfFreedom: effectiveDegreesOfFreedom(components),
    calibrationKgPerS: Math.hypot(...first.flow.engines.map(({ parts }) => parts.residualSi)),
    repeatabilityDeclared: gauges.declared,
  };
}

/** Scatter within runs, pooled: each run gives one reading less than it has. */
export function pooledScatter(runs: readonly (readonly ReducedReading[])[]): Scatter | null {
  let squares = 0;
  let degreesOfFreedom = 0;
  for (const readings of runs) {
    if (readings.length < 2) continue;
    const flows = readings.map((reading) => reading.flowAtCardKgPerS);
    squares += sampleStandardDeviation(flows) ** 2 * (flows.length - 1);
    degreesOfFreedom += flows.length - 1;
  }
  return degreesOfFreedom === 0
    ? null
    : { standardDeviationKgPerS: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

/** A doubt that is stated, not estimated from scatter, already in the unit of the result. */
export function certain(standardUncertainty: number): Component {
  return { sensitivity: 1, standardUncertainty, degreesOfFreedom: Infinity };
}

function gaugesComponents(
  readings: readonly ReducedReading[],
  pooled: Scatter | null,
): { readonly components: readonly Component[]; readonly declared: boolean } {
  const count = readings.length;
  const engines = readings[0]?.flow.engines ?? [];
  const components: Component[] = [];
  let declared = true;
  for (const { parts } of engines) {
    const { stepSi, repeatabilitySi, independentSi } = parts;
    // Only scatter of half a step or more moves the reading over several digits, so that a mean helps.
    const dithered = repeatabilitySi !== null && repeatabilitySi >= stepSi / 2 - 1e-12;
    const resolution = resolutionUncertainty(stepSi);
    components.push(certain(dithered ? resolution / Math.sqrt(count) : resolution));
    components.push(certain(independentSi / Math.sqrt(count)));
    if (repeatabilitySi === null) declared = false;
    else components.push(certain(repeatabilitySi / Math.sqrt(count)));
  }
  if (declared) return { components, declared };
  const scatter = largerBasis(pooledScatter([readings]), pooled);
  if (scatter !== null) {
    components.push({
      sensitivity: 1 / Math.sqrt(count),
      standardUncertainty: scatter.standardDeviationKgPerS,
      degreesOfFreedom: scatter.degreesOfFreedom,
    });
    return { components, declared };
  }
  // Nothing to see scatter in yet: a whole step of each gauge stands in, and the number is provisional.
  for (const { parts } of engines) {
    if (parts.repeatabilitySi === null) components.push(certain(parts.stepSi));
  }
  return { components, declared };
}

function largerBasis(own: Scatter | null, pooled: Scatter | null): Scatter | null {
  if (own === null || pooled === null) return own ?? pooled;
  return pooled.degreesOfFreedom >= own.degreesOfFreedom ? pooled : own;
}

function airParts(
  readings: readonly ReducedReading[],
): Readonly<Record<'energy' | 'temperature' | 'height', number>> {
  const part = (field: AirField, perDisplay: (reading: ReducedReading) => number): number => {
    const perUnit = mean(readings.map(perDisplay));
    const fields = readings.map((reading) => reading.air[field]);
    const display = Math.max(...fields.map((value) => value.standardUncertainty));
    return Math.abs(perUnit) * display * Math.sqrt(sharedLooks(fields));
  };
  return {
    energy: Math.hypot(
      part('altitudeRate', (reading) => reading.perDisplay.altitudeRate),
      part('machRate', (reading) => reading.perDisplay.machRate),
    ),
    temperature: part('temperature', (reading) => reading.perDisplay.temperature),
    height: part('pressureAltitude', (reading) => reading.perDisplay.pressureAltitude),
  };
}

/** Sum of the squared shares that each look has in the mean: 1/n when every reading has its own. */
function sharedLooks(fields: readonly FieldValue[]): number {
  const total = new Map<number, number>();
  for (const { shares } of fields) {
    for (const { glance, share } of shares) {
      total.set(glance, (total.get(glance) ?? 0) + share / fields.length);
    }
  }
  return [...total.values()].reduce((sum, share) => sum + share ** 2, 0);
}

function unitMean(readings: readonly ReducedReading[]): RunMean['unit'] {
  const units = readings.map(({ flow }) => flow.unit).filter((unit) => unit !== null);
  const [first] = units;
  if (first === undefined) return null;
  return {
    kgPerS: mean(units.map((unit) => unit.kgPerS)),
    standardUncertaintyKgPerS: unitUncertainty(first, units.length),
  };
}

function unitUncertainty({ parts }: EngineFlow, count: number): number {
  const look = Math.hypot(
    resolutionUncertainty(parts.stepSi),
    parts.repeatabilitySi ?? parts.stepSi,
    parts.independentSi,
  );
  return Math.hypot(look / Math.sqrt(count), parts.residualSi);
}
