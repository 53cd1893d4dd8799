import { epochMs, type EntryId } from '../../src/record/brand.ts';
import { sealEntry } from '../../src/record/chain.ts';
import type { Draft, Entry } from '../../src/record/entry.ts';
import { scriptA } from '../flights/flightA.ts';
import { entriesUntil, flightOfScript } from '../flights/scriptToEntries.ts';

/** In the fifth test point of flight A: suction on, the figure standing. */
const LAST_LINE = 81;

/**
 * Flight A in cruise with its live figure standing, made as long as is wanted: between what the script says the scribe
 * read the gauges again, wrote notes and made marks, evenly over the flight.
 *
 * @param count entries in all, at least as many as the script has by then
 */
export function longCruise(count: number): readonly Entry[] {
  const scripted = entriesUntil(flightOfScript(scriptA), LAST_LINE);
  const [first] = scripted;
  const last = scripted.at(-1);
  if (first === undefined || last === undefined || count < scripted.length) {
    throw new RangeError(`a long cruise must have at least ${scripted.length} entries`);
  }
  const more = count - scripted.length;
  const stepMs = (last.wall - first.wall) / (more + 1);
  const rec = `${'0'.repeat(30)}f1` as Entry['rec'];
  const entries: Entry[] = [];
  let next = 0;
  let prev: EntryId | null = null;
  let readings: Draft | null = null;
  for (const entry of scripted) {
    while (next < more && first.wall + (next + 1) * stepMs < entry.wall) {
      next += 1;
      const wall = epochMs(Math.round(first.wall + next * stepMs));
      const draft = {
        ...contentAt(next, readings),
        stamp: { wall, mono: Math.round(next * stepMs), boot: last.boot },
      } as Draft;
      const author = { author: first.author, role: first.role };
      const sealed: Entry = sealEntry({
        flight: first.flight,
        rec,
        seq: next,
        prev,
        ord: wall,
        draft,
        author,
      });
      prev = sealed.id;
      entries.push(sealed);
    }
    entries.push(entry);
    if (entry.kind === 'fuelRead') readings = { ...entry, stamp: first };
  }
  return entries;
}

/** A third of each; before the first reading there is none to repeat. */
function contentAt(index: number, readings: Draft | null): Omit<Draft, 'stamp'> {
  if (index % 3 === 0 && readings?.kind === 'fuelRead') {
    return { kind: 'fuelRead', body: readings.body };
  }
  return index % 3 === 1
    ? { kind: 'noted', body: { words: `haze ahead, ${index} of the day` } }
    : { kind: 'markMade', body: {} };
}
