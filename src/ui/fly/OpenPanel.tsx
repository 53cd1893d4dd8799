import { CardsPanel } from './CardsPanel.tsx';
import { ChosenPanel } from './ChosenPanel.tsx';
import { DeskPanel } from './DeskPanel.tsx';
import { DetailPanel } from './DetailPanel.tsx';
import type { Panel } from './flyState.ts';
import { RakePanel } from './RakePanel.tsx';

export function OpenPanel({ panel }: { readonly panel: Panel }) {
  switch (panel.kind) {
    case 'detail':
      return <DetailPanel panel={panel} />;
    case 'chosen':
      return <ChosenPanel target={panel.target} />;
    case 'cards':
      return <CardsPanel panel={panel} />;
    case 'rake':
      return <RakePanel />;
    case 'desk':
      return <DeskPanel panel={panel} />;
  }
}
