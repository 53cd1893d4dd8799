import { canonicalJson } from '../../src/record/canonical.ts';
import type { Entry } from '../../src/record/entry.ts';
import { parseEntry } from '../../src/record/parse.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';

const DAY_MS = 86_400_000;

/**
 * The same flight flown again: every instant so many days later, under an id of its own, with another flight sheet if
 * one is given.
 *
 * @param hex one hexadecimal digit that the new flight and its recorders are named by
 */
export function laterFlight(
  entries: readonly Entry[],
  {
    days,
    hex,
    sheet,
  }: { readonly days: number; readonly hex: string; readonly sheet?: FlightSheet },
): readonly Entry[] {
  const ids = new Map<string, string>();
  const written: Entry[] = [];
  for (const entry of entries) {
    const line: Record<string, unknown> = JSON.parse(moved(entry.line, days, ids));
    line['flight'] = hex.repeat(32);
    line['rec'] = `${hex.repeat(31)}${entry.rec.slice(-1)}`;
    if (entry.kind === 'flightOpened' && sheet !== undefined) {
      line['body'] = { ...entry.body, sheet };
    }
    const read = parseEntry(canonicalJson(line));
    if (!read.ok) throw new RangeError(`a moved entry must parse: ${JSON.stringify(read.error)}`);
    ids.set(entry.id, read.value.id);
    written.push(read.value);
  }
  return written;
}

/** Instants are the only whole numbers of thirteen digits in a record of these years. */
function moved(line: string, days: number, ids: ReadonlyMap<string, string>): string {
  return line
    .replaceAll(/(?<=[:[,])1[89]\d{11}(?=[,}\]])/g, (at) => String(Number(at) + days * DAY_MS))
    .replaceAll(/"([0-9a-f]{64})"/g, (_, id: string) => `"${ids.get(id) ?? id}"`);
}
