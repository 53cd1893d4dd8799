import type { ReactNode } from 'react';
import styles from './Ground.module.css';

export interface Column<Row> {
  readonly key: string;
  readonly head: string;
  readonly cell: (row: Row) => ReactNode;
  readonly align?: 'right';
}

/** A real table with a caption and scoped heads; a row may be chosen. */
export function GroundTable<Row>(props: {
  readonly caption: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  readonly chosen?: string | null;
  readonly onChoose?: (row: Row) => void;
  readonly empty?: string;
}) {
  const { onChoose } = props;
  return (
    <table className={styles.table}>
      <caption>{props.caption}</caption>
      <thead>
        <tr>
          {props.columns.map((column) => (
            <th
              key={column.key}
              scope="col"
              className={column.align === 'right' ? styles.right : undefined}
            >
              {column.head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {props.rows.map((row) => (
          <tr
            key={props.keyOf(row)}
            aria-selected={
              props.chosen === undefined ? undefined : props.keyOf(row) === props.chosen
            }
            onClick={onChoose === undefined ? undefined : () => onChoose(row)}
          >
            {props.columns.map((column) => (
              <td key={column.key} className={column.align === 'right' ? styles.right : undefined}>
                {column.cell(row)}
              </td>
            ))}
          </tr>
        ))}
        {props.rows.length === 0 && props.empty !== undefined ? (
          <tr>
            <td colSpan={props.columns.length}>{props.empty}</td>
          </tr>
        ) : null}
      </tbody>
    </table>
  );
}
