import { useDeferredValue, useMemo } from 'react';
import {
  changesSinceBasis,
  isSigned,
  nextRevision,
  signedBy,
} from '../../../record/sheetRevision.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { useKeptTexts } from '../useKept.ts';
import { ChangeList } from './ChangeList.tsx';
import { useDraft } from './sheetDraft.ts';
import { NOTHING } from './useNumberText.ts';
import styles from '../Brief.module.css';

/** Which revision this is, who signed the ones before, and what changed since, in words. */
export function RevisionBlock() {
  const draft = useDraft();
  const { sheet } = draft;
  const texts = useKeptTexts(`sign-${sheet.id}`);
  const settled = useDeferredValue(sheet);
  const held = useMemo(() => changesSinceBasis(settled), [settled]);
  const signed = useMemo(() => isSigned(settled), [settled]);
  const { revision, revisions = [], people } = sheet;
  const isNamed = revisions.some((one) => one.revision === revision);
  const next = nextRevision(revision);
  const person = people.find((one) => one.id === texts.of('person'))?.id ?? null;
  return (
    <section className={styles.block} aria-label="Revisions">
      <h3>{signed ? `Revision ${revision} is signed` : `Revision ${revision}`}</h3>
      {held === null || signed ? null : (
        <div>
          <p>
            {held.changes.length === 0
              ? `As revision ${held.since}: nothing changed.`
              : `Changed since revision ${held.since}:`}
          </p>
          <ChangeList changes={held.changes} />
        </div>
      )}
      {isNamed && !signed ? (
        <GroundButton
          act="revision.next"
          strong
          onPress={() => draft.put('revision', next, NOTHING)}
        >
          {`Call it revision ${next}`}
        </GroundButton>
      ) : null}
      {signed || isNamed ? null : (
        <>
          <ChipField
            act="revision.person"
            label="Signed by"
            value={person}
            choices={people.map(({ id, role }) => ({ value: id, label: `${id}, ${role}` }))}
            onChange={(id) => texts.put('person', id)}
          />
          <GroundButton
            act="revision.sign"
            disabled={person === null || revision.trim() === ''}
            onPress={() => {
              if (person !== null) {
                draft.replace(signedBy(sheet, { person, today: draft.today }));
              }
            }}
          >
            {`Sign revision ${revision}`}
          </GroundButton>
        </>
      )}
      {revisions.length === 0 ? null : (
        <ol className={styles.revisions} aria-label="Signed revisions">
          {revisions.toReversed().map((one) => (
            <li key={one.revision}>
              <b>{`${one.revision}, ${one.signedBy}, ${one.signedOn}`}</b>
              <ChangeList changes={one.changes} />
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
