import type { ReactNode } from 'react';
import { valueAt, type SheetPath } from '../../../record/sheetEdit.ts';
import { TickField } from '../../kit/Ground.tsx';
import { useDraft } from './sheetDraft.ts';
import { NOTHING } from './useNumberText.ts';
import styles from '../Brief.module.css';

/** A part of the flight sheet that an aircraft may have or not: ticked it stands there, blank until it is filled. */
export function SheetGroup(props: {
  readonly path: SheetPath;
  readonly label: string;
  /** What stands there first. */
  readonly blank: unknown;
  readonly hint?: string;
  readonly children: ReactNode;
}) {
  const draft = useDraft();
  const { path } = props;
  const given = valueAt(draft.sheet, path) !== undefined;
  const told = draft.faultAt(path) ?? props.hint;
  return (
    <section className={styles.block}>
      <TickField
        act={`sheet.${path}`}
        label={props.label}
        value={given}
        onChange={(on) => draft.put(path, on ? props.blank : undefined, NOTHING)}
      />
      {told === undefined ? null : <p className={styles.quiet}>{told}</p>}
      {given ? props.children : null}
    </section>
  );
}
