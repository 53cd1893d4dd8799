import type { Page } from 'playwright-core';
import { checkChains } from '../../src/record/chain.ts';
import type { Entry } from '../../src/record/entry.ts';
import { viewOf } from '../../src/record/flight.ts';
import { parseEntry } from '../../src/record/parse.ts';
import { itemsBackwards } from '../../src/record/trail.ts';

/** A touch as the test sent it. */
export interface Sent {
  readonly tile: 'tile-mark' | 'tile-cloud' | 'tile-sample';
  readonly atMs: number;
}

/** One kill, as seen from outside of the browser. */
export interface Seen {
  /** Touches whose entries the page had said to be saved. */
  readonly acknowledged: number;
  readonly unacknowledged: number;
  /** In words, what was lost, altered or shown wrongly; none when the promise held. */
  readonly faults: readonly string[];
}

const WRITES: Readonly<Record<Sent['tile'], readonly string[]>> = {
  'tile-mark': ['markMade'],
  'tile-cloud': ['moistureEntered', 'moistureExited'],
  'tile-sample': ['samplerOpened', 'samplerClosed'],
};
const TOUCHED = new Set(Object.values(WRITES).flat());

/** A contact may come so much from the time that it was sent with. */
const EXACT_TO_MS = 20;

/** The own record as the database of the page's browser holds it: exact lines, in order. */
export async function linesOnDisk(page: Page): Promise<readonly string[]> {
  return page.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const opening = indexedDB.open('kneeline');
        opening.addEventListener('error', () => reject(new Error('the database must open')));
        opening.addEventListener('success', () => {
          const database = opening.result;
          const all = database.transaction('lines').objectStore('lines').getAll();
          all.addEventListener('success', () => {
            database.close();
            resolve(all.result.map((row: { readonly line: string }) => row.line));
          });
        });
      }),
  );
}

/** Compares the disk after a kill with the disk before, with what was sent, and with what had been said to be saved. */
export async function judgeDisk(
  page: Page,
  given: {
    readonly before: readonly string[];
    readonly disk: readonly string[];
    readonly sent: readonly Sent[];
    readonly saidSaved: number;
  },
): Promise<Seen> {
  const { before, disk, sent, saidSaved } = given;
  const entries = disk.map(entryOf);
  const fresh = entries.slice(before.length);
  const touched = fresh.filter(({ kind }) => TOUCHED.has(kind));
  const acknowledged = entries
    .slice(before.length, saidSaved)
    .filter(({ kind }) => TOUCHED.has(kind)).length;
  const faults = [
    ...(before.every((line, index) => disk[index] === line) ? [] : ['an older line was altered']),
    ...(disk.length < saidSaved ? [`${saidSaved} were said to be saved, ${disk.length} are`] : []),
    ...checkChains(entries).map((finding) => `the chain has a ${finding.kind}`),
    ...touched.flatMap((entry, index) => strayWords(entry, sent[index])),
    ...(await shownFaults(page, entries)),
  ];
  return { acknowledged, unacknowledged: sent.length - acknowledged, faults };
}

/** Touches reach the disk in the order in which they were made; what is there is what was sent, from the first on. */
function strayWords(entry: Entry, sent: Sent | undefined): readonly string[] {
  if (sent === undefined) return [`${entry.kind} was never touched`];
  const isOfTile = WRITES[sent.tile].includes(entry.kind);
  return isOfTile && Math.abs(entry.wall - sent.atMs) <= EXACT_TO_MS
    ? []
    : [`${sent.tile} at ${sent.atMs} became ${entry.kind} at ${entry.wall}`];
}

/** Fly opened again by itself and shows as open what the record left open. */
async function shownFaults(page: Page, entries: readonly Entry[]): Promise<readonly string[]> {
  const faults: string[] = [];
  const intervals = [...itemsBackwards(viewOf(entries).state.intervals)];
  for (const [tile, kind] of [
    ['tile-cloud', 'moisture'],
    ['tile-sample', 'sampler'],
  ] as const) {
    const isOpen = intervals.some((each) => each.kind === kind && each.closed === null);
    const words = await page.locator(`[data-act="${tile}"]`).innerText();
    // The foot of an interval's tile: its running time while it is open, else the verb of the next touch.
    if (/\d:\d\d/.test(words) !== isOpen) {
      faults.push(`${tile} says “${words}” and the record says ${isOpen ? 'open' : 'closed'}`);
    }
  }
  const saved = await page.locator('[data-saved]').innerText();
  return saved.includes('NOT SAVED') || saved.includes('new recorder')
    ? [...faults, `Fly says “${saved}”`]
    : faults;
}

function entryOf(line: string): Entry {
  const read = parseEntry(line);
  if (!read.ok) throw new Error(`a line on the disk must be an entry, got ${line}`);
  return read.value;
}
