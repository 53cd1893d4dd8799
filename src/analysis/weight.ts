import { STANDARD_GRAVITY_M_PER_S2 } from '../aero/units.ts';
import type { EntryId, EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { CounterNow, FlightState, Glance } from '../record/flightState.ts';
import type { FlightSheet, Instrument } from '../record/sheet.ts';
import { itemAt } from '../record/trail.ts';
import { correctedReading, instrumentOf, instrumentsFor, measureSi } from './calibrate.ts';

export type GrossWeight =
  | {
      readonly kind: 'weight';
      readonly weightN: number;
      /** Counters read in this glance, or older ones carried on with the flow since. */
      readonly method: 'counters' | 'flow';
      readonly by: readonly EntryId[];
    }
  | {
      readonly kind: 'noWeight';
      readonly because:
        | 'noFlightSheet'
        | 'noReading'
        | 'noRampWeight'
        | 'counterNeverRead'
        | 'counterUnusable'
        | 'countersTooOld'
        | 'noFlowSinceCounters';
    };

/** Older counters are carried on with the flow for this long (a choice). */
const COUNTERS_LAST_S = 1800;
/** Looks back for a flow at the time of the counters; the answer must not cost more late in a flight. */
const GLANCES_LOOKED_AT = 20;
/** A counter this close to the reading belongs to it. */
const SAME_LOOK_S = 10;

/** Ramp weight less everything counted by the reading at `glanceIndex`, the suction unit's fuel too. */
export function grossWeightAt(view: FlightView, glanceIndex: number): GrossWeight {
  return weightFromRamp(view.state, rampWeight(view.state), glanceIndex);
}

/** What was loaded: the newest preflight record, else the flight sheet. */
export function rampWeight({ rampWeight: weighed, sheet }: FlightState): RampWeight | null {
  const said = weighed?.weight ?? sheet?.weights.ramp;
  const massKg = said === undefined ? undefined : measureSi(said, 'mass');
  return massKg === undefined ? null : { massKg, by: weighed?.by ?? null };
}

export interface RampWeight {
  readonly massKg: number;
  readonly by: EntryId | null;
}

/** As `grossWeightAt`, with the ramp weight looked up once for many readings. */
export function weightFromRamp(
  state: FlightState,
  ramp: RampWeight | null,
  glanceIndex: number,
): GrossWeight {
  const { sheet } = state;
  const glance = itemAt(state.glances, glanceIndex);
  if (sheet === null) return { kind: 'noWeight', because: 'noFlightSheet' };
  if (glance === undefined) return { kind: 'noWeight', because: 'noReading' };
  if (ramp === null) return { kind: 'noWeight', because: 'noRampWeight' };
  let burntKg = 0;
  let method: 'counters' | 'flow' = 'counters';
  const by = ramp.by === null ? [] : [ramp.by];
  for (const consumer of consumersOf(sheet)) {
    const counter = usableCounter(state, sheet, consumer, glanceIndex);
    if (counter === 'neverRead') {
      // A suction unit that never ran has burnt nothing; a counter nobody read is not zero.
      if (consumer === 'suctionUnit' && !suctionEverRan(state, glance)) continue;
      return { kind: 'noWeight', because: 'counterNeverRead' };
    }
    if (counter === 'unusable') return { kind: 'noWeight', because: 'counterUnusable' };
    const since = burntSinceKg(state, sheet, { consumer, counter, glance, glanceIndex });
    if (since.kind === 'noWeight') return since;
    burntKg += counter.massKg + since.massKg;
    if (since.massKg > 0) method = 'flow';
    by.push(counter.by);
  }
  const weightN = (ramp.massKg - burntKg) * STANDARD_GRAVITY_M_PER_S2;
  if (!(weightN > 0)) return { kind: 'noWeight', because: 'counterUnusable' };
  return { kind: 'weight', weightN, method, by };
}

/** Engines always burn; the suction unit only where the flight sheet gives it a counter of its own. */
function consumersOf(sheet: FlightSheet): readonly string[] {
  const engines = Array.from({ length: sheet.aircraft.engineCount }, (_, index) =>
    String(index + 1),
  );
  const unit = instrumentsFor(sheet, 'fuelUsed').some(
    (counter) => counter.consumer === 'suctionUnit',
  );
  return unit ? [...engines, 'suctionUnit'] : engines;
}

function suctionEverRan(state: FlightState, glance: Glance): boolean {
  return state.suctionUnit !== null || glance.circumstances.lastSuctionChangeAt !== null;
}

interface Counted {
  readonly at: EpochMs;
  readonly by: EntryId;
  readonly massKg: number;
}

/** The newest counter by then; a queried one is passed over for the one before it. */
function usableCounter(
  state: FlightState,
  sheet: FlightSheet,
  consumer: string,
  glanceIndex: number,
): Counted | 'neverRead' | 'unusable' {
  let seen = false;
  for (let at = glanceIndex; at >= Math.max(0, glanceIndex - GLANCES_LOOKED_AT); at -= 1) {
    const counter = itemAt(state.glances, at)?.circumstances.counters[consumer];
    if (counter === undefined) break;
    seen = true;
    const massKg = counterKg(sheet, counter);
    if (massKg !== null) return { at: counter.at, by: counter.by, massKg };
  }
  return seen ? 'unusable' : 'neverRead';
}

function counterKg(sheet: FlightSheet, { reading }: CounterNow): number | null {
  const instrument = instrumentOf(sheet, reading.instrument);
  if (instrument === undefined) return null;
  const corrected = correctedReading(instrument, reading);
  return corrected.kind === 'corrected' ? corrected.valueSi : null;
}

interface Since {
  readonly consumer: string;
  readonly counter: Counted;
  readonly glance: Glance;
  readonly glanceIndex: number;
}

function burntSinceKg(
  state: FlightState,
  sheet: FlightSheet,
  { consumer, counter, glance, glanceIndex }: Since,
):
  { readonly kind: 'burnt'; readonly massKg: number } | Extract<GrossWeight, { kind: 'noWeight' }> {
  const sinceS = (glance.at - counter.at) / 1000;
  if (Math.abs(sinceS) <= SAME_LOOK_S) return { kind: 'burnt', massKg: 0 };
  if (sinceS > COUNTERS_LAST_S) return { kind: 'noWeight', because: 'countersTooOld' };
  const gauges =
    consumer === 'suctionUnit'
      ? instrumentsFor(sheet, 'suctionFuelFlow')
      : instrumentsFor(sheet, 'fuelFlow').filter((gauge) => String(gauge.consumer) === consumer);
  const flows: { readonly at: EpochMs; readonly kgPerS: number }[] = [];
  for (let step = 0; step <= GLANCES_LOOKED_AT; step += 1) {
    const other = itemAt(state.glances, glanceIndex - step);
    if (glanceIndex - step < 0 || other === undefined) break;
    const kgPerS = flowKgPerS(gauges, other);
    if (kgPerS !== null) flows.unshift({ at: other.at, kgPerS });
    if (other.at <= counter.at) break;
  }
  const massKg = integratedKg(flows, counter.at, glance.at);
  if (massKg === null) return { kind: 'noWeight', because: 'noFlowSinceCounters' };
  return { kind: 'burnt', massKg };
}

function flowKgPerS(gauges: readonly Instrument[], glance: Glance): number | null {
  for (const gauge of gauges) {
    const reading = glance.readings[gauge.id];
    if (reading === undefined) continue;
    const corrected = correctedReading(gauge, reading);
    if (corrected.kind === 'corrected') return corrected.valueSi;
  }
  return null;
}

/** Straight lines between readings, the first and last held outside them. */
function integratedKg(
  flows: readonly { readonly at: EpochMs; readonly kgPerS: number }[],
  fromMs: EpochMs,
  toMs: EpochMs,
): number | null {
  if (flows.length === 0) return null;
  const flowAt = (ms: number): number => {
    const after = flows.findIndex((flow) => flow.at >= ms);
    const high = flows[after === -1 ? flows.length - 1 : after];
    const low = flows[after <= 0 ? 0 : after - 1];
    if (high === undefined || low === undefined) return 0;
    if (after <= 0 || high.at === low.at) return high.kgPerS;
    return low.kgPerS + ((ms - low.at) / (high.at - low.at)) * (high.kgPerS - low.kgPerS);
  };
  const corners = [
    fromMs,
    ...flows.map((flow) => flow.at).filter((at) => at > fromMs && at < toMs),
    toMs,
  ];
  return corners.slice(1).reduce((total, end, index) => {
    const start = corners[index] ?? end;
    return total + ((flowAt(start) + flowAt(end)) / 2) * ((end - start) / 1000);
  }, 0);
}
