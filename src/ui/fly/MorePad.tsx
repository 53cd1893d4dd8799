import { TouchKey } from '../kit/TouchSurface.tsx';
import { ACTS } from './acts.ts';
import { padGrid } from './cellGrid.ts';
import { CellPad } from './CellPad.tsx';
import { useFly } from './flyContext.ts';
import { tileOf } from './tiles.ts';
import { touchTile, writeAct } from './touchTile.ts';
import styles from './MorePad.module.css';

/** Pads that a page of tiles may lack; they come first, then every event there is. */
const PADS = ['log', 'desk', 'cards', 'count', 'sketch', 'fuel', 'air', 'tank', 'wing', 'rake'];

/** Every event, each beginning and each end by its own name: for what no page holds, and for what was missed. */
export function MorePad({ page }: { readonly page: number }) {
  const fly = useFly();
  const { columns, rows } = padGrid(fly.layout.places.full, 20 * fly.layout.textSize);
  const tiles = PADS.flatMap((id) => tileOf(id, fly.sheet) ?? []);
  const own = (fly.sheet?.ownTiles ?? []).flatMap((each) => tileOf(each.id, fly.sheet) ?? []);
  const all = [
    ...tiles.map((tile) => ({
      id: `tile-${tile.id}`,
      label: tile.label,
      verb: 'Pad',
      tile,
      act: null,
    })),
    ...own.map((tile) => ({
      id: `tile-${tile.id}`,
      label: tile.label,
      verb: 'Own',
      tile,
      act: null,
    })),
    ...ACTS.map((act) => ({
      id: `act-${act.id}`,
      label: act.label,
      verb: act.verb,
      tile: null,
      act,
    })),
  ];
  const perPage = columns * rows - 2;
  const pages = Math.ceil(all.length / perPage);
  const from = (page % pages) * perPage;
  return (
    <CellPad columns={columns} rows={rows}>
      {all.slice(from, from + perPage).map((each) => (
        <TouchKey
          key={each.id}
          act={each.id}
          form={each.act === null ? 'key' : 'event'}
          className={styles.cell}
          onTouch={(touch) => {
            fly.move({ do: 'closePad' });
            if (each.act !== null) {
              void writeAct(fly, each.act, touch);
            } else if (each.tile !== null) {
              void touchTile(fly, each.tile, touch);
            }
          }}
        >
          <b>{each.label}</b>
          <span>{each.verb}</span>
        </TouchKey>
      ))}
      <TouchKey
        act="more-next"
        className={`${styles.cell} ${styles.quiet}`}
        onTouch={() => fly.move({ do: 'open', pad: { kind: 'more', page: (page + 1) % pages } })}
      >
        <b>
          {(page % pages) + 1} of {pages}
        </b>
        <span>Next</span>
      </TouchKey>
      <TouchKey
        act="pad-close"
        className={`${styles.cell} ${styles.quiet}`}
        onTouch={() => fly.move({ do: 'closePad' })}
      >
        <b>Close</b>
        <span>To tiles</span>
      </TouchKey>
    </CellPad>
  );
}
