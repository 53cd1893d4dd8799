import type { Wing } from '../../record/sheet.ts';
import { otherWing } from './act.ts';
import { ControlGrid } from './ControlGrid.tsx';
import { useFly } from './flyContext.ts';
import { callOf } from './probeDraft.ts';
import { probeColumns } from './probeColumns.ts';
import type { ProbeNaming } from './useProbePad.ts';
import { CALLED_STATES, STATE_WORDS } from './wingState.ts';

/** Beside the probes: which state is being named, all at once, the other wing, and Enter. */
export function ProbeControls(props: {
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
        { act: 'all-laminar', label: 'All LAM', onTouch: () => naming.setAll(wing, 'laminar') },
        { act: 'all-turbulent', label: 'All TRB', onTouch: () => naming.setAll(wing, 'turbulent') },
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
