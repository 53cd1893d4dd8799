import { TouchKey } from '../kit/TouchSurface.tsx';
import { otherWing, probesOf } from './act.ts';
import { padGrid } from './cellGrid.ts';
import { CellPad } from './CellPad.tsx';
import { ControlGrid, type Control } from './ControlGrid.tsx';
import { useFly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import { Place } from './Place.tsx';
import { enterCount } from './useCount.ts';
import styles from './CountPad.module.css';

type CountState = Extract<Pad, { kind: 'count' }>;

/** How many probes of the wing are laminar, one key a number: the tile and the number are two touches in all. */
export function CountPad({ pad }: { readonly pad: CountState }) {
  const fly = useFly();
  const { places } = fly.layout;
  const of = probesOf(fly.sheet, pad.wing).length;
  const numbers = Array.from({ length: of + 1 }, (_, count) => count);
  const beside = padGrid(places.cells, 15);
  const keys = controls(fly, pad);
  const title = `${pad.wing === 'L' ? 'Left' : 'Right'} wing`;
  if (numbers.length <= beside.columns * beside.rows) {
    return (
      <>
        <Place at={places.cells} label={`${title}, laminar probes`}>
          <Numbers pad={pad} numbers={numbers} {...fitted(numbers.length, beside)} keys={[]} />
        </Place>
        <Place at={places.controls} label={`${title}, choices`}>
          <ControlGrid title={title} sub={`laminar of ${of}`} keys={keys} />
        </Place>
      </>
    );
  }
  const whole = padGrid(places.full, 15);
  const perPage = whole.columns * whole.rows - keys.length - PLATE_CELLS;
  const pages = Math.max(1, Math.ceil(numbers.length / perPage));
  const page = (pad.page ?? 0) % pages;
  return (
    <Place at={places.full} label={`${title}, laminar probes of ${of}`}>
      <Numbers
        pad={pad}
        numbers={numbers.slice(page * perPage, (page + 1) * perPage)}
        {...whole}
        plate={{ title, sub: `LAM of ${of}` }}
        keys={
          pages > 1
            ? [
                ...keys.slice(1),
                {
                  act: 'count-page',
                  label: `${page + 1} of ${pages}`,
                  onTouch: () => fly.move({ do: 'open', pad: { ...pad, page: page + 1 } }),
                },
              ]
            : keys
        }
      />
    </Place>
  );
}

/** Which wing it is has to stand among the numbers where nothing stands beside them. */
const PLATE_CELLS = 2;

/** Few numbers stand in as square a grid as the room allows, so that none is far from the others. */
function fitted(
  count: number,
  most: { readonly columns: number; readonly rows: number },
): { readonly columns: number; readonly rows: number } {
  const columns = Math.min(most.columns, Math.ceil(Math.sqrt(count)));
  const rows = Math.ceil(count / columns);
  return rows <= most.rows ? { columns, rows } : { ...most, rows: Math.ceil(count / most.columns) };
}

function controls(fly: ReturnType<typeof useFly>, pad: CountState): readonly Control[] {
  return [
    {
      act: 'count-names',
      label: 'Names',
      onTouch: () =>
        fly.move({
          do: 'open',
          pad: { kind: 'probes', target: pad.target, stamp: pad.stamp, wing: pad.wing },
        }),
    },
    {
      act: 'wing-other',
      label: pad.wing === 'L' ? 'Right' : 'Left',
      onTouch: () => fly.move({ do: 'open', pad: { ...pad, page: 0, wing: otherWing(pad.wing) } }),
    },
    { act: 'pad-close', label: 'Close', onTouch: () => fly.move({ do: 'closePad' }) },
  ];
}

function Numbers(props: {
  readonly pad: CountState;
  readonly numbers: readonly number[];
  readonly columns: number;
  readonly rows: number;
  readonly plate?: { readonly title: string; readonly sub: string };
  readonly keys: readonly Control[];
}) {
  const fly = useFly();
  return (
    <CellPad columns={props.columns} rows={props.rows}>
      {props.numbers.map((count) => (
        <TouchKey
          key={count}
          act={`count-${count}`}
          form="event"
          className={styles.number}
          label={`${count} laminar`}
          onTouch={({ stamp }) => void enterCount(fly, props.pad, count, stamp)}
        >
          <b>{count}</b>
        </TouchKey>
      ))}
      {props.plate === undefined ? null : (
        <p className={styles.plate}>
          <b>{props.plate.title}</b>
          <span>{props.plate.sub}</span>
        </p>
      )}
      {props.keys.map((key) => (
        <TouchKey
          key={key.act}
          act={key.act}
          className={`${styles.number} ${styles.quiet}`}
          onTouch={key.onTouch}
        >
          {key.label}
        </TouchKey>
      ))}
    </CellPad>
  );
}
