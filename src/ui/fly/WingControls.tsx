import type { Wing } from '../../record/sheet.ts';
import { otherWing } from './act.ts';
import { callState } from './callState.ts';
import { ControlGrid } from './ControlGrid.tsx';
import { useFly } from './flyContext.ts';
import { CALLED_STATES, STATE_WORDS } from './wingState.ts';

/** Beside the wing pad: the state keys, the other wing, the probes by name. */
export function WingControls({ wing }: { readonly wing: Wing }) {
  const fly = useFly();
  const { wingPanel } = fly.ui;
  return (
    <ControlGrid
      title={wingPanel === null ? 'Touch a panel' : wingPanel.panel}
      sub={wingPanel === null ? 'the touch is the time' : 'then its state'}
      keys={[
        ...CALLED_STATES.map((state) => ({
          act: `state-${state}`,
          label: STATE_WORDS[state],
          form: 'event' as const,
          disabled: wingPanel === null,
          onTouch: (touch: { readonly stamp: Parameters<typeof callState>[2] }) =>
            void callState(fly, state, touch.stamp),
        })),
        {
          act: 'wing-probes',
          label: 'Probes',
          onTouch: ({ stamp }) =>
            fly.move({ do: 'open', pad: { kind: 'probes', target: null, stamp, wing } }),
        },
        {
          act: 'wing-other',
          label: wing === 'L' ? 'Right' : 'Left',
          onTouch: () => fly.move({ do: 'open', pad: { kind: 'wing', wing: otherWing(wing) } }),
        },
        { act: 'pad-close', label: 'Close', onTouch: () => fly.move({ do: 'closePad' }) },
      ]}
    />
  );
}
