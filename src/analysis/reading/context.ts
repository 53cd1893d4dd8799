import type { EntryId } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightState, Glance, Run } from '../../record/flightState.ts';
import type { Instrument, TestCard } from '../../record/sheet.ts';
import { itemAt } from '../../record/trail.ts';
import { calibrationsUsed, type CalibrationsUsed } from '../calibrations.ts';
import { reduceReading, totalFlow, type ReducedReading } from '../reduceReading.ts';
import type { Missing, Note } from '../results.ts';
import { rampWeight, weightFromRamp, type RampWeight } from '../weight.ts';
import { airDataBefore, airDataWithin, type AirData } from './airData.ts';
import { sheetTerms, type SheetTerms } from './sheetTerms.ts';

/** What every reading of one view is judged by, looked up once. */
export interface Context {
  readonly state: FlightState;
  readonly terms: SheetTerms;
  readonly ramp: RampWeight | null;
  readonly calibrations: CalibrationsUsed;
}

/** By what is known at the reading, or with the readings after it too. */
type Hindsight = 'atTheTime' | 'afterLanding';

export type ReadingOutcome =
  | {
      readonly kind: 'reduced';
      readonly reading: ReducedReading;
      readonly glance: Glance;
      readonly entries: readonly EntryId[];
      readonly notes: readonly Note[];
    }
  | { readonly kind: 'missing'; readonly because: Missing };

export function contextOf(view: FlightView): Context | null {
  const { sheet } = view.state;
  const terms = sheet === null ? null : sheetTerms(sheet);
  if (terms === null) return null;
  const flows = [...terms.engineFlows, ...(terms.suctionIsMetered ? unitGauge(terms) : [])];
  return {
    state: view.state,
    terms,
    ramp: rampWeight(view.state),
    calibrations: calibrationsUsed(view.state, flows),
  };
}

function unitGauge({ suctionFlow }: SheetTerms): readonly Instrument[] {
  return suctionFlow === null ? [] : [suctionFlow];
}

/** The reading at `index`, reduced to the card, or the first thing that is missing. */
export function readingAt(
  { state, terms, ramp, calibrations }: Context,
  index: number,
  hindsight: Hindsight,
): ReadingOutcome {
  const glance = itemAt(state.glances, index);
  if (glance === undefined) return { kind: 'missing', because: 'noReading' };
  const flow = totalFlow(terms, glance);
  if (flow.kind === 'missing') return flow;
  const weight = weightFromRamp(state, ramp, index);
  if (weight.kind === 'noWeight') return { kind: 'missing', because: 'noWeight' };
  const airDataOf = hindsight === 'atTheTime' ? airDataBefore : airDataWithin;
  const air = airDataOf(state, terms.sheet, index);
  if (air === null) return { kind: 'missing', because: 'noAirData' };
  const reading = reduceReading({
    terms,
    glance,
    glanceIndex: index,
    flow,
    air,
    weightN: weight.weightN,
  });
  if ('kind' in reading) return reading;
  return {
    kind: 'reduced',
    reading,
    glance,
    entries: [
      ...new Set([...glance.by, ...airEntries(state, air), ...weight.by, ...calibrations.entries]),
    ],
    notes: notesOf(glance, air, weight.method),
  };
}

export function isFuelReading({ terms }: Context, glance: Glance): boolean {
  return terms.engineFlows.some((gauge) => glance.readings[gauge.id] !== undefined);
}

export function cardOf({ terms }: Context, { point }: Run): TestCard | undefined {
  return terms.sheet.testCards.find((card) => card.id === point);
}

export function runOf({ state }: Context, glance: Glance): Run | null {
  const { run } = glance.circumstances;
  return run === null ? null : (itemAt(state.runs, run) ?? null);
}

/** Suction off inside a run of a suction-off card. */
export function isBaselineReading(context: Context, glance: Glance): boolean {
  const run = runOf(context, glance);
  if (run === null || glance.circumstances.suctionOn) return false;
  return cardOf(context, run)?.suction === 'off';
}

function airEntries(state: FlightState, air: AirData): readonly EntryId[] {
  return Object.values(air).flatMap(({ shares }) =>
    shares.flatMap(({ glance }) => itemAt(state.glances, glance)?.by ?? []),
  );
}

function notesOf(glance: Glance, air: AirData, weightMethod: 'counters' | 'flow'): readonly Note[] {
  const notes: Note[] = [];
  if (glance.circumstances.run === null) notes.push('noRunOpen');
  if (Object.values(air).some(({ from }) => from !== 'own')) notes.push('airDataOfAnotherReading');
  if (weightMethod === 'flow') notes.push('weightByFlow');
  if (!glance.circumstances.suctionOn) notes.push('suctionOffOutsideBaseline');
  return notes;
}
