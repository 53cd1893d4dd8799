import { entryId, epochMs, flightId, recorderId, type EntryId } from '../../src/record/brand.ts';
import { canonicalJson } from '../../src/record/canonical.ts';
import { nextOrd, sealEntry } from '../../src/record/chain.ts';
import type { Draft, Entry, Stamp } from '../../src/record/entry.ts';
import { startFlight, type FlightView } from '../../src/record/flight.ts';
import { parseEntry } from '../../src/record/parse.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { items } from '../../src/record/trail.ts';
import { scriptA } from '../flights/flightA.ts';
import { flightOfScript, idOfLine } from '../flights/scriptToEntries.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';

export const flightA = flightOfScript(scriptA);
export const sheetA: FlightSheet = sheetOfScript(scriptA);

/** Units as the demonstration flight prints them. */
export const LB_PER_H_PER_KG_PER_S = 3600 / 0.45359237;
export const LB_PER_N = 1 / (0.45359237 * 9.80665);

export function viewOfEntries(entries: readonly Entry[]): FlightView {
  return startFlight().add(entries);
}

/** Index of the glance that holds line `n` of the script. */
export function glanceOfLine(view: FlightView, n: number): number {
  const id = idOfLine(flightA.idOf, n);
  return [...items(view.state.glances)].findIndex((glance) => glance.by.includes(id));
}

/** Line of the script whose reading this glance is. */
export function lineOfGlance(view: FlightView, index: number): number {
  const glance = [...items(view.state.glances)][index];
  for (const [n, id] of flightA.idOf) if (glance?.by.includes(id)) return n;
  throw new RangeError(`glance ${index} must come from the script`);
}

/** A touch at this tablet time. */
export function touchAt(atMs: number): Stamp {
  return { wall: epochMs(atMs), mono: atMs % 86_400_000, boot: '0b007e0b007e0b01' };
}

/** One recorder's chain of these drafts. */
export function sealed(drafts: readonly Draft[]): readonly Entry[] {
  const entries: Entry[] = [];
  for (const draft of drafts) {
    const before = entries.at(-1);
    const { wall } = draft.stamp;
    entries.push(
      sealEntry({
        flight: flightId('a11ce5bada55e77e0ddba11f1a7ab1e6'),
        rec: recorderId('5c21be5c21be5c21be5c21be5c21be02'),
        seq: (before?.seq ?? 0) + 1,
        prev: before?.id ?? null,
        ord: nextOrd(before?.ord ?? null, wall, null, wall),
        draft,
        author: { author: 'S1', role: 'scribe' },
      }),
    );
  }
  return entries;
}

/** The same entries with other bodies, in a chain of their own; null leaves an entry out. */
export function rewritten(
  entries: readonly Entry[],
  change: (entry: Entry) => object | null,
): readonly Entry[] {
  const ids = new Map<string, EntryId>();
  const kept: Entry[] = [];
  for (const entry of entries) {
    const body = change(entry);
    if (body === null) continue;
    const before = kept.at(-1);
    const { kind } = entry;
    const { v, flight, rec, ord, wall, mono, boot, author, role } = entry;
    const line = canonicalJson({
      v,
      flight,
      rec,
      ord,
      wall,
      mono,
      boot,
      author,
      role,
      kind,
      seq: (before?.seq ?? 0) + 1,
      prev: before?.id ?? null,
      body: relinked(body, ids),
    });
    const read = parseEntry(line);
    if (!read.ok) throw new RangeError(`a rewritten entry must parse: ${line}`);
    ids.set(entry.id, read.value.id);
    kept.push(read.value);
  }
  return kept;
}

/** The flight with another flight sheet, all else as it was. */
export function withSheet(entries: readonly Entry[], sheet: FlightSheet): readonly Entry[] {
  return rewritten(entries, (entry) =>
    entry.kind === 'flightOpened' ? { ...entry.body, sheet } : bodyOf(entry),
  );
}

/** The flight as if these entries had never been written. */
export function without(
  entries: readonly Entry[],
  drop: (entry: Entry) => boolean,
): readonly Entry[] {
  return rewritten(entries, (entry) => (drop(entry) ? null : bodyOf(entry)));
}

export function bodyOf(entry: Entry): object {
  if (entry.kind === 'unrecognised') throw new RangeError('a test flight must be of known kinds');
  return entry.body;
}

function relinked(body: object, ids: ReadonlyMap<string, EntryId>): unknown {
  const text = JSON.stringify(body).replaceAll(
    /"([0-9a-f]{64})"/g,
    (_, id: string) => `"${ids.get(id) ?? entryId(id)}"`,
  );
  return JSON.parse(text);
}
