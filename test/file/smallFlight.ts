import { epochMs, flightId, recorderId, type EntryId } from '../../src/record/brand.ts';
import { blankSheet } from '../../src/record/blankSheet.ts';
import { sealEntry } from '../../src/record/chain.ts';
import type { Author, Draft, Entry } from '../../src/record/entry.ts';

export const FLIGHT = flightId('f1'.repeat(16));
export const OTHER_FLIGHT = flightId('f2'.repeat(16));
export const SCRIBE = recorderId('a1'.repeat(16));
export const ENGINEER = recorderId('b2'.repeat(16));

const PEN: Author = { author: 'S1', role: 'scribe' };
const NOON = Date.UTC(2031, 4, 6, 12, 0, 0);
const EMPTY_PAGE = Array.from({ length: 12 }, () => null);

type Content = Omit<Draft, 'stamp'>;

export const OPENED: Content = {
  kind: 'flightOpened',
  body: {
    nature: 'flight',
    title: 'Slot check',
    date: '2031-05-06',
    device: 'test tablet',
    sheet: blankSheet({
      id: 'sheet-1',
      massUnit: 'kg',
      heightUnit: 'm',
      tilePages: { ground: EMPTY_PAGE, climb: EMPTY_PAGE, cruise: EMPTY_PAGE, descent: EMPTY_PAGE },
    }),
  },
};

/** Seals contents into one recorder's chain, a second apart. */
export function chainOf(
  contents: readonly Content[],
  from: {
    rec?: typeof SCRIBE;
    flight?: typeof FLIGHT;
    startMs?: number;
    after?: Entry | undefined;
    author?: Author;
  } = {},
): readonly Entry[] {
  const { rec = SCRIBE, flight = FLIGHT, startMs = NOON, after, author = PEN } = from;
  const entries: Entry[] = [];
  let prev: EntryId | null = after?.id ?? null;
  let seq = after?.seq ?? 0;
  for (const [index, content] of contents.entries()) {
    seq += 1;
    const wall = epochMs(startMs + index * 1000);
    const entry = sealEntry({
      flight,
      rec,
      seq,
      prev,
      ord: wall,
      draft: { ...content, stamp: { wall, mono: index * 1000, boot: 'boot-1' } } as Draft,
      author,
    });
    entries.push(entry);
    prev = entry.id;
  }
  return entries;
}

export const mark: Content = { kind: 'markMade', body: {} };

export function note(words: string): Content {
  return { kind: 'noted', body: { words } };
}

/** Opened, four notes, a mark: six lines of one recorder. */
export function smallFlight(): readonly Entry[] {
  return chainOf([OPENED, note('covers on'), note('haze'), mark, note('zürich café ✓'), mark]);
}
