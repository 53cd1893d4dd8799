import * as v from 'valibot';
import { ROLES } from '../../../record/roles.ts';
import { FLIGHT_PHASES } from '../../../record/sheet.ts';
import { TILES } from '../../../record/tiles.ts';
import { GroundButton, TextField } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { useKept } from '../useKept.ts';
import { OwnTiles } from './OwnTiles.tsx';
import { PAGES, PLACES, tileLabel, tilesOn, withTiles, withTileWord } from './tilePage.ts';
import styles from '../Brief.module.css';

const chosenSchema = v.object({
  phase: v.picklist([...FLIGHT_PHASES, ...ROLES]),
  place: v.number(),
});
const FIRST: v.InferOutput<typeof chosenSchema> = { phase: 'cruise', place: 0 };

/** The twelve tiles of each page of Fly in their places, in the letters that flight will show. */
export function TilesPage() {
  const draft = useDraft();
  const { sheet } = draft;
  const [{ phase, place }, choose] = useKept('tiles', chosenSchema, FIRST);
  const page = tilesOn(sheet, phase);
  const here = page[place] ?? null;
  const name = PAGES.find((one) => one.value === phase)?.label ?? phase;
  const put = (id: string | null) =>
    draft.replace(
      withTiles(
        sheet,
        phase,
        page.map((was, one) => (one === place ? id : was)),
      ),
    );
  const move = (to: number) => {
    const there = page[to] ?? null;
    draft.replace(
      withTiles(
        sheet,
        phase,
        page.map((was, one) => (one === place ? there : one === to ? here : was)),
      ),
    );
    choose((now) => ({ ...now, place: to }));
  };
  const builtIn = TILES.find((tile) => tile.id === here);
  return (
    <>
      <ChipField
        act="tiles.page"
        label="Page of Fly"
        value={phase}
        choices={PAGES}
        onChange={(value) => choose((now) => ({ ...now, phase: value }))}
        hint="Letters and height as in flight. A tile never moves within a flight."
      />
      <div className={styles.tiles} role="group" aria-label={`Tiles of the ${name} page`}>
        {PLACES.map((one) => (
          <GroundButton
            key={one}
            act={`tiles.place=${one}`}
            pressed={one === place}
            onPress={() => choose((now) => ({ ...now, place: one }))}
          >
            {tileLabel(sheet, page[one] ?? null)}
          </GroundButton>
        ))}
      </div>
      <div className={styles.keys}>
        <GroundButton act="tiles.back" disabled={place === 0} onPress={() => move(place - 1)}>
          Move back
        </GroundButton>
        <GroundButton
          act="tiles.on"
          disabled={place === PLACES.length - 1}
          onPress={() => move(place + 1)}
        >
          Move on
        </GroundButton>
        <p
          className={styles.quiet}
        >{`Place ${place + 1}: ${tileLabel(sheet, here)}. Choose what stands there.`}</p>
      </div>
      {builtIn === undefined ? null : (
        <div className={styles.fields}>
          <TextField
            act="tiles.word"
            label={`Word on it, usually ${builtIn.label}`}
            value={sheet.tileWords?.find((one) => one.tile === here)?.label ?? ''}
            onChange={(text) => draft.replace(withTileWord(sheet, builtIn.id, text))}
            hint={`${builtIn.words}. Up to 7 letters; the record keeps its kind.`}
          />
        </div>
      )}
      <div className={styles.choices}>
        <GroundButton act="tiles.put=none" onPress={() => put(null)}>
          <b>Empty</b>
        </GroundButton>
        {TILES.map((tile) => (
          <GroundButton key={tile.id} act={`tiles.put=${tile.id}`} onPress={() => put(tile.id)}>
            <b>{tileLabel(sheet, tile.id)}</b>
            <br />
            <span className={styles.small}>{tile.words}</span>
          </GroundButton>
        ))}
        {sheet.ownTiles.map((tile) => (
          <GroundButton key={tile.id} act={`tiles.put=${tile.id}`} onPress={() => put(tile.id)}>
            <b>{tile.label}</b>
            <br />
            <span className={styles.small}>own event</span>
          </GroundButton>
        ))}
      </div>
      <OwnTiles />
    </>
  );
}
