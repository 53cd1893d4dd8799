import { useCallback, useState } from 'react';
import type { Author, Draft, Entry, Stamp } from '../../record/entry.ts';
import type { Clock, Journal } from '../../journal/journal.ts';

export interface Writer {
  /** The draft's stamp is taken at once; resolves with the entry when it is on disk, or null when it may not be written. */
  readonly write: (make: (stamp: Stamp) => Draft, said: string) => Promise<Entry | null>;
  /** What became of the last entry, in words. */
  readonly said: string;
  readonly isSaving: boolean;
  /** Who holds the pen now. */
  readonly pen: Author;
  readonly takePen: (author: Author) => void;
}

/** One way to disk for every form of Debrief, with one line that says what was written. */
export function useWriter(journal: Journal, clock: Clock): Writer {
  const [said, setSaid] = useState('');
  const [saving, setSaving] = useState(0);
  const [pen, setPen] = useState(journal.author());
  const takePen = useCallback(
    (author: Author): void => {
      journal.setAuthor(author);
      setPen(author);
    },
    [journal],
  );
  const write = useCallback(
    async (make: (stamp: Stamp) => Draft, words: string): Promise<Entry | null> => {
      const draft = make(clock.stampNow());
      if (journal.author().author === '') {
        setSaid('Not written. Choose who holds the pen, then again.');
        return null;
      }
      setSaving((count) => count + 1);
      setSaid('Saving…');
      try {
        const entry = await journal.append(draft);
        setSaid(words);
        return entry;
      } catch {
        setSaid('Not written: this window may not write to this flight.');
        return null;
      } finally {
        setSaving((count) => count - 1);
      }
    },
    [journal, clock],
  );
  return { write, said, isSaving: saving > 0, pen, takePen };
}
