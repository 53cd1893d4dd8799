import { lengthWords } from '../timeWords.ts';
import { custodyOf } from './custody.ts';
import type { Printed } from './printed.ts';
import styles from './Print.module.css';
import { SheetHead } from './SheetHead.tsx';

/** Every sample from the sampler to the laboratory, with room for the next hand. */
export function CustodyList({ printed }: { readonly printed: Printed }) {
  const rows = custodyOf(printed);
  return (
    <>
      <SheetHead printed={printed} what="Sample custody" />
      <table className={styles.list}>
        <thead>
          <tr>
            <th>Sample</th>
            <th>What</th>
            <th>Exposed, Z</th>
            <th>Tied to</th>
            <th>Handed to, Z, seals</th>
            <th>Laboratory</th>
            <th>Received by, time</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>
              <td>
                <b>{row.sample}</b>
              </td>
              <td>{row.what}</td>
              <td>
                {row.opened} to {row.closed ?? 'never closed'}
                {row.exposedMs === null ? '' : `, ${lengthWords(row.exposedMs)}`}
              </td>
              <td>{row.tiedTo}</td>
              <td>
                {row.handedTo}
                {row.handedAt === '' ? '' : `, ${row.handedAt}, ${row.seals}`}
              </td>
              <td>{row.laboratory}</td>
              <td>
                <p className={styles.blank} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length === 0 ? <p>No sample was taken.</p> : null}
      {printed.results.samples.unmatched.map(({ sample, by }) => (
        <p key={by}>A result came for {sample}, an id that nobody exposed; it is held.</p>
      ))}
    </>
  );
}
