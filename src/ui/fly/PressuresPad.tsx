import { TouchKey } from '../kit/TouchSurface.tsx';
import { otherWing, probesOf } from './act.ts';
import { padGrid } from './cellGrid.ts';
import { CellPad } from './CellPad.tsx';
import { ControlGrid } from './ControlGrid.tsx';
import { useFly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import styles from './CoversPad.module.css';

type Pressures = Extract<Pad, { kind: 'pressures' }>;

/** Which probe's pressure is read next. */
export function PressuresPad({ pad }: { readonly pad: Pressures }) {
  const { sheet, layout, move, view } = useFly();
  const probes = probesOf(sheet, pad.wing);
  const grid = padGrid(layout.places.cells, 15);
  const pages = Math.max(1, Math.ceil(probes.length / (grid.columns * grid.rows)));
  const perPage = Math.ceil(probes.length / pages);
  const page = pad.page % pages;
  const entry = view.byId(pad.target)?.effective;
  const read =
    entry === undefined || entry.kind === 'unrecognised' ? [] : (entry.body.readings ?? []);
  return (
    <CellPad columns={grid.columns} rows={Math.max(1, Math.ceil(perPage / grid.columns))}>
      {probes.slice(page * perPage, (page + 1) * perPage).map((probe) => {
        const reading = read.find((each) => each.instrument === probe);
        return (
          <TouchKey
            key={probe}
            act={`pressure-${probe}`}
            className={styles.cover}
            onTouch={() => move({ do: 'open', pad: { ...pad, probe } })}
          >
            <b>{probe}</b>
            <span>
              {reading !== undefined && 'value' in reading ? reading.value.toFixed(1) : ''}
            </span>
          </TouchKey>
        );
      })}
    </CellPad>
  );
}

export function PressureControls({ pad }: { readonly pad: Pressures }) {
  const { move } = useFly();
  return (
    <ControlGrid
      title={`Probe pressures, ${pad.wing === 'L' ? 'left' : 'right'}`}
      sub="below free stream"
      keys={[
        {
          act: 'wing-other',
          label: pad.wing === 'L' ? 'Right' : 'Left',
          onTouch: () => move({ do: 'open', pad: { ...pad, wing: otherWing(pad.wing), page: 0 } }),
        },
        {
          act: 'probes-page',
          label: 'More',
          onTouch: () => move({ do: 'open', pad: { ...pad, page: pad.page + 1 } }),
        },
        { act: 'pad-close', label: 'Done', onTouch: () => move({ do: 'closePad' }) },
      ]}
    />
  );
}
