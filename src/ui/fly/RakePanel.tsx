import type { Touch } from '../kit/touchBoard.ts';
import { ChipPanel } from './ChipPanel.tsx';
import { useFly, type Fly } from './flyContext.ts';

/** Which rake was read: the touch on it is the time of the reading. */
export function RakePanel() {
  const fly = useFly();
  const rakes = (fly.sheet?.probes ?? []).filter((probe) => probe.form === 'rake');
  return (
    <ChipPanel
      title="Rake reading"
      sub={rakes.length === 0 ? 'No rake on the flight sheet.' : 'Touch the rake; then its tubes.'}
      chips={rakes.map((rake) => ({
        act: `rake-${rake.id}`,
        label: `${rake.id} ${rake.panel}`,
        onTouch: (touch) => void readRake(fly, rake.id, rake.wing, touch),
      }))}
      fixed={[
        { act: 'panel-done', label: 'Done', onTouch: () => fly.move({ do: 'panel', panel: null }) },
      ]}
      page={0}
      onMore={() => undefined}
    />
  );
}

async function readRake(fly: Fly, rake: string, wing: 'L' | 'R', touch: Touch): Promise<void> {
  const entry = await fly.append({ kind: 'rakeRead', body: { wing, rake }, stamp: touch.stamp });
  if (entry !== null) {
    fly.move({ do: 'panel', panel: { kind: 'detail', target: entry.id, field: 0, page: 0 } });
    fly.move({ do: 'open', pad: { kind: 'tubes', target: entry.id } });
  }
}
