import * as v from 'valibot';
import { freeId } from '../../../record/blankSheet.ts';
import { FLIGHT_PHASES, type FlightPhase } from '../../../record/sheet.ts';
import { TILES } from '../../../record/tiles.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { SheetChoice, SheetText } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { useKept } from '../useKept.ts';
import styles from '../Brief.module.css';

const PLACES = Array.from({ length: 12 }, (_, place) => place);
const PHASE_WORDS: Readonly<Record<FlightPhase, string>> = {
  ground: 'Ground',
  climb: 'Climb',
  cruise: 'Cruise',
  descent: 'Descent',
};
const chosenSchema = v.object({ phase: v.picklist(FLIGHT_PHASES), place: v.number() });
const FIRST: v.InferOutput<typeof chosenSchema> = { phase: 'cruise', place: 0 };

/** The twelve tiles of each page of Fly, in their places, and the crew's own events. */
export function TilesPage() {
  const draft = useDraft();
  const { sheet } = draft;
  const [{ phase, place }, choose] = useKept('tiles', chosenSchema, FIRST);
  const page = sheet.tilePages[phase];
  const named: readonly { id: string; label: string; words: string }[] = [
    ...TILES,
    ...sheet.ownTiles.map((tile) => ({ id: tile.id, label: tile.label, words: 'own event' })),
  ];
  const labelOf = (id: string | null | undefined) =>
    id === null || id === undefined ? 'empty' : (named.find((tile) => tile.id === id)?.label ?? id);
  const put = (id: string | null) =>
    draft.replace({
      ...sheet,
      tilePages: {
        ...sheet.tilePages,
        [phase]: PLACES.map((one) => (one === place ? id : (page[one] ?? null))),
      },
    });
  return (
    <>
      <ChipField
        act="tiles.page"
        label="Page of Fly"
        value={phase}
        choices={FLIGHT_PHASES.map((value) => ({ value, label: PHASE_WORDS[value] }))}
        onChange={(value) => choose((now) => ({ ...now, phase: value }))}
      />
      <div
        className={styles.tiles}
        role="group"
        aria-label={`Tiles of the ${PHASE_WORDS[phase]} page`}
      >
        {PLACES.map((one) => (
          <GroundButton
            key={one}
            act={`tiles.place=${one}`}
            pressed={one === place}
            onPress={() => choose((now) => ({ ...now, place: one }))}
          >
            {labelOf(page[one])}
          </GroundButton>
        ))}
      </div>
      <p
        className={styles.quiet}
      >{`Place ${place + 1}: ${labelOf(page[place])}. Choose what stands there.`}</p>
      <div className={styles.choices}>
        <GroundButton act="tiles.put=none" onPress={() => put(null)}>
          <b>Empty</b>
        </GroundButton>
        {named.map((tile) => (
          <GroundButton key={tile.id} act={`tiles.put=${tile.id}`} onPress={() => put(tile.id)}>
            <b>{tile.label}</b>
            <br />
            <span className={styles.small}>{tile.words}</span>
          </GroundButton>
        ))}
      </div>
      <OwnTiles />
    </>
  );
}

function OwnTiles() {
  const draft = useDraft();
  const { sheet } = draft;
  return (
    <section className={styles.block}>
      <h3>Own events</h3>
      <ul className={styles.rows}>
        {sheet.ownTiles.map((tile, index) => (
          <li key={tile.id} className={styles.rowFields}>
            <SheetText path={`ownTiles.${index}.label`} label="Word on the tile, up to 7 letters" />
            <SheetChoice
              path={`ownTiles.${index}.form`}
              label="Is"
              choices={[
                { value: 'instant', label: 'A moment' },
                { value: 'interval', label: 'A span' },
                { value: 'state', label: 'On or off' },
              ]}
            />
            <GroundButton
              act={`ownTiles.remove=${index}`}
              onPress={() => draft.put(`ownTiles.${index}`, undefined, { text: '', words: '' })}
            >
              Remove
            </GroundButton>
          </li>
        ))}
      </ul>
      <GroundButton
        act="ownTiles.add"
        onPress={() =>
          draft.replace({
            ...sheet,
            ownTiles: [
              ...sheet.ownTiles,
              { id: freeId('own', sheet.ownTiles), label: '', form: 'instant' },
            ],
          })
        }
      >
        Add an event of our own
      </GroundButton>
    </section>
  );
}
