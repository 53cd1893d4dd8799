import { GroundButton } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { SheetChoice, SheetNumber, SheetText } from './SheetFields.tsx';
import { RevisionBlock } from './RevisionBlock.tsx';
import { useDraft } from './sheetDraft.ts';
import styles from '../Brief.module.css';

/** What the flight is called, the units it works in, its legs and the words that stop a test. */
export function FlightPage() {
  const draft = useDraft();
  const { legs } = draft.sheet;
  return (
    <>
      <div className={styles.fields}>
        <SheetText path="title" label="Title of the flight" />
        <SheetText path="revision" label="Revision of this flight sheet" />
        <SheetText path="field" label="Field" optional />
        <SheetNumber
          path="localOffsetH"
          label="Local time, hours from UTC"
          unit="h"
          optional
          hint="For display only; the record is UTC."
        />
      </div>
      <div className={styles.fields}>
        <SheetChoice
          path="massUnit"
          label="Weights and fuel in"
          choices={[
            { value: 'lb', label: 'lb' },
            { value: 'kg', label: 'kg' },
          ]}
        />
        <SheetChoice
          path="heightUnit"
          label="Heights in"
          choices={[
            { value: 'ft', label: 'ft' },
            { value: 'm', label: 'm' },
          ]}
          hint="Each instrument keeps its own unit."
        />
      </div>
      <ChipField
        act="flight.position"
        label="Position by a tablet’s own receiver"
        value={draft.sheet.positionAllowed === true ? 'allowed' : 'no'}
        choices={[
          { value: 'no', label: 'Not kept' },
          { value: 'allowed', label: 'May be kept' },
        ]}
        onChange={(value) => {
          const { positionAllowed: _, ...rest } = draft.sheet;
          draft.replace(value === 'allowed' ? { ...rest, positionAllowed: true } : rest);
        }}
        hint="Once a minute at most, beside the entries, and only while it is switched on in flight (Desk)."
      />
      <SheetText
        path="stopWords"
        label="Stop words, as briefed"
        optional
        long
        hint="Which words stop what: the point, or all testing."
      />
      <RevisionBlock />
      <section className={styles.block}>
        <h3>Legs</h3>
        <ol className={styles.rows}>
          {legs.map((_, index) => (
            <li key={index} className={styles.rowKeys}>
              <SheetText path={`legs.${index}`} label={`Leg ${index + 1}`} />
              <GroundButton
                act={`legs.remove=${index}`}
                onPress={() => draft.put(`legs.${index}`, undefined, { text: '', words: '' })}
              >
                Remove
              </GroundButton>
            </li>
          ))}
        </ol>
        <GroundButton
          act="legs.add"
          onPress={() => draft.replace({ ...draft.sheet, legs: [...legs, ''] })}
        >
          Add a leg
        </GroundButton>
      </section>
    </>
  );
}
