import { headsOf } from '../../../file/timelineFile.ts';
import { entryId } from '../../../record/brand.ts';
import { headCode } from '../../../record/headCode.ts';
import { signedVersions, type SignedVersion } from '../../../record/signatures.ts';
import { isoDate } from '../../kit/time.ts';
import type { Desk } from '../context.ts';
import { clockWords } from '../timeWords.ts';
import styles from './Sign.module.css';

/** Each signature with the code of what it froze, what came after, and the code of the record as it stands. */
export function Signatures({ desk }: { readonly desk: Desk }) {
  const versions = signedVersions(desk.view);
  const heads = headsOf(desk.journal.entries());
  return (
    <section aria-label="Signatures" className={styles.signed}>
      <h2>{versions.length === 0 ? 'Draft' : 'Signed'}</h2>
      {versions.map((version) => (
        <Version key={version.by} desk={desk} version={version} />
      ))}
      <dl className={styles.now}>
        <dt>Code of the record now</dt>
        <dd>
          <output data-act="code-now">{headCode(heads.map(({ hash }) => entryId(hash)))}</output>
        </dd>
        {heads.map(({ hash, rec, seq }) => (
          <dd key={hash} className={styles.head}>
            ends at entry {seq} of recorder {rec.slice(0, 8)}, <code>{hash.slice(0, 8)}</code>
          </dd>
        ))}
      </dl>
    </section>
  );
}

function Version({ desk, version }: { readonly desk: Desk; readonly version: SignedVersion }) {
  const by = desk.view.byId(version.by);
  const at = by === undefined ? version.at : desk.base.shown(version.at, by.entry.rec);
  const { addenda, missing } = version;
  return (
    <div className={styles.version}>
      <p>
        <output data-act="code-signed" className={styles.code}>
          {version.code}
        </output>
        {isoDate(at)} {clockWords(at)}Z by {version.signedBy.join(', ')}; {version.entryCount}{' '}
        entries.
      </p>
      {addenda.length === 0 ? null : (
        <p>
          <b>{addenda.length === 1 ? '1 addendum' : `${addenda.length} addenda`}</b> after it, not
          in the version signed.
        </p>
      )}
      {missing.map(({ rec, seq }) => (
        <p key={rec}>
          <b>
            Entry {seq} of recorder {rec.slice(0, 8)} was signed and is not here.
          </b>{' '}
          Open the copy that holds it.
        </p>
      ))}
    </div>
  );
}
