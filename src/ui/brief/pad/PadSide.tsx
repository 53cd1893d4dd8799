import type { ReactNode } from 'react';
import type { FlightSheet } from '../../../record/sheet.ts';
import styles from './Pad.module.css';

/** One side of paper: which sheet it belongs to stands on every one, so that loose leaves find home. */
export function PadSide(props: {
  readonly sheet: FlightSheet;
  readonly title: string;
  readonly children: ReactNode;
}) {
  const { sheet } = props;
  const { mark, callsign } = sheet.aircraft;
  return (
    <section className={styles.side} aria-label={props.title}>
      <header className={styles.head}>
        <h2>{props.title}</h2>
        <p>
          <b>{sheet.title.trim() === '' ? 'Flight: ' : sheet.title}</b>{' '}
          {[mark, callsign].filter((one) => one !== undefined && one !== '').join(' ')}
          <br />
          {`Sheet ${sheet.id}, revision ${sheet.revision}`}
        </p>
        <p className={styles.blank}>Date UTC</p>
        <p className={styles.blank}>Scribe</p>
        <p className={styles.blank}>Leaf</p>
      </header>
      {props.children}
    </section>
  );
}

/** A table to be written into: its head, what is printed in its rows, and so many empty rows after them. */
export function Ruled(props: {
  readonly name: string;
  readonly columns: readonly { readonly head: string; readonly share: number }[];
  readonly rows?: readonly (readonly string[])[];
  readonly empty: number;
}) {
  const rows = [
    ...(props.rows ?? []),
    ...Array.from({ length: props.empty }, (): readonly string[] => []),
  ];
  const whole = props.columns.reduce((sum, { share }) => sum + share, 0);
  return (
    <table className={styles.ruled} aria-label={props.name}>
      <thead>
        <tr>
          {props.columns.map(({ head, share }) => (
            <th key={head} style={{ width: `${(100 * share) / whole}%` }}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, place) => (
          <tr key={place}>
            {props.columns.map(({ head }, column) => (
              <td key={head}>{row[column] ?? ''}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
