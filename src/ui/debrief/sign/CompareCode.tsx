import { useState } from 'react';
import { headsOf } from '../../../file/timelineFile.ts';
import { entryId } from '../../../record/brand.ts';
import { codeHeard, type CodeHeard } from '../../../record/signatures.ts';
import { TextField } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import styles from './Sign.module.css';

/** Two people read their codes to each other: says whether the other one holds the same record. */
export function CompareCode({ desk }: { readonly desk: Desk }) {
  const [typed, setTyped] = useState('');
  const heads = headsOf(desk.journal.entries()).map(({ hash }) => entryId(hash));
  return (
    <section aria-label="Compare codes" className={styles.compare}>
      <TextField
        act="code-heard"
        label="Code that the other person reads out"
        hint="eight letters and digits; there is no I, L, O or U in it"
        value={typed}
        onChange={setTyped}
      />
      <p role="status" data-act="code-verdict">
        {typed.trim() === '' ? null : heardWords(codeHeard(desk.view, heads, typed))}
      </p>
    </section>
  );
}

function heardWords(heard: CodeHeard): string {
  switch (heard.kind) {
    case 'notACode':
      return 'Not a whole code yet: it has eight letters and digits.';
    case 'same':
      return 'The same record: they hold what you hold, entry for entry.';
    case 'signed':
      return heard.more === 0
        ? 'The version signed: they hold what you hold.'
        : `The version signed. You hold ${entries(heard.more)} more, written beside or after it; give them your file.`;
    case 'earlier':
      return `Their record ends at entry ${heard.seq} of recorder ${heard.rec.slice(0, 8)}. You hold that and more; give them your file.`;
    case 'unknown':
      return 'Not the same: they hold something that is not here. Say it again; then open their file and merge.';
  }
}

function entries(count: number): string {
  return count === 1 ? '1 entry' : `${count} entries`;
}
