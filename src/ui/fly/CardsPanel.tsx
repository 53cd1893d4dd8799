import { cardProgress } from '../../analysis/cards.ts';
import { ChipPanel } from './ChipPanel.tsx';
import { useFly } from './flyContext.ts';
import type { Panel } from './flyState.ts';

/** Which card the next start proposes, when it is not the next in order. */
export function CardsPanel({ panel }: { readonly panel: Extract<Panel, { kind: 'cards' }> }) {
  const { view, move, sceneAt, clock } = useFly();
  const { nextPoint } = sceneAt(clock.now());
  return (
    <ChipPanel
      title="Card to fly next"
      sub="Point starts this one; run numbers follow."
      chips={cardProgress(view).map((card) => ({
        act: `card-${card.point}`,
        label:
          card.state === 'complete'
            ? `${card.point} done`
            : `${card.point} ${card.usableReadings}/${card.minimumReadings}`,
        set: card.point === nextPoint,
        onTouch: () => {
          move({ do: 'point', point: card.point });
          move({ do: 'panel', panel: null });
        },
      }))}
      fixed={[
        { act: 'panel-done', label: 'Done', onTouch: () => move({ do: 'panel', panel: null }) },
      ]}
      page={panel.page}
      onMore={() => move({ do: 'panel', panel: { kind: 'cards', page: panel.page + 1 } })}
    />
  );
}
