import { openShelf } from '../../src/journal/idbJournal.ts';
import { epochMs, type EntryId } from '../../src/record/brand.ts';
import type { Body, Draft, Entry } from '../../src/record/entry.ts';

/** An entry that is to be written anew: what was said, when, and by whom. */
export type Saying = Pick<Entry, 'kind' | 'wall' | 'mono' | 'boot' | 'author' | 'role' | 'id'> & {
  readonly body: unknown;
};

const ID = /"([0-9a-f]{64})"/g;

/** What a page is given so that a test can set a tablet up; everything goes through the app's own shelf. */
export interface PageShelf {
  /** Records a flight as if it had been flown on this tablet, under ids of its own. Resolves once all is on disk. */
  readonly recordFlight: (
    nature: 'flight' | 'practice',
    sayings: readonly Saying[],
  ) => Promise<string>;
}

async function recordFlight(
  nature: 'flight' | 'practice',
  [first, ...rest]: readonly Saying[],
): Promise<string> {
  if (first?.kind !== 'flightOpened') throw new Error('a flight must begin by being opened');
  const last = rest.at(-1) ?? first;
  const shelf = await openShelf({ clock: standingClock(last.wall), device: 'test tablet' });
  const opened = first.body as Body<'flightOpened'>;
  const journal = await shelf.openFlight({
    ...opened,
    nature,
    author: { author: first.author, role: first.role },
    stamp: { wall: first.wall, mono: first.mono, boot: first.boot },
  });
  const written = new Map<string, Promise<EntryId>>();
  for (const saying of rest) {
    const { kind, wall, mono, boot, author, role } = saying;
    const body = await renamed(saying.body, written);
    journal.setAuthor({ author, role });
    const saved = journal.append({ kind, body, stamp: { wall, mono, boot } } as Draft);
    written.set(
      saying.id,
      saved.then((entry) => entry.id),
    );
  }
  await Promise.all(written.values());
  await journal.close();
  return journal.flight;
}

/** The body with each entry that it names called by its new name. */
async function renamed(
  body: unknown,
  written: ReadonlyMap<string, Promise<EntryId>>,
): Promise<unknown> {
  const text = JSON.stringify(body);
  const named = [...text.matchAll(ID)].map(([, id = '']) => id);
  if (named.length === 0) return body;
  const names = new Map<string, string>();
  for (const id of named) names.set(id, (await written.get(id)) ?? id);
  return JSON.parse(text.replaceAll(ID, (_, id: string) => `"${names.get(id)}"`));
}

function standingClock(now: number) {
  const stamp = { wall: epochMs(now), mono: 0, boot: 'preparing' };
  return { now: () => epochMs(now), stampOf: () => stamp, stampNow: () => stamp };
}

const pageShelf: PageShelf = { recordFlight };
Object.assign(globalThis, { pageShelf });
