import type { Reminder } from '../../analysis/reminderWants.ts';
import type { JournalStatus } from '../../journal/journal.ts';

const INTERVAL_WORDS: Readonly<Record<string, string>> = {
  moisture: 'In cloud',
  turn: 'In the turn',
  turbulence: 'In turbulence',
  testPoint: 'Point open',
};

export function remindWords(
  due: Reminder,
  since: string,
): { readonly what: string; readonly detail: string } {
  switch (due.kind) {
    case 'coverRelease':
      return { what: 'Covers released?', detail: `Gear up ${since}` };
    case 'samplerOpen':
      return { what: 'Sampler open', detail: `${due.label} ${since}` };
    case 'intervalOpen':
      return { what: INTERVAL_WORDS[due.subject] ?? 'Open', detail: `${due.label} ${since}` };
    case 'readingDue':
      return { what: 'Fuel reading due', detail: `${due.label}, last ${since} ago` };
  }
}

/** What puts recorded data at risk, in six words or so; `null` when nothing does. */
export function troubleWords(status: JournalStatus): string | null {
  const { trouble, writer, pending } = status;
  if (writer.kind === 'anotherWindow') {
    return 'Read only: another window is recording.';
  }
  if (trouble === null) {
    return null;
  }
  switch (trouble.kind) {
    case 'notSaved':
      return `NOT SAVED: ${pending.length} kept here, trying again.${trouble.because === 'full' ? ' Storage is full.' : ''}`;
    case 'missing':
      return `Entries missing from ${trouble.foundSeq + 1}. See Debrief.`;
    case 'fork':
      return `Log continued elsewhere from ${trouble.seq}. See Debrief.`;
  }
}
