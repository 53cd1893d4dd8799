import type { EntryId } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightState } from '../../record/flightState.ts';
import { WINGS, type Wing } from '../../record/sheet.ts';
import { latestEnd, suctionOn, type SuctionOn } from '../fuel/suctionOn.ts';
import { looksOfWings, lostToCloud, settledAfter } from './clearAir.ts';
import { areaTimeOver, heldWing, type HeldWing } from './heldArea.ts';
import type {
  LaminarByTime,
  LaminarGate,
  LaminarShares,
  LaminarSpan,
  LaminarTimeAnswer,
  NoLaminarTime,
} from './laminarResults.ts';
import { common, secondsOf, united, without, type Stretch } from './stretches.ts';

/**
 * How much of the treated area was laminar, by area and time, while suction was on in level flight: each wing for the
 * time of its own suction, each state held until the next call on that wing. Turns are in it.
 */
export function laminarByTime(view: FlightView): LaminarByTime {
  const { state } = view;
  const { sheet } = state;
  if (sheet === null) {
    const none = noShares('noFlightSheet');
    return { spans: [], ...none, wings: { L: null, R: null } };
  }
  const looks = looksOfWings(state, sheet);
  const cloud = lostToCloud(view, looks);
  const wings = WINGS.map((wing) => heldWing(state, sheet, wing));
  const spans = suctionOn(state).map((stretch): Span => {
    const level = levelStretch(state, stretch);
    const settled = settledAfter(state, looks, level);
    const settling = { from: level.from, to: settled.at };
    const taken = cloud.filter(({ from, to }) => from < level.to && to > level.from);
    const clear = without([level], [settling, ...taken]);
    const broken = new Set<LaminarGate>(stretch.off === null ? ['notTurnedOff'] : []);
    const brokenClear = new Set<LaminarGate>([
      ...broken,
      ...(settled.by === null ? (['settlingNotSeen'] as const) : []),
      ...taken.flatMap((one) => one.broken),
    ]);
    return {
      level,
      settledAt: settled.at,
      entries: [stretch.on.by, ...(stretch.off === null ? [] : [stretch.off.by])],
      clearEntries: [
        ...(settled.by === null ? [] : [settled.by]),
        ...taken.flatMap(({ by }) => by),
      ],
      onBy: (wing) => wingStretches(stretch, wing, level),
      clear,
      lost: common(taken, without([level], [settling])),
      broken: [...broken],
      brokenClear: [...brokenClear],
    };
  });
  return {
    spans: spans.map((span): LaminarSpan => ({
      from: span.level.from,
      to: span.level.to,
      settledAt: span.settledAt,
      ...sharesOf([span], wings),
      wings: byWing([span], wings),
    })),
    ...sharesOf(spans, wings),
    wings: byWing(spans, wings),
  };
}

interface Span {
  readonly level: Stretch;
  readonly settledAt: Stretch['from'];
  readonly entries: readonly EntryId[];
  readonly clearEntries: readonly EntryId[];
  readonly onBy: (wing: Wing) => readonly Stretch[];
  readonly clear: readonly Stretch[];
  readonly lost: readonly Stretch[];
  readonly broken: readonly LaminarGate[];
  readonly brokenClear: readonly LaminarGate[];
}

/** From level-off to top of descent at most; empty where the span lies outside of it. */
function levelStretch(state: FlightState, { on, off }: SuctionOn): Stretch {
  const { levelOff, topOfDescent } = state.milestones;
  const latest = off?.at ?? latestEnd(state, on.at);
  const from = levelOff !== undefined && levelOff.at > on.at ? levelOff.at : on.at;
  const to = topOfDescent !== undefined && topOfDescent.at < latest ? topOfDescent.at : latest;
  return { from, to: to < from ? from : to };
}

function wingStretches({ wings }: SuctionOn, side: Wing, level: Stretch): readonly Stretch[] {
  const own = wings
    .filter(({ wing }) => wing === side)
    .map(({ on, off }) => ({ from: on.at, to: off?.at ?? level.to }));
  return common(united(own), [level]);
}

function byWing(
  spans: readonly Span[],
  wings: readonly HeldWing[],
): Readonly<Record<Wing, LaminarShares | null>> {
  const of = (side: Wing): LaminarShares | null => {
    const own = spans.filter(({ onBy }) => onBy(side).length > 0);
    return own.length === 0
      ? null
      : sharesOf(
          own,
          wings.filter(({ wing }) => wing === side),
        );
  };
  return { L: of('L'), R: of('R') };
}

function sharesOf(spans: readonly Span[], wings: readonly HeldWing[]): LaminarShares {
  if (spans.every(({ level }) => level.to <= level.from)) return noShares('notLevel');
  const allAir = spans.map((span) => ({
    span,
    times: wings.map((wing) => ({ wing, on: span.onBy(wing.wing) })),
  }));
  const clearAir = allAir.map(({ span, times }) => ({
    span,
    times: times.map(({ wing, on }) => ({ wing, on: common(on, span.clear) })),
  }));
  return {
    allAir: answerOf(allAir, {
      entries: ({ entries }) => entries,
      broken: ({ broken }) => broken,
      lost: () => [],
      empty: 'notLevel',
    }),
    clearAir: answerOf(clearAir, {
      entries: ({ entries, clearEntries }) => [...entries, ...clearEntries],
      broken: ({ brokenClear }) => brokenClear,
      lost: ({ lost }) => lost,
      empty: 'noClearAir',
    }),
  };
}

function answerOf(
  timed: readonly {
    readonly span: Span;
    readonly times: readonly { readonly wing: HeldWing; readonly on: readonly Stretch[] }[];
  }[],
  say: {
    readonly entries: (span: Span) => readonly EntryId[];
    readonly broken: (span: Span) => readonly LaminarGate[];
    readonly lost: (span: Span) => readonly Stretch[];
    readonly empty: NoLaminarTime;
  },
): LaminarTimeAnswer {
  const areas = timed.flatMap(({ times }) => times.map(({ wing, on }) => areaTimeOver(wing, on)));
  const sum = (of: (area: (typeof areas)[number]) => number): number =>
    areas.reduce((total, area) => total + of(area), 0);
  const observedM2S = sum((area) => area.observedM2S);
  const wholeM2S = sum((area) => area.wholeM2S);
  const durationS = timed.reduce(
    (total, { times }) => total + secondsOf(united(times.flatMap(({ on }) => on))),
    0,
  );
  const entries = [
    ...new Set([
      ...timed.flatMap(({ span }) => say.entries(span)),
      ...areas.flatMap(({ by }) => by),
    ]),
  ];
  const none = (because: NoLaminarTime): LaminarTimeAnswer => ({
    kind: 'noAnswer',
    because,
    entries,
  });
  if (!(durationS > 0)) return none(say.empty);
  if (!(wholeM2S > 0)) return none('noTappedArea');
  if (!(observedM2S > 0)) return none('notAssessed');
  return {
    kind: 'answer',
    value: {
      byAreaFraction: sum((area) => area.laminarM2S) / observedM2S,
      observedFraction: observedM2S / wholeM2S,
      durationS,
      lessS: timed.reduce((total, { span }) => total + secondsOf(say.lost(span)), 0),
    },
    how: {
      entries,
      method: 'heldStatesByArea',
      broken: [...new Set(timed.flatMap(({ span }) => say.broken(span)))],
    },
  };
}

function noShares(because: NoLaminarTime): LaminarShares {
  const none = { kind: 'noAnswer', because, entries: [] } as const;
  return { allAir: none, clearAir: none };
}
