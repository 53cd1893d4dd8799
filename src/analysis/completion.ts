import type { EntryId, EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { Glance, Run } from '../record/flightState.ts';
import type { TestCard } from '../record/sheet.ts';
import { itemAt, items } from '../record/trail.ts';
import { cardProgress } from './cards.ts';
import { contextOf, type Context } from './reading/context.ts';
import { outsideCard } from './reading/gates.ts';
import { sampleOf } from './reading/looks.ts';
import type { CardProgress, LeftOut } from './results.ts';
import { runReadings } from './runReadings.ts';

/** How much of the plan was flown: every card with its runs, how long each was in tolerance, and why a card is missed. */
export interface CardsFlown {
  readonly planned: number;
  /** Cards with a run, finished or not. */
  readonly flown: number;
  readonly complete: number;
  /** In card order. */
  readonly cards: readonly CardFlown[];
  /** Runs of points that the flight sheet does not plan. */
  readonly unplanned: readonly RunFlown[];
}

export interface CardFlown {
  readonly point: string;
  readonly title: string;
  readonly state: CardProgress['state'];
  readonly runs: readonly RunFlown[];
  /** Why it is not complete, run by run; empty when it is. */
  readonly missed: readonly Miss[];
}

export interface RunFlown {
  readonly point: string;
  readonly run: number;
  readonly state: Run['state'];
  readonly startedAt: EpochMs;
  readonly endedAt: EpochMs | null;
  readonly durationS: number;
  /** Mach, height and their rates within the card, and in no turn. With the two below it adds up to the duration. */
  readonly inToleranceS: number;
  readonly outsideS: number;
  /** Too far from any look at the air data to say. */
  readonly unobservedS: number;
  readonly usableReadings: number;
  readonly entries: readonly EntryId[];
}

export type Miss =
  | { readonly because: 'notFlown' }
  | {
      readonly because: 'open' | 'interrupted' | 'terminated';
      readonly run: number;
      /** In the scribe's words. */
      readonly reason: string | null;
    }
  | {
      readonly because: 'tooFewReadings';
      readonly run: number;
      readonly usable: number;
      readonly wanted: number;
      /** What left readings of the run out, and how often. */
      readonly leftOut: readonly { readonly reason: LeftOut; readonly times: number }[];
    }
  | {
      readonly because: 'tooShort';
      readonly run: number;
      readonly heldS: number;
      readonly wantedS: number;
    };

/** A look at the air data speaks of this long before and after it (a choice, as for readings without one). */
const LOOK_LASTS_S = 300;

export function cardsFlown(view: FlightView): CardsFlown {
  const { state } = view;
  const context = contextOf(view);
  const cards = state.sheet?.testCards ?? [];
  const runs = [...items(state.runs)];
  const progress = cardProgress(view);
  const flown = progress.map(({ point, title, state: stood }): CardFlown => {
    const own = runs.filter((run) => run.point === point);
    const card = cards.find(({ id }) => id === point);
    return {
      point,
      title,
      state: stood,
      runs: own.map((run) => runFlown(view, context, run)),
      missed: card === undefined || stood === 'complete' ? [] : missesOf(context, card, own),
    };
  });
  return {
    planned: progress.length,
    flown: progress.filter((card) => card.runs > 0).length,
    complete: progress.filter((card) => card.state === 'complete').length,
    cards: flown,
    unplanned: runs
      .filter(({ point }) => !cards.some(({ id }) => id === point))
      .map((run) => runFlown(view, context, run)),
  };
}

function missesOf(context: Context | null, card: TestCard, runs: readonly Run[]): readonly Miss[] {
  if (runs.length === 0) return [{ because: 'notFlown' }];
  return runs.flatMap((run): readonly Miss[] => {
    if (run.state !== 'complete') return [{ because: run.state, run: run.run, reason: run.reason }];
    const readings = context === null ? null : runReadings(context, run);
    const usable = readings?.used.length ?? 0;
    const misses: Miss[] = [];
    if (usable < card.minimumReadings) {
      const reasons = (readings?.leftOut ?? []).flatMap(({ broken }) => broken);
      misses.push({
        because: 'tooFewReadings',
        run: run.run,
        usable,
        wanted: card.minimumReadings,
        leftOut: [...new Set(reasons)].map((reason) => ({
          reason,
          times: reasons.filter((one) => one === reason).length,
        })),
      });
    }
    const heldS = run.ended === null ? 0 : (run.ended.at - run.started.at) / 1000;
    const wantedS = card.minimumSteadyS ?? 0;
    if (heldS < wantedS) misses.push({ because: 'tooShort', run: run.run, heldS, wantedS });
    return misses;
  });
}

function runFlown({ state }: FlightView, context: Context | null, run: Run): RunFlown {
  const from = run.started.at;
  const to = Math.max(from, run.ended?.at ?? state.lastAt ?? from);
  const durationS = (to - from) / 1000;
  const looks = context === null ? [] : looksWithin(context, run);
  const spoken = looks.map(({ at, inside }, index) => {
    const before = looks[index - 1];
    const after = looks[index + 1];
    // Each look speaks halfway to the next one.
    const since = Math.max(from, at - LOOK_LASTS_S * 1000, before ? (before.at + at) / 2 : from);
    const until = Math.min(to, at + LOOK_LASTS_S * 1000, after ? (at + after.at) / 2 : to);
    return { inside, seconds: Math.max(0, until - since) / 1000 };
  });
  const total = (inside: boolean): number =>
    spoken.reduce((sum, look) => (look.inside === inside ? sum + look.seconds : sum), 0);
  return {
    point: run.point,
    run: run.run,
    state: run.state,
    startedAt: from,
    endedAt: run.ended?.at ?? null,
    durationS,
    inToleranceS: total(true),
    outsideS: total(false),
    unobservedS: Math.max(0, durationS - total(true) - total(false)),
    usableReadings: context === null ? 0 : runReadings(context, run).used.length,
    entries: [
      ...new Set([
        run.started.by,
        ...(run.ended === null ? [] : [run.ended.by]),
        ...looks.flatMap(({ by }) => by),
      ]),
    ],
  };
}

interface AirLook {
  readonly at: EpochMs;
  readonly by: readonly EntryId[];
  readonly inside: boolean;
}

function looksWithin({ state, terms }: Context, run: Run): readonly AirLook[] {
  const looks: AirLook[] = [];
  const index = runIndexOf(state.runs, run);
  for (const glance of items(state.glances)) {
    if (glance.circumstances.run !== index) continue;
    const field = (name: Parameters<typeof sampleOf>[2]): number | null =>
      sampleOf(terms.sheet, glance, name)?.value ?? null;
    const air = {
      mach: field('mach'),
      pressureAltitudeM: field('pressureAltitude'),
      machRatePerS: field('machRate'),
      altitudeRateMPerS: field('altitudeRate'),
    };
    if (Object.values(air).every((value) => value === null)) continue;
    looks.push({ at: glance.at, by: glance.by, inside: insideCard(terms, glance, air) });
  }
  return looks;
}

function insideCard(
  terms: Context['terms'],
  glance: Glance,
  air: Parameters<typeof outsideCard>[1],
): boolean {
  return glance.circumstances.turnSince === null && outsideCard(terms, air).length === 0;
}

function runIndexOf(runs: FlightView['state']['runs'], run: Run): number {
  for (let index = 0; index < runs.length; index += 1) {
    if (itemAt(runs, index) === run) return index;
  }
  return -1;
}
