import type { FlightView } from '../record/flight.ts';
import type { Run } from '../record/flightState.ts';
import { items } from '../record/trail.ts';
import type { TestCard } from '../record/sheet.ts';
import { cardPlan } from './cardPlan.ts';
import { contextOf, type Context } from './reading/context.ts';
import type { CardProgress, Refly } from './results.ts';
import { runReadings } from './runReadings.ts';

/** Where each card stands, in card order. */
export function cardProgress(view: FlightView): readonly CardProgress[] {
  const { sheet, runs } = view.state;
  if (sheet === null) return [];
  const context = contextOf(view);
  const flown = [...items(runs)];
  return [...sheet.testCards]
    .sort((a, b) => a.order - b.order)
    .map((card) =>
      progressOf(
        card,
        flown.filter(({ point }) => point === card.id),
        context,
      ),
    );
}

/**
 * The card in hand: the open one, else the next in order not flown yet, else the one most wanted again. Where what is
 * left above joker no longer covers all of them, the most wanted one that it does cover.
 */
export function nextCard(view: FlightView): CardProgress | null {
  const cards = cardProgress(view);
  const open = cards.find(({ state }) => state === 'open');
  if (open !== undefined) return open;
  const { verdict, wanted: plan } = cardPlan(view, cards);
  const covered = verdict === 'short' ? plan.find(({ fits }) => fits !== false) : undefined;
  if (covered !== undefined) return cards.find(({ point }) => point === covered.point) ?? null;
  const fresh = cards.find(({ state }) => state === 'notFlown');
  if (fresh !== undefined) return fresh;
  const [wanted] = reflyOf(view, cards);
  return cards.find(({ point }) => point === wanted?.point) ?? null;
}

/** Cards to fly again, by priority and then in card order. */
export function reflyList(view: FlightView): readonly Refly[] {
  return reflyOf(view, cardProgress(view));
}

function reflyOf(view: FlightView, cards: readonly CardProgress[]): readonly Refly[] {
  const priorities = new Map(
    view.state.sheet?.testCards.map((card) => [card.id, card.priority] as const),
  );
  return cards
    .flatMap(({ point, state }): Refly[] => {
      if (state === 'complete' || state === 'open') return [];
      const because = state === 'partial' ? 'tooFewReadings' : state;
      return [{ point, priority: priorities.get(point) ?? 0, because }];
    })
    .sort((a, b) => a.priority - b.priority);
}

function progressOf(card: TestCard, runs: readonly Run[], context: Context | null): CardProgress {
  const counted = runs.map((run) => ({
    run,
    usable: context === null ? 0 : runReadings(context, run).used.length,
  }));
  const open = counted.find(({ run }) => run.state === 'open');
  return {
    point: card.id,
    title: card.title,
    setting: card.setting,
    suction: card.suction,
    minimumReadings: card.minimumReadings,
    usableReadings: open?.usable ?? Math.max(0, ...counted.map(({ usable }) => usable)),
    runs: runs.length,
    state: stateOf(card, counted),
    openRun: open?.run.run ?? null,
  };
}

function stateOf(
  card: TestCard,
  runs: readonly { readonly run: Run; readonly usable: number }[],
): CardProgress['state'] {
  const last = runs.at(-1);
  if (last === undefined) return 'notFlown';
  if (runs.some(({ run }) => run.state === 'open')) return 'open';
  const finished = runs.filter(({ run }) => run.state === 'complete');
  if (finished.some(({ run, usable }) => usable >= card.minimumReadings && steady(card, run))) {
    return 'complete';
  }
  return finished.length > 0 ? 'partial' : last.run.state;
}

function steady({ minimumSteadyS }: TestCard, run: Run): boolean {
  if (minimumSteadyS === undefined || run.ended === null) return true;
  return (run.ended.at - run.started.at) / 1000 >= minimumSteadyS;
}
