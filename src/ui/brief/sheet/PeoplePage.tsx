import { freeId } from '../../../record/blankSheet.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { SheetText } from './SheetFields.tsx';
import { useDraft } from './sheetDraft.ts';
import styles from '../Brief.module.css';

/** Who is on board and on the ground, by initials; an entry names its author by them. */
export function PeoplePage() {
  const draft = useDraft();
  const { sheet } = draft;
  return (
    <>
      <ul className={styles.rows}>
        {sheet.people.map((_, index) => (
          <li key={index} className={styles.rowFields}>
            <SheetText path={`people.${index}.id`} label="Initials" />
            <SheetText path={`people.${index}.role`} label="Role" />
            <SheetText path={`people.${index}.name`} label="Name" optional />
            <GroundButton
              act={`people.remove=${index}`}
              onPress={() => draft.put(`people.${index}`, undefined, { text: '', words: '' })}
            >
              Remove
            </GroundButton>
          </li>
        ))}
      </ul>
      <GroundButton
        act="people.add"
        onPress={() =>
          draft.replace({
            ...sheet,
            people: [...sheet.people, { id: freeId('E', sheet.people), role: '' }],
          })
        }
      >
        Add a person
      </GroundButton>
    </>
  );
}
