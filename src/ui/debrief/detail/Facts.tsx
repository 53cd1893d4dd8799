import { canonicalJson } from '../../../record/canonical.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import type { Desk } from '../context.ts';
import { bodyFields } from '../fields/bodyFields.ts';
import { fieldLabel, valueWords } from '../fields/labels.ts';
import styles from './EntryDetail.module.css';
import { clockWords } from '../timeWords.ts';

/** As read beside as it stands: a field that was amended shows both, and the old one stays readable. */
export function Facts({
  desk,
  standing,
}: {
  readonly desk: Desk;
  readonly standing: StandingEntry;
}) {
  const { sheet } = desk.view.state;
  const { entry, effective } = standing;
  const shown = (at: typeof entry.wall) => desk.base.shown(at, entry.rec);
  const before = new Map(bodyFields(entry).map(({ path, value }) => [path, value]));
  const now = new Map(bodyFields(effective).map(({ path, value }) => [path, value]));
  const paths = [...new Set([...before.keys(), ...now.keys()])];
  const isAmended = entry !== effective;
  return (
    <table className={styles.facts}>
      <caption>As read, and as it stands</caption>
      <thead>
        <tr>
          <th scope="col">Field</th>
          <th scope="col" colSpan={isAmended ? 1 : 2}>
            As read
          </th>
          {isAmended ? <th scope="col">Stands</th> : null}
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">Touched, Z</th>
          <td colSpan={2}>{clockWords(shown(entry.wall))}</td>
        </tr>
        {paths.map((path) => {
          const wasRead = valueWords(path, before.get(path), shown);
          const isSame = sameValue(before.get(path), now.get(path));
          const label = fieldLabel(path, sheet);
          return (
            <tr key={path}>
              <th scope="row">{label}</th>
              {isSame ? (
                <td colSpan={2}>{wasRead}</td>
              ) : (
                <>
                  <td>
                    <del>{wasRead}</del>
                  </td>
                  <td>
                    <b>{valueWords(path, now.get(path), shown)}</b>
                  </td>
                </>
              )}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function sameValue(a: unknown, b: unknown): boolean {
  return a === b || canonicalJson(a ?? null) === canonicalJson(b ?? null);
}
