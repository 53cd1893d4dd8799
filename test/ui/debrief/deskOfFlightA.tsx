import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { Journal } from '../../../src/journal/journal.ts';
import type { Entry } from '../../../src/record/entry.ts';
import { Debrief } from '../../../src/ui/debrief/Debrief.tsx';
import { scriptA } from '../../flights/flightA.ts';
import { flightOfScript } from '../../flights/scriptToEntries.ts';
import { memoryShelf } from '../../journal/memoryJournal.ts';
import { testTime } from '../../journal/testTime.ts';

export const flightA = flightOfScript(scriptA);
const LANDED = Date.parse('2032-06-03T01:20:00Z');

/** Entries of flight A up to and including a line of its script. */
export function upTo(line: number): readonly Entry[] {
  const after = flightA.idOf.get(line + 1);
  const end = flightA.entries.findIndex(({ id }) => id === after);
  return flightA.entries.slice(0, end === -1 ? undefined : end);
}

export interface DebriefDesk {
  readonly journal: Journal;
  readonly user: ReturnType<typeof userEvent.setup>;
  /** The one element of a stable name. @throws when there is none, or more than one */
  readonly act: (name: string) => HTMLElement;
  readonly all: (name: string) => readonly HTMLElement[];
  readonly said: () => string;
}

/** Debrief of a flight on a tablet with no disk, the pen in the scribe's hand. */
export async function debriefOf(entries: readonly Entry[]): Promise<DebriefDesk> {
  const time = testTime(LANDED);
  const shelf = memoryShelf({ clock: time.clock, device: 'scribe tablet' });
  const { flight } = await shelf.takeIn(entries);
  const journal = await shelf.journalOf(flight);
  journal.setAuthor({ author: 'S1', role: 'scribe' });
  const { container } = render(
    <Debrief
      journal={journal}
      shelf={shelf}
      clock={time.clock}
      build="test"
      onBrief={() => {}}
      onFly={() => {}}
    />,
  );
  const all = (name: string): readonly HTMLElement[] => [
    ...container.querySelectorAll<HTMLElement>(`[data-act="${name}"]`),
  ];
  return {
    journal,
    user: userEvent.setup(),
    all,
    act: (name) => {
      const [first, ...others] = all(name);
      if (first === undefined || others.length > 0) {
        throw new RangeError(`one ${name} expected, got ${others.length + (first ? 1 : 0)}`);
      }
      return first;
    },
    said: () =>
      screen
        .getAllByRole('status')
        .map(({ textContent }) => textContent)
        .join(' '),
  };
}
