import { freeId } from '../../../record/blankSheet.ts';
import { OWN_TILE_FORMS, type OwnTileForm } from '../../../record/sheet.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { SheetChoice, SheetText } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { NOTHING } from '../sheet/useNumberText.ts';
import styles from '../Brief.module.css';

const FORM_WORDS: Readonly<Record<OwnTileForm, string>> = {
  instant: 'A moment',
  interval: 'A span',
  state: 'On or off',
  reading: 'A number read',
  sample: 'A sample',
};

/** The crew's own events beside the built-in ones. */
export function OwnTiles() {
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
              choices={OWN_TILE_FORMS.map((value) => ({ value, label: FORM_WORDS[value] }))}
              hint="The number or the id of a sample goes into its note."
            />
            <GroundButton
              act={`ownTiles.remove=${index}`}
              onPress={() => draft.put(`ownTiles.${index}`, undefined, NOTHING)}
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
