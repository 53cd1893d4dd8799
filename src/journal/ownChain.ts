import type { EpochMs, FlightId, RecorderId } from '../record/brand.ts';
import { recorderId } from '../record/brand.ts';
import { nextOrd, sealEntry } from '../record/chain.ts';
import type { Author, Draft, Entry } from '../record/entry.ts';
import { parseEntry } from '../record/parse.ts';
import type { Head } from './database.ts';
import { headOf } from './ownLog.ts';

const DAY_MS = 24 * 60 * 60 * 1_000;
/** Far below the limit in bytes, whatever its letters. */
const SURELY_SHORT = 16_384;

/** The end of the chain that a tablet writes on: what is saved, and what is sealed after it. */
export interface OwnChain {
  readonly saved: () => Head | null;
  readonly recorder: () => RecorderId | null;
  readonly nameRecorder: (id: string) => void;
  /** @throws when the draft would not be read back as an entry; the chain is as before then */
  readonly seal: (draft: Draft, author: Author) => Entry;
  readonly accept: (saved: readonly Entry[]) => void;
  readonly restart: (head: Head | null) => void;
  /** Later entries are ordered after these, but for clocks more than a day ahead. */
  readonly saw: (entries: readonly Entry[]) => void;
}

export function ownChain(flight: FlightId, now: () => EpochMs): OwnChain {
  let recorder: RecorderId | null = null;
  let saved: Head | null = null;
  let sealed: Head | null = null;
  let seenOrd: number | null = null;

  return {
    saved: () => saved,
    recorder: () => recorder,
    nameRecorder: (id) => {
      recorder = recorderId(id);
    },
    seal: (draft, author) => {
      if (recorder === null) {
        throw new Error('a chain must have a recorder before its first entry');
      }
      const entry = sealEntry({
        flight,
        rec: recorder,
        seq: (sealed?.seq ?? 0) + 1,
        prev: sealed?.id ?? null,
        ord: nextOrd(sealed?.ord ?? null, draft.stamp.wall, seenOrd, now()),
        draft,
        author,
      });
      if (mayBeUnreadable(entry)) {
        // It would be found missing at the next start.
        const read = parseEntry(entry.line);
        if (!read.ok) {
          throw new RangeError(`an entry must be readable, got ${JSON.stringify(read.error)}`);
        }
      }
      sealed = headOf(entry);
      return entry;
    },
    accept: (entries) => {
      const last = entries.at(-1);
      saved = last === undefined ? saved : headOf(last);
    },
    restart: (head) => {
      recorder = head?.rec ?? null;
      saved = head;
      sealed = head;
    },
    saw: (entries) => {
      const latest = now() + DAY_MS;
      for (const { ord } of entries) {
        if (ord <= latest && ord > (seenOrd ?? -Infinity)) {
          seenOrd = ord;
        }
      }
    },
  };
}

/** Sealing checked the body against its kind; length, depth and names of keys remain, and reading twice costs a touch. */
function mayBeUnreadable({ kind, line }: Entry): boolean {
  return (
    kind === 'entryAmended' ||
    line.length > SURELY_SHORT ||
    /"(?:__proto__|constructor|prototype)":/.test(line)
  );
}
