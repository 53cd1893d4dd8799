import { halfRangeUncertainty } from '../../aero/statistics/uncertainty.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightState } from '../../record/flightState.ts';
import type { FlightSheet, Instrument } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';
import { correctedReading, displayUncertaintySi, instrumentsFor } from '../calibrate.ts';

/** One look at a counter, in SI. */
export interface CounterLook {
  readonly at: EpochMs;
  readonly by: readonly EntryId[];
  readonly kg: number;
  readonly standardUncertaintyKg: number;
}

/** What one consumer's counter showed over the flight, in order of time. */
export interface Counter {
  readonly consumer: string;
  readonly instrument: Instrument;
  readonly looks: readonly CounterLook[];
  /** Greatest less least flow of that consumer's gauge in the flight: how far the burn can bend between two looks. */
  readonly flowSpreadKgPerS: number;
}

/** A counter at an instant: as read then, or on the straight line between the looks about it. */
export interface CountedAt {
  readonly kg: number;
  readonly by: readonly EntryId[];
  readonly how: 'read' | 'interpolated';
  /** Of the displays. */
  readonly standardUncertaintyKg: number;
  /** Half-range that the straight line may be off by; zero where it was read. */
  readonly bendHalfRangeKg: number;
  readonly gapS: number;
}

/** Consumers with a counter on the flight sheet: every engine, and the suction unit where it has one. */
export function countersOf(state: FlightState, sheet: FlightSheet): readonly Counter[] {
  const counters = new Map<string, Counter>();
  for (const instrument of instrumentsFor(sheet, 'fuelUsed')) {
    const consumer = String(instrument.consumer ?? '');
    // Of two counters on one engine the first that can be read counts, or fuel would be burnt twice.
    if (consumer === '' || (counters.get(consumer)?.instrument.serviceable ?? false)) continue;
    const flows = flowsRead(state, sheet, consumer);
    counters.set(consumer, {
      consumer,
      instrument,
      looks: looksAt(state, instrument),
      flowSpreadKgPerS: flows.length === 0 ? 0 : Math.max(...flows) - Math.min(...flows),
    });
  }
  return [...counters.values()];
}

/** Every corrected look at one instrument; blank, queried and unserviceable ones say nothing. */
function looksAt(state: FlightState, instrument: Instrument): readonly CounterLook[] {
  const looks: CounterLook[] = [];
  for (const glance of items(state.glances)) {
    const reading = glance.readings[instrument.id];
    const corrected = reading === undefined ? null : correctedReading(instrument, reading);
    if (corrected?.kind !== 'corrected') continue;
    looks.push({
      at: glance.at,
      by: glance.by,
      kg: corrected.valueSi,
      standardUncertaintyKg: lookUncertainty(corrected.parts),
    });
  }
  return looks.sort((a, b) => a.at - b.at);
}

/** A counter counts: its last digit is a step, and without a declared repeatability it has no scatter. */
function lookUncertainty(parts: Parameters<typeof displayUncertaintySi>[0]): number {
  return displayUncertaintySi({ ...parts, repeatabilitySi: parts.repeatabilitySi ?? 0 });
}

/**
 * The counter at an instant. The burn can have bent anywhere between two looks, so that the line is off by at most the
 * spread of flows times a·b/(a + b), a and b the times to either look.
 *
 * @returns null outside the looks: a counter is not led on
 */
function countedAt({ looks, flowSpreadKgPerS }: Counter, at: EpochMs): CountedAt | null {
  const after = looks.findIndex((look) => look.at >= at);
  const high = looks[after];
  if (high === undefined) return null;
  if (high.at === at) return { ...high, how: 'read', bendHalfRangeKg: 0, gapS: 0 };
  const low = looks[after - 1];
  if (low === undefined) return null;
  const gapS = (high.at - low.at) / 1000;
  const share = (at - low.at) / (high.at - low.at);
  return {
    kg: low.kg + share * (high.kg - low.kg),
    by: [...low.by, ...high.by],
    how: 'interpolated',
    standardUncertaintyKg: Math.hypot(
      (1 - share) * low.standardUncertaintyKg,
      share * high.standardUncertaintyKg,
    ),
    bendHalfRangeKg: flowSpreadKgPerS * share * (1 - share) * gapS,
    gapS,
  };
}

/** What several consumers burnt between two instants by their counters. */
export interface Burnt {
  readonly kind: 'burnt';
  readonly kg: number;
  readonly by: readonly EntryId[];
  readonly standardUncertaintyKg: number;
  readonly atStart: CountedAt['how'];
  readonly atEnd: CountedAt['how'];
  readonly longestGapS: number;
}

export type NotCounted = 'countersNotRead' | 'counterWentBack';

export function burntBetween(
  counters: readonly Counter[],
  from: EpochMs,
  to: EpochMs,
): Burnt | { readonly kind: 'notCounted'; readonly because: NotCounted } {
  let kg = 0;
  let variance = 0;
  // Throttles move together, so the lines of all engines bend together: half-ranges add up, displays do not.
  let bends = { start: 0, end: 0 };
  const by: EntryId[] = [];
  const ends: { readonly start: CountedAt; readonly end: CountedAt }[] = [];
  if (counters.length === 0) return { kind: 'notCounted', because: 'countersNotRead' };
  for (const counter of counters) {
    const start = countedAt(counter, from);
    const end = countedAt(counter, to);
    if (start === null || end === null) return { kind: 'notCounted', because: 'countersNotRead' };
    if (end.kg < start.kg) return { kind: 'notCounted', because: 'counterWentBack' };
    kg += end.kg - start.kg;
    variance += start.standardUncertaintyKg ** 2 + end.standardUncertaintyKg ** 2;
    bends = {
      start: bends.start + start.bendHalfRangeKg,
      end: bends.end + end.bendHalfRangeKg,
    };
    by.push(...start.by, ...end.by);
    ends.push({ start, end });
  }
  const how = (of: readonly CountedAt[]): CountedAt['how'] =>
    of.every((one) => one.how === 'read') ? 'read' : 'interpolated';
  return {
    kind: 'burnt',
    kg,
    by: [...new Set(by)],
    standardUncertaintyKg: Math.hypot(
      Math.sqrt(variance),
      halfRangeUncertainty(bends.start),
      halfRangeUncertainty(bends.end),
    ),
    atStart: how(ends.map(({ start }) => start)),
    atEnd: how(ends.map(({ end }) => end)),
    longestGapS: Math.max(...ends.map(({ start, end }) => Math.max(start.gapS, end.gapS))),
  };
}

/** The engines' counters alone; null where an engine has none. */
export function engineCounters(
  counters: readonly Counter[],
  sheet: FlightSheet,
): readonly Counter[] | null {
  const engines = Array.from({ length: sheet.aircraft.engineCount }, (_, index) =>
    counters.find(({ consumer }) => consumer === String(index + 1)),
  );
  const found = engines.filter((counter) => counter !== undefined);
  return found.length === engines.length ? found : null;
}

export function unitCounter(counters: readonly Counter[]): Counter | null {
  return counters.find(({ consumer }) => consumer === 'suctionUnit') ?? null;
}

function flowsRead(state: FlightState, sheet: FlightSheet, consumer: string): readonly number[] {
  const gauges = [
    ...instrumentsFor(sheet, 'fuelFlow'),
    ...instrumentsFor(sheet, 'suctionFuelFlow'),
  ].filter((gauge) =>
    consumer === 'suctionUnit'
      ? gauge.quantity === 'suctionFuelFlow'
      : gauge.quantity === 'fuelFlow' && String(gauge.consumer) === consumer,
  );
  return gauges.flatMap((gauge) => looksAt(state, gauge).map(({ kg }) => kg));
}
