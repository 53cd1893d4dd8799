import { cardPlan, type CardPlan } from '../../analysis/cardPlan.ts';
import { cardProgress } from '../../analysis/cards.ts';
import { cardsFlown } from '../../analysis/completion.ts';
import type { CardProgress } from '../../analysis/results.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { figure } from '../kit/number.ts';
import { running } from '../kit/time.ts';
import { actOf } from './acts.ts';
import { ChipPanel, type Chip } from './ChipPanel.tsx';
import { useFly, type Fly } from './flyContext.ts';
import type { Panel } from './flyState.ts';
import { writeAct } from './touchTile.ts';

/**
 * Which card the next start proposes, when it is not the next in order: its readings, whether what is left covers it, and
 * any card again. While a point is open, how long it was in tolerance, and every way to end it.
 */
export function CardsPanel({ panel }: { readonly panel: Extract<Panel, { kind: 'cards' }> }) {
  const fly = useFly();
  const { view, sheet, move, sceneAt, clock } = fly;
  const { nextPoint } = sceneAt(clock.now());
  const cards = cardProgress(view);
  const plan = cardPlan(view, cards);
  const open = cards.find(({ state }) => state === 'open');
  return (
    <ChipPanel
      title={open === undefined ? 'Card to fly next' : openWords(fly, open)}
      sub={planWords(plan, sheet)}
      chips={[
        ...(open === undefined ? [] : ENDS.map((end) => endChip(fly, end))),
        ...toFlyFirst(cards).map((card) => ({
          act: `card-${card.point}`,
          label: `${card.point} ${cardWords(card, plan)}`,
          set: card.point === nextPoint,
          onTouch: () => {
            move({ do: 'point', point: card.point });
            move({ do: 'panel', panel: null });
          },
        })),
      ]}
      fixed={[
        { act: 'panel-done', label: 'Done', onTouch: () => move({ do: 'panel', panel: null }) },
      ]}
      page={panel.page}
      onMore={() => move({ do: 'panel', panel: { kind: 'cards', page: panel.page + 1 } })}
    />
  );
}

/** In card order; those that are complete come last, for they are wanted least. */
function toFlyFirst(cards: readonly CardProgress[]): readonly CardProgress[] {
  const isDone = ({ state }: CardProgress): number => (state === 'complete' ? 1 : 0);
  return cards.toSorted((a, b) => isDone(a) - isDone(b));
}

const ENDS = [
  { act: 'point-end', label: 'End point' },
  { act: 'point-interrupt', label: 'Spoiled' },
  { act: 'point-terminate', label: 'Stop point' },
] as const;

function endChip(fly: Fly, { act, label }: (typeof ENDS)[number]): Chip {
  return {
    act: `cards-${act}`,
    label,
    onTouch: (touch) => {
      const meant = actOf(act);
      if (meant !== null) {
        void writeAct(fly, meant, touch);
      }
    },
  };
}

function cardWords(card: CardProgress, { wanted }: CardPlan): string {
  if (card.state === 'complete') {
    return 'done';
  }
  const readings = `${card.usableReadings}/${card.minimumReadings}`;
  const isShort = wanted.some(({ point, fits }) => point === card.point && fits === false);
  return isShort ? `${readings} no fuel` : readings;
}

/** "TP05 run 1, in tolerance 03:10": air data speak for as long as they last. */
function openWords({ view }: Fly, card: CardProgress): string {
  const flown = cardsFlown(view).cards.find(({ point }) => point === card.point);
  const run = flown?.runs.find((each) => each.run === card.openRun);
  return run === undefined
    ? `${card.point} open`
    : `${card.point} run ${run.run}, in tolerance ${running(run.inToleranceS * 1000)}`;
}

const KG_PER_LB = 0.45359237;

/** What the cards still want, beside what is left above joker; a record, and no fuel planning. */
function planWords(plan: CardPlan, sheet: FlightSheet | null): string {
  const { neededKg, aboveJokerKg, verdict } = plan;
  const mass = (massKg: number): string => {
    const pounds = sheet?.massUnit !== 'kg';
    return `${figure(pounds ? massKg / KG_PER_LB : massKg, 0)}\u00a0${pounds ? 'lb' : 'kg'}`;
  };
  if (neededKg === null) {
    return 'The cards do not say what they burn.';
  }
  if (aboveJokerKg === null) {
    return `Cards want ${mass(neededKg)}; left or joker unknown.`;
  }
  if (aboveJokerKg < 0) {
    return `BELOW joker by ${mass(-aboveJokerKg)}`;
  }
  return verdict === 'short'
    ? `SHORT by ${mass(neededKg - aboveJokerKg)} above joker`
    : `Want ${mass(neededKg)}, above joker ${mass(aboveJokerKg)}`;
}
