import { differenceFromSi, isUnit } from '../../aero/units.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { Glance } from '../../record/flightState.ts';
import type { Instrument } from '../../record/sheet.ts';
import { correctedReading, instrumentsFor } from '../calibrate.ts';
import type { Context } from '../reading/context.ts';

/** One engine's flow at one look, as read: a slip of the finger knows no correction. */
export interface EngineReading {
  readonly gauge: Instrument;
  /** In the gauge's unit. */
  readonly value: number;
  readonly kgPerS: number;
  /** Step and scatter of the display, one standard uncertainty. */
  readonly lookKgPerS: number;
}

export interface FlowLook {
  readonly glance: number;
  readonly at: EpochMs;
  readonly by: readonly EntryId[];
  /** In the order of the engines; null where an engine was not read, or its reading is in question already. */
  readonly engines: readonly (EngineReading | null)[];
}

export interface CounterLook {
  readonly at: EpochMs;
  readonly by: readonly EntryId[];
  readonly massKg: number;
  readonly stepKg: number;
}

/** Looks that should agree: those of one run, or of a stretch between two. */
export interface LookedRun {
  readonly looks: readonly FlowLook[];
  /** By engine, in the order of the engines. */
  readonly counters: readonly (readonly CounterLook[])[];
}

/** Every look at the flow of the engines, cut where a point, suction or power changed. */
export function readingsByRun(
  { terms }: Context,
  glances: readonly Glance[],
): readonly LookedRun[] {
  const gauges = terms.engineFlows;
  const counters = gauges.map((gauge) =>
    instrumentsFor(terms.sheet, 'fuelUsed').find(({ consumer }) => consumer === gauge.consumer),
  );
  const runs: { key: string; looks: FlowLook[]; counters: CounterLook[][] }[] = [];
  for (const [index, glance] of glances.entries()) {
    const { run, lastUpsetAt, lastSuctionChangeAt } = glance.circumstances;
    const key = `${run} ${lastUpsetAt} ${lastSuctionChangeAt}`;
    let own = runs.at(-1);
    if (own?.key !== key) {
      own = { key, looks: [], counters: gauges.map(() => []) };
      runs.push(own);
    }
    const engines = gauges.map((gauge) => engineReading(gauge, glance));
    if (engines.some((engine) => engine !== null)) {
      own.looks.push({ glance: index, at: glance.at, by: glance.by, engines });
    }
    for (const [engine, counter] of counters.entries()) {
      const look = counter === undefined ? null : counterLook(counter, glance);
      if (look !== null) own.counters[engine]?.push(look);
    }
  }
  return runs;
}

/** A flow in the gauge's unit; null where the unit measures no flow. */
export function inUnitOf({ unit }: Instrument, kgPerS: number): number | null {
  if (!isUnit(unit)) return null;
  const value = differenceFromSi({ value: kgPerS, unit });
  return value.kind === 'ready' ? value.value : null;
}

function engineReading(gauge: Instrument, glance: Glance): EngineReading | null {
  const reading = glance.readings[gauge.id];
  if (reading === undefined || 'blank' in reading) return null;
  const corrected = correctedReading(gauge, reading);
  if (corrected.kind === 'uncorrected' || !(corrected.asReadSi > 0)) return null;
  const { stepSi, repeatabilitySi } = corrected.parts;
  return {
    gauge,
    value: reading.value,
    kgPerS: corrected.asReadSi,
    lookKgPerS: Math.hypot(stepSi / Math.sqrt(12), repeatabilitySi ?? stepSi / 2),
  };
}

function counterLook(counter: Instrument, glance: Glance): CounterLook | null {
  const reading = glance.readings[counter.id];
  if (reading === undefined) return null;
  const corrected = correctedReading(counter, reading);
  if (corrected.kind === 'uncorrected') return null;
  const { valueSi, parts } = corrected;
  return { at: glance.at, by: glance.by, massKg: valueSi, stepKg: parts.stepSi };
}
