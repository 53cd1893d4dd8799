import { freeId } from '../../../record/blankSheet.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { SheetChoice, SheetNumber, SheetText } from './SheetFields.tsx';
import { useDraft } from './sheetDraft.ts';
import styles from '../Brief.module.css';

/** Every clock that the time hack ties together. The scale is asked of each, never assumed. */
export function ClocksPage() {
  const draft = useDraft();
  const { sheet } = draft;
  return (
    <>
      <p className={styles.quiet}>
        A clock set by satellite may show satellite time, whole seconds ahead of UTC. Ask whoever
        keeps it. The tablet’s own clock is named “tablet”.
      </p>
      <ul className={styles.rows}>
        {sheet.clocks.map((clock, index) => (
          <li key={index} className={styles.rowFields}>
            <SheetText path={`clocks.${index}.id`} label="Clock" />
            <SheetText path={`clocks.${index}.owner`} label="Whose" />
            <SheetNumber path={`clocks.${index}.resolutionS`} label="Smallest step" unit="s" />
            <GroundButton
              act={`clocks.remove=${index}`}
              disabled={clock.id === 'tablet'}
              onPress={() => draft.put(`clocks.${index}`, undefined, { text: '', words: '' })}
            >
              Remove
            </GroundButton>
            <SheetChoice
              path={`clocks.${index}.scale`}
              label="Shows"
              choices={[
                { value: 'UTC', label: 'UTC' },
                { value: 'GPS', label: 'Satellite' },
                { value: 'unknown', label: 'Not asked' },
              ]}
            />
          </li>
        ))}
      </ul>
      <GroundButton
        act="clocks.add"
        onPress={() =>
          draft.replace({
            ...sheet,
            clocks: [
              ...sheet.clocks,
              { id: freeId('clock ', sheet.clocks), owner: '', scale: 'unknown', resolutionS: 1 },
            ],
          })
        }
      >
        Add a clock
      </GroundButton>
    </>
  );
}
