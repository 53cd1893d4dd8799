import { useSecond } from '../kit/time.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { faceOf, type Face } from './faces.ts';
import { useFly } from './flyContext.ts';
import { MiniWing } from './MiniWing.tsx';
import { pageTiles, type Tile } from './tiles.ts';
import { touchTile } from './touchTile.ts';
import styles from './Tiles.module.css';

/** Twelve events of the phase in places that never move. */
export function Tiles() {
  const { sheet, state, layout, role } = useFly();
  const tiles = pageTiles(sheet, state.phase, layout.places.wing !== null, role);
  return (
    <div className={styles.tiles}>
      {tiles.map((tile, place) =>
        tile === null ? (
          <span key={`empty-${place}`} />
        ) : (
          <TileKey key={`${place}-${tile.id}`} tile={tile} />
        ),
      )}
    </div>
  );
}

function TileKey({ tile }: { readonly tile: Tile }) {
  const fly = useFly();
  const now = useSecond(fly.clock);
  const face = faceOf(tile, fly.sceneAt(now), now);
  return (
    <TouchKey
      act={`tile-${tile.id}`}
      form={tile.does.kind === 'pad' ? 'key' : 'event'}
      className={`${styles.tile} ${styles[LOOK[face.look]]}`}
      onTouch={(touch) => void touchTile(fly, tile, touch)}
    >
      <b className={styles.name}>{tile.label}</b>
      <TileFoot tile={tile} face={face} />
    </TouchKey>
  );
}

const LOOK = { ready: 'ready', open: 'open', on: 'on', pad: 'pad' } as const satisfies Record<
  Face['look'],
  string
>;

function TileFoot({ tile, face }: { readonly tile: Tile; readonly face: Face }) {
  if (tile.id === 'wing') {
    return <MiniWing />;
  }
  return (
    <>
      <span className={styles.foot}>{face.foot}</span>
      {face.time === null ? null : <b className={styles.time}>{face.time}</b>}
    </>
  );
}
