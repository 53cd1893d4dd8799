import { mean } from '../../aero/statistics/descriptive.ts';
import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
  resolutionUncertainty,
  type Component,
} from '../../aero/statistics/uncertainty.ts';
import type { EngineFlow, ReducedReading } from '../reduceReading.ts';
import type { FieldValue } from './airData.ts';
import type { AirField } from './looks.ts';
import { looksOf, pooledScatter, type Scatter } from './scatter.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** Readings of one run, averaged at the card. One reading is a run of one. */
export interface RunMean {
  readonly readings: readonly ReducedReading[];
  /** How many they count as: a burst is one. */
  readonly looks: number;
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
  const gauges = gaugesComponents(terms, readings, pooled);
  const air = gauges.holdAir ? HELD_IN_SCATTER : airParts(readings);
  const sensitivity = first.suctionOn ? terms.machSensitivity.on : terms.machSensitivity.off;
  const machHold = Math.abs((sensitivity / terms.cardMach) * flowAtCardKgPerS * terms.machHold);
  const noEngineMap = average((reading) => reading.energyHalfRangeKgPerS) / Math.sqrt(3);
  const stated = [...Object.values(air), machHold, noEngineMap].map(certain);
  const components = [...gauges.components, ...stated];
  return {
    readings,
    looks: looksOf(readings),
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

/** A doubt that is stated, not estimated from scatter, already in the unit of the result. */
export function certain(standardUncertainty: number): Component {
  return { sensitivity: 1, standardUncertainty, degreesOfFreedom: Infinity };
}

interface GaugesDoubt {
  readonly components: readonly Component[];
  readonly declared: boolean;
  /** What the air data do to each reading is in there too. */
  readonly holdAir: boolean;
}

function gaugesComponents(
  terms: SheetTerms,
  readings: readonly ReducedReading[],
  pooled: Scatter | null,
): GaugesDoubt {
  const count = looksOf(readings);
  const engines = readings[0]?.flow.engines ?? [];
  const components: Component[] = [];
  const declared = engines.every(({ parts }) => parts.repeatabilitySi !== null);
  const scatter = declared ? null : largerBasis(pooledScatter(terms, [readings]), pooled);
  const seen = scatter === null ? [] : [ofMean(scatter, count)];
  if (scatter !== null && holdsAll(scatter, engines)) {
    return { components: seen, declared, holdAir: readings.every(hasOwnAir) };
  }
  for (const { parts } of engines) {
    const { stepSi, repeatabilitySi, independentSi } = parts;
    // Only scatter of half a step or more moves the reading over several digits, so that a mean helps.
    const dithered = repeatabilitySi !== null && repeatabilitySi >= stepSi / 2 - 1e-12;
    const resolution = resolutionUncertainty(stepSi);
    components.push(certain(dithered ? resolution / Math.sqrt(count) : resolution));
    components.push(certain(independentSi / Math.sqrt(count)));
    if (repeatabilitySi !== null) components.push(certain(repeatabilitySi / Math.sqrt(count)));
  }
  if (declared || scatter !== null) {
    return { components: [...components, ...seen], declared, holdAir: false };
  }
  // Nothing to see scatter in yet: a whole step of each gauge stands in, and the number is provisional.
  for (const { parts } of engines) {
    if (parts.repeatabilitySi === null) components.push(certain(parts.stepSi));
  }
  return { components, declared, holdAir: false };
}

function ofMean(scatter: Scatter, count: number): Component {
  return {
    sensitivity: 1 / Math.sqrt(count),
    standardUncertainty: scatter.standardDeviationKgPerS,
    degreesOfFreedom: scatter.degreesOfFreedom,
  };
}

/** Five readings of one run: fewer may scatter little by luck, and then every source is added to what is seen (a choice). */
const ENOUGH_TO_SEE = 4;

/**
 * Readings that jump over several digits show in their scatter all that differs from one to the next: the gauges' own,
 * the display's step and the air data read with them. To add those again would make the interval too wide. At half a step
 * of scatter, and 1/√12 that the step itself puts in, a mean helps against the step.
 */
function holdsAll(scatter: Scatter, engines: readonly EngineFlow[]): boolean {
  const stepKgPerS = Math.hypot(...engines.map(({ parts }) => parts.stepSi));
  const least = stepKgPerS * Math.hypot(1 / 2, 1 / Math.sqrt(12));
  return (
    scatter.degreesOfFreedom >= ENOUGH_TO_SEE && scatter.standardDeviationKgPerS >= least - 1e-12
  );
}

function hasOwnAir({ air }: ReducedReading): boolean {
  return Object.values(air).every(({ from }) => from === 'own');
}

const HELD_IN_SCATTER = { energy: 0, temperature: 0, height: 0 };

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
