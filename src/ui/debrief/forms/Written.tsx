import type { KnownKind } from '../../../record/kinds.ts';
import { entryWords } from '../../../record/lang.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { hms } from '../../kit/time.ts';
import type { Desk } from '../context.ts';
import styles from './Forms.module.css';

const KINDS: Readonly<Record<string, readonly KnownKind[]>> = {
  handover: ['sampleHandedOver'],
  inspection: ['panelsInspected'],
  squawk: ['squawkRaised'],
  maintenance: ['maintenanceDone'],
  lab: ['labResultReceived'],
  note: ['noted'],
};

/** What stands of this kind already, so that nothing is written twice. */
export function Written({ desk, form }: { readonly desk: Desk; readonly form: string }) {
  const kinds = KINDS[form];
  const standing = desk.view.standing.filter(
    ({ entry, standing: state, late }) =>
      state === 'stands' &&
      (kinds === undefined ? late : kinds.some((kind) => kind === entry.kind)),
  );
  const signedAt = desk.view.state.signed[0]?.at ?? null;
  return (
    <section aria-label="Written so far" className={styles.written}>
      <h2>
        Written so far <span>{standing.length}</span>
      </h2>
      <ol>
        {standing.slice(-30).map(({ entry, effective, at }) => (
          <li key={entry.id}>
            <span>{hms(desk.base.shown(at, entry.rec))}</span>
            <span>
              {entryWords(effective, desk.view.state.sheet)}
              {signedAt !== null && entry.wall > signedAt ? <small> Addendum</small> : null}
            </span>
            <GroundButton act="open-written" onPress={() => desk.select(entry.id)}>
              Select
            </GroundButton>
          </li>
        ))}
      </ol>
    </section>
  );
}
