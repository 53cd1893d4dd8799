import { differenceFromSi, isUnit } from '../aero/units.ts';
import type { EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { FlightState, Glance } from '../record/flightState.ts';
import type { Instrument } from '../record/sheet.ts';
import { itemAt, itemsBackwards } from '../record/trail.ts';
import { correctedReading, instrumentOf, instrumentsFor } from './calibrate.ts';
import { judgeReading } from './plausibility.ts';

/** What the pad shows beside a gauge and judges the next value by; values as read, in the gauge's unit. */
export interface ReadingHistory {
  /** Kept readings since the last change of power, point, suction or moisture, oldest first. */
  readonly history: readonly number[];
  readonly lastQueried: number | null;
  /** Where the flow should have carried a counter by now; null for any other gauge. */
  readonly expected: number | null;
  readonly lastValue: number | null;
  readonly lastAt: EpochMs | null;
}

const READINGS_KEPT = 5;
/** The answer must not cost more late in a flight. */
const GLANCES_LOOKED_AT = 60;
const INTERVALS_LOOKED_AT = 40;

export function historyOf(view: FlightView, instrumentId: string, now: EpochMs): ReadingHistory {
  const { state } = view;
  const instrument = state.sheet === null ? undefined : instrumentOf(state.sheet, instrumentId);
  const newsAt = lastNewsAt(state);
  const history: number[] = [];
  let newest: { readonly value: number; readonly at: EpochMs; readonly queried: boolean } | null =
    null;
  let looked = 0;
  for (const glance of itemsBackwards(state.glances)) {
    looked += 1;
    if (looked > GLANCES_LOOKED_AT || history.length === READINGS_KEPT) break;
    const reading = glance.readings[instrumentId];
    if (reading === undefined || 'blank' in reading) continue;
    const queried = reading.queried !== undefined;
    newest ??= { value: reading.value, at: glance.at, queried };
    // A counter runs on through every change; any other gauge starts anew after one.
    const counts = instrument?.quantity === 'fuelUsed' || glance.at > newsAt;
    if (!queried && counts) history.unshift(reading.value);
  }
  return {
    history: instrument === undefined ? history : sinceRealChange(instrument, history),
    lastQueried: newest !== null && newest.queried ? newest.value : null,
    expected: instrument === undefined ? null : expectedCounter(state, instrument, history, now),
    lastValue: newest?.value ?? null,
    lastAt: newest?.at ?? null,
  };
}

/**
 * Two readings in a row that agreed outside the band of the ones before them were a real change: what stood before it
 * is no reference any more.
 */
function sinceRealChange(instrument: Instrument, history: readonly number[]): readonly number[] {
  for (let index = history.length - 1; index > 1; index -= 1) {
    const [first, second] = [history[index - 1], history[index]];
    const before = history.slice(0, index - 1);
    if (first === undefined || second === undefined) break;
    const jumps = judgeReading({ instrument, value: first, history: before }).kind === 'query';
    const agrees =
      judgeReading({ instrument, value: second, history: before, lastQueried: first }).kind ===
      'realChange';
    if (jumps && agrees) return history.slice(index - 1);
  }
  return history;
}

/** Suction, throttle, point and moisture: after these a jump is the news, not a slip. */
function lastNewsAt(state: FlightState): number {
  const run = itemAt(state.runs, -1);
  const times = [
    state.suction.L.lastChangeAt,
    state.suction.R.lastChangeAt,
    state.lastThrottleAt,
    run?.started.at ?? null,
    run?.ended?.at ?? null,
    ...lastMoisture(state),
  ];
  return Math.max(-Infinity, ...times.filter((at) => at !== null));
}

function lastMoisture(state: FlightState): readonly (EpochMs | null)[] {
  let looked = 0;
  for (const interval of itemsBackwards(state.intervals)) {
    looked += 1;
    if (looked > INTERVALS_LOOKED_AT) break;
    if (interval.kind === 'moisture') return [interval.opened.at, interval.closed?.at ?? null];
  }
  return [];
}

function expectedCounter(
  state: FlightState,
  instrument: Instrument,
  history: readonly number[],
  now: EpochMs,
): number | null {
  const { sheet } = state;
  const last = history.at(-1);
  if (sheet === null || instrument.quantity !== 'fuelUsed' || last === undefined) return null;
  const gauges = [
    ...instrumentsFor(sheet, 'fuelFlow'),
    ...instrumentsFor(sheet, 'suctionFuelFlow'),
  ].filter((gauge) => gauge.consumer === instrument.consumer);
  let looked = 0;
  let flow: { readonly kgPerS: number } | null = null;
  for (const glance of itemsBackwards(state.glances)) {
    looked += 1;
    if (looked > GLANCES_LOOKED_AT) break;
    flow ??= flowOf(gauges, glance);
    const reading = glance.readings[instrument.id];
    if (reading === undefined || 'blank' in reading || reading.queried !== undefined) continue;
    if (flow === null || !isUnit(instrument.unit)) return null;
    const grown = differenceFromSi({
      value: (flow.kgPerS * Math.max(0, now - glance.at)) / 1000,
      unit: instrument.unit,
    });
    return grown.kind === 'ready' ? last + grown.value : null;
  }
  return null;
}

function flowOf(gauges: readonly Instrument[], glance: Glance): { readonly kgPerS: number } | null {
  for (const gauge of gauges) {
    const reading = glance.readings[gauge.id];
    if (reading === undefined) continue;
    const corrected = correctedReading(gauge, reading);
    if (corrected.kind === 'corrected') return { kgPerS: corrected.valueSi };
  }
  return null;
}
