import { epochMs, type EntryId, type EpochMs } from '../../src/record/brand.ts';
import { canonicalJson } from '../../src/record/canonical.ts';
import { nextOrd } from '../../src/record/chain.ts';
import type { Entry } from '../../src/record/entry.ts';
import { parseEntry } from '../../src/record/parse.ts';
import type { Script } from './script.ts';
import { sayingsOf, type Saying } from './scriptBodies.ts';
import { sheetOfScript } from './sheetOfScript.ts';

export interface ScriptedFlight {
  readonly entries: readonly Entry[];
  /** Entry of the script by its number; the first one where a line of the script made two. */
  readonly idOf: ReadonlyMap<number, EntryId>;
}

const ENVELOPE = {
  v: 1,
  flight: 'a11ce5bada55e77e0ddba11f1a7ab1e5',
  rec: '5c21be5c21be5c21be5c21be5c21be01',
  boot: '0b007e0b007e0b00',
  author: 'S1',
  role: 'scribe',
} as const;
/** Milliseconds on the tablet's monotonic clock when the flight was opened: the page had been up for five minutes. */
const MONO_AT_OPENING = 300_000;

/**
 * The script as entries of one recorder, in the order in which they were written. The tablet's clock is off as its two
 * time hacks say, in between in proportion; every id is fixed, so the same script gives the same bytes.
 */
export function flightOfScript(script: Script): ScriptedFlight {
  const idOf = new Map<number, EntryId>();
  const tabletAt = tabletClock(script);
  const firstUtc = script.entries[0]?.utc ?? `${script.flight.date}T00:00:00Z`;
  const openedWall = tabletAt(Date.parse(firstUtc) - 60_000);
  const opening: Saying = {
    kind: 'flightOpened',
    body: {
      nature: 'demo',
      title: script.flight.title,
      date: script.flight.date,
      device: 'scribe tablet',
      sheet: sheetOfScript(script),
    },
  };
  let head = written(opening, openedWall, null, openedWall);
  const entries = [head];
  for (const line of script.entries) {
    const wall = tabletAt(Date.parse(line.enteredUtc ?? line.utc));
    const context = {
      wall,
      at: tabletAt(Date.parse(line.utc)),
      idOf: (n: number): EntryId => idOfLine(idOf, n),
      head: { rec: head.rec, seq: head.seq, hash: head.id },
    };
    for (const saying of sayingsOf(line, context)) {
      head = written(saying, wall, head, openedWall);
      entries.push(head);
      idOf.set(line.n, idOf.get(line.n) ?? head.id);
    }
  }
  return { entries, idOf };
}

export function entriesOfScript(script: Script): readonly Entry[] {
  return flightOfScript(script).entries;
}

/** The entries that were written by the time line `n` of the script was, that one included. */
export function entriesUntil(flight: ScriptedFlight, n: number): readonly Entry[] {
  const id = idOfLine(flight.idOf, n);
  return flight.entries.slice(0, flight.entries.findIndex((entry) => entry.id === id) + 1);
}

/** @throws RangeError when line `n` was not written */
export function idOfLine(idOf: ReadonlyMap<number, EntryId>, n: number): EntryId {
  const id = idOf.get(n);
  if (id === undefined) {
    throw new RangeError(`line ${n} must be written before it is named`);
  }
  return id;
}

/** Through the one door, so a body that does not fit its kind is found here and by name. */
function written(saying: Saying, wall: EpochMs, before: Entry | null, openedWall: EpochMs): Entry {
  const line = canonicalJson(
    given({
      ...ENVELOPE,
      seq: (before?.seq ?? 0) + 1,
      prev: before?.id ?? null,
      ord: nextOrd(before?.ord ?? null, wall, null, wall),
      wall,
      mono: MONO_AT_OPENING + (wall - openedWall),
      kind: saying.kind,
      body: saying.body,
    }),
  );
  const read = parseEntry(line);
  if (!read.ok) {
    throw new RangeError(`a scripted entry must parse, got ${JSON.stringify(read.error)}: ${line}`);
  }
  return read.value;
}

/** The value without its undefined fields, at any depth: absent means not read. */
function given(value: unknown): unknown {
  if (Array.isArray(value)) {
    return value.map(given);
  }
  if (typeof value !== 'object' || value === null) {
    return value;
  }
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .map(([key, item]) => [key, given(item)]),
  );
}

/** What the tablet showed at a true time: its offset at the first and last hack, in proportion between, held outside. */
export function tabletClock(script: Script): (utcMs: number) => EpochMs {
  const hacks = script.entries.flatMap((entry) => {
    const shown = entry.kind === 'time hack' ? entry.shown?.['tablet'] : undefined;
    const at = Date.parse(entry.utc);
    return shown === undefined ? [] : [{ at, offsetMs: Date.parse(shown) - at }];
  });
  const first = hacks[0] ?? { at: 0, offsetMs: 0 };
  const last = hacks.at(-1) ?? first;
  return (utcMs) => {
    const share =
      last.at === first.at
        ? 0
        : Math.min(1, Math.max(0, (utcMs - first.at) / (last.at - first.at)));
    return epochMs(Math.round(utcMs + first.offsetMs + share * (last.offsetMs - first.offsetMs)));
  };
}
