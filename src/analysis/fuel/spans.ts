import { combinedUncertainty, type Component } from '../../aero/statistics/uncertainty.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightState, Timed } from '../../record/flightState.ts';
import { WINGS, type FlightSheet, type Wing } from '../../record/sheet.ts';
import type { BaselineRunUsed } from '../baselineRuns.ts';
import { provisionalMethod } from '../liveEstimate.ts';
import { contextOf, type Context } from '../reading/context.ts';
import { certain } from '../reading/runMean.ts';
import { baselineRunsAfterLanding } from '../runReadings.ts';
import { alongFlight, type Along } from './along.ts';
import { burntBetween, countersOf, engineCounters, unitCounter, type Counter } from './counters.ts';
import { fuelFigure } from './fuelFigure.ts';
import { spanGates } from './spanGates.ts';
import type { NoSpan, SpanSaving, SuctionSpan } from './spanResults.ts';
import { latestEnd, suctionOn, wingsOf, type SuctionOn } from './suctionOn.ts';
import { suctionCost } from './suctionCost.ts';
import { turbulentFuel } from './turbulentFuel.ts';

/**
 * What suction saved over each stretch of the flight in which it was on: the fuel of the suction-off baseline at the
 * weight of each moment, less what the counters counted. Turns and cloud are in it, as they are in a flight.
 */
export function suctionSpans(view: FlightView): readonly SuctionSpan[] {
  const { state } = view;
  const context = contextOf(view);
  const stretches = suctionOn(state);
  if (context === null) {
    const because = state.sheet === null ? 'noFlightSheet' : 'outsideAtmosphere';
    return stretches.map((stretch) => spanOf(state, stretch, null, none(stretch, because)));
  }
  const { sheet } = context.terms;
  const all = countersOf(state, sheet);
  const counters = engineCounters(all, sheet);
  const along = alongFlight(context, all);
  const baselines = baselineRunsAfterLanding(context);
  return stretches.map((stretch) => {
    const to = stretch.off?.at ?? lastCounted(state, stretch, counters);
    if (along === null) return spanOf(state, stretch, to, none(stretch, 'noWeight'));
    if (counters === null) return spanOf(state, stretch, to, none(stretch, 'countersNotRead'));
    const flight = { context, along, baselines, counters, unit: unitCounter(all) };
    return spanOf(state, stretch, to, savingOf(flight, stretch, to));
  });
}

interface Flight {
  readonly context: Context;
  readonly along: Along;
  readonly baselines: readonly BaselineRunUsed[];
  readonly counters: readonly Counter[];
  readonly unit: Counter | null;
}

function savingOf(
  { context, along, baselines, counters, unit }: Flight,
  stretch: SuctionOn,
  to: EpochMs,
): SuctionSpan['saving'] {
  const { state, terms } = context;
  const from = stretch.on.at;
  if (to <= from) return none(stretch, 'noTime');
  if (baselines.length === 0) return none(stretch, 'noBaseline');
  const burnt = burntBetween(counters, from, to);
  if (burnt.kind === 'notCounted') return none(stretch, burnt.because);
  const turbulent = turbulentFuel(context, along, baselines, [from, to]);
  if (turbulent === null) return none(stretch, 'baselineFails', burnt.by);
  const { inUse } = turbulent;
  const doubts = {
    baseline: turbulent.baseline,
    calibration: [turbulent.calibration],
    weight: [turbulent.weight],
    counters: [certain(burnt.standardUncertaintyKg)],
    times: timeDoubts(terms.sheet, stretch, {
      atOn: turbulent.flowAtStartKgPerS,
      atOff: turbulent.flowAtEndKgPerS,
    }),
  };
  const cost = suctionCost(context, unit, { from, to, countedKg: burnt.kg });
  const saved = {
    kg: turbulent.kg - burnt.kg,
    turbulentKg: turbulent.kg,
    components: Object.values(doubts).flat(),
  };
  const { method } = inUse;
  return {
    kind: 'answer',
    value: {
      turbulent: fuelFigure(turbulent.kg, turbulent.kg, [
        ...doubts.baseline,
        ...doubts.calibration,
        ...doubts.weight,
      ]),
      countedKg: burnt.kg,
      countersAtOn: burnt.atStart,
      countersAtOff: burnt.atEnd,
      ...grossAndNet(saved, cost),
      baselineRuns: inUse.labels,
      borrowedFrom: inUse.borrowedFrom,
      provisional: [
        ...inUse.provisional,
        ...provisionalMethod(
          context,
          inUse.means.every((mean) => mean.repeatabilityDeclared),
        ),
      ],
      uncertaintyPartsKg: partsOf(doubts),
    },
    how: {
      entries: distinct([
        ...entriesOf(stretch),
        ...burnt.by,
        ...cost.by,
        ...inUse.entries,
        ...along.entriesWithin(from, to),
      ]),
      method,
      broken: spanGates({
        state,
        along,
        stretch,
        to,
        burnt,
        turbulent,
        cardAltitudeM: terms.cardAir.pressureAltitudeM,
      }),
    },
  };
}

/** The engines' saving is gross with a plant of its own, and net already where they drive the suction. */
function grossAndNet(
  saved: {
    readonly kg: number;
    readonly turbulentKg: number;
    readonly components: readonly Component[];
  },
  cost: ReturnType<typeof suctionCost>,
): Pick<SpanSaving, 'gross' | 'suctionKg' | 'suctionFrom' | 'net'> {
  const figure = (kg: number, own: readonly Component[] = []): ReturnType<typeof fuelFigure> =>
    fuelFigure(kg, saved.turbulentKg, [...saved.components, ...own]);
  switch (cost.kind) {
    case 'ownFuel':
      return {
        gross: figure(saved.kg),
        suctionKg: cost.kg,
        suctionFrom: cost.from,
        net: figure(saved.kg - cost.kg, [certain(cost.standardUncertaintyKg)]),
      };
    case 'ownFuelNotRead':
      return {
        gross: figure(saved.kg),
        suctionKg: null,
        suctionFrom: null,
        net: { because: 'unitFuelNotRead' },
      };
    case 'bleed':
      return {
        gross: figure(saved.kg + cost.kg, [certain(cost.standardUncertaintyKg)]),
        suctionKg: cost.kg,
        suctionFrom: 'bleedSlope',
        net: figure(saved.kg),
      };
    case 'unmeasured':
      return {
        gross: { because: cost.because },
        suctionKg: null,
        suctionFrom: null,
        net: figure(saved.kg),
      };
  }
}

/** Suction that came on a second later than written would have burnt a second of it less. */
function timeDoubts(
  sheet: FlightSheet,
  { on, off }: SuctionOn,
  flowKgPerS: { readonly atOn: number; readonly atOff: number },
): readonly Component[] {
  const doubtS = (timed: Timed): number => timed.doubtS ?? sheet.timeDoubts.touchS;
  return [
    certain(flowKgPerS.atOn * Math.abs(doubtS(on))),
    // Ended by the counters themselves, it is as long as they say.
    ...(off === null ? [] : [certain(flowKgPerS.atOff * Math.abs(doubtS(off)))]),
  ];
}

function partsOf(
  doubts: Readonly<Record<keyof SpanSaving['uncertaintyPartsKg'], readonly Component[]>>,
): SpanSaving['uncertaintyPartsKg'] {
  return {
    baseline: combinedUncertainty(doubts.baseline),
    calibration: combinedUncertainty(doubts.calibration),
    weight: combinedUncertainty(doubts.weight),
    counters: combinedUncertainty(doubts.counters),
    times: combinedUncertainty(doubts.times),
  };
}

/** The last moment of level flight at which every engine's counter was read; the start where there is none. */
function lastCounted(
  state: FlightState,
  { on }: SuctionOn,
  counters: readonly Counter[] | null,
): EpochMs {
  const latest = latestEnd(state, on.at);
  const last = (counters ?? []).map(
    ({ looks }) => looks.findLast(({ at }) => at > on.at && at <= latest)?.at ?? on.at,
  );
  return last.reduce((first, at) => (at < first ? at : first), latest);
}

function spanOf(
  state: FlightState,
  stretch: SuctionOn,
  end: EpochMs | null,
  saving: SuctionSpan['saving'],
): SuctionSpan {
  const to = end ?? stretch.off?.at ?? latestEnd(state, stretch.on.at);
  const seconds = (side: Wing): number =>
    stretch.wings.reduce(
      (total, { wing, on, off }) =>
        wing === side ? total + Math.max(0, (off?.at ?? to) - on.at) / 1000 : total,
      0,
    );
  const [left, right] = WINGS.map(seconds);
  return {
    from: stretch.on.at,
    to,
    wings: wingsOf(stretch),
    wingSeconds: { L: left ?? 0, R: right ?? 0 },
    saving,
  };
}

function none(
  stretch: SuctionOn,
  because: NoSpan,
  also: readonly EntryId[] = [],
): SuctionSpan['saving'] {
  return { kind: 'noAnswer', because, entries: distinct([...entriesOf(stretch), ...also]) };
}

function entriesOf({ wings }: SuctionOn): readonly EntryId[] {
  return wings.flatMap(({ on, off }) => (off === null ? [on.by] : [on.by, off.by]));
}

function distinct(ids: readonly EntryId[]): readonly EntryId[] {
  return [...new Set(ids)];
}
