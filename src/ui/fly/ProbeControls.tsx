import type { Wing } from '../../record/sheet.ts';
import { TOUCH } from '../kit/touchRules.ts';
import { otherWing } from './act.ts';
import { ControlGrid } from './ControlGrid.tsx';
import { useFly } from './flyContext.ts';
import { callOf } from './probeDraft.ts';
import { probeColumns } from './probeColumns.ts';
import type { Pad } from './flyState.ts';
import type { ProbeNaming } from './useProbePad.ts';
import { CALLED_STATES, STATE_WORDS } from './wingState.ts';

/** Beside the probes: which state is being named, all at once, the other wing, and Enter. */
export function ProbeControls(props: {
  readonly pad: Extract<Pad, { kind: 'probes' }>;
  readonly wing: Wing;
  readonly page: number;
  readonly naming: ProbeNaming;
  readonly onWing: (wing: Wing) => void;
  readonly onPage: (page: number) => void;
}) {
  const fly = useFly();
  const { wing, naming } = props;
  const { pages } = probeColumns(fly, wing);
  const call = callOf(naming.states(wing));
  return (
    <ControlGrid
      title={wing === 'L' ? 'Left wing' : 'Right wing'}
      sub={`${call.laminarCount ?? 0} of ${call.of} LAM`}
      keys={[
        ...CALLED_STATES.map((state) => ({
          act: `brush-${state}`,
          label: STATE_WORDS[state],
          chosen: naming.brush === state,
          onTouch: () => naming.setBrush(state),
        })),
        {
          act: 'all-brush',
          label: `Hold all ${STATE_WORDS[naming.brush]}`,
          onTouch: ({ lastedMs }) =>
            lastedMs >= TOUCH.holdMs
              ? naming.setAll(wing, naming.brush)
              : fly.move({
                  do: 'notice',
                  words: 'Hold it for the whole wing',
                  at: fly.clock.now(),
                }),
        },
        {
          act: 'probes-count',
          label: 'Count',
          onTouch: ({ stamp }) =>
            fly.move({
              do: 'open',
              pad: {
                kind: 'count',
                target: props.pad.target,
                stamp: props.pad.stamp ?? stamp,
                wing,
              },
            }),
        },
        {
          act: 'wing-other',
          label: wing === 'L' ? 'Right' : 'Left',
          onTouch: () => props.onWing(otherWing(wing)),
        },
        ...(pages.length > 1
          ? [
              {
                act: 'probes-page',
                label: `${(props.page % pages.length) + 1} of ${pages.length}`,
                onTouch: () => props.onPage((props.page + 1) % pages.length),
              },
            ]
          : []),
        { act: 'pad-close', label: 'Close', onTouch: () => fly.move({ do: 'closePad' }) },
        {
          act: 'probes-enter',
          label: 'Enter',
          strong: true,
          disabled: !naming.changed('L') && !naming.changed('R'),
          onTouch: ({ stamp }) => void naming.enter(stamp),
        },
      ]}
    />
  );
}
