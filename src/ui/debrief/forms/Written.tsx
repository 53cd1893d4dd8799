import type { EntryId } from '../../../record/brand.ts';
import type { KnownKind } from '../../../record/kinds.ts';
import { entryWords } from '../../../record/lang.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import styles from './Forms.module.css';
import { clockWords } from '../timeWords.ts';

const KINDS: Readonly<Record<string, readonly KnownKind[]>> = {
  handover: ['sampleHandedOver'],
  inspection: ['panelsInspected'],
  squawk: ['squawkRaised'],
  maintenance: ['maintenanceDone'],
  lab: ['labResultReceived'],
  calibration: ['calibrationChecked', 'instrumentCalibrated'],
  uplift: ['fuelUplifted'],
  note: ['noted'],
};

/** What stands of this kind already, so that nothing is written twice. */
export function Written({
  desk,
  form,
  onOpen,
}: {
  readonly desk: Desk;
  readonly form: string;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const kinds = KINDS[form];
  const standing = desk.view.standing.filter(
    ({ entry, standing: state, late }) =>
      state === 'stands' &&
      (kinds === undefined ? late : kinds.some((kind) => kind === entry.kind)),
  );
  const [signed] = desk.view.state.signed;
  const signedOrd = signed === undefined ? undefined : desk.view.byId(signed.by)?.entry.ord;
  return (
    <section aria-label="Written so far" className={styles.written}>
      <h2>
        Written so far <span>{standing.length}</span>
      </h2>
      <ol>
        {standing.slice(-30).map(({ entry, effective, at }) => (
          <li key={entry.id}>
            <span>{clockWords(desk.base.shown(at, entry.rec))}</span>
            <span>
              {entryWords(effective, desk.view.state.sheet)}
              {signedOrd !== undefined && entry.ord > signedOrd ? <small> Addendum</small> : null}
            </span>
            <GroundButton act="open-written" onPress={() => onOpen(entry.id)}>
              Open
            </GroundButton>
          </li>
        ))}
      </ol>
    </section>
  );
}
