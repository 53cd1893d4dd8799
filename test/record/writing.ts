import { canonicalJson } from '../../src/record/canonical.ts';
import { nextOrd } from '../../src/record/chain.ts';
import { epochMs } from '../../src/record/brand.ts';
import type { Entry } from '../../src/record/entry.ts';
import { parseEntry } from '../../src/record/parse.ts';

export const FLIGHT_ID = '0f11e0f11e0f11e0f11e0f11e0f11e00';
export const REC_A = 'aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa';
export const REC_B = 'bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb';
/** 2032-06-02T21:00:00Z */
export const START_MS = 1_969_822_800_000;

/** An entry before the record: kind and body unchecked, so that a test can also say what no screen would. */
export interface Said {
  readonly kind: string;
  readonly body: object;
  /** Milliseconds after `START_MS` at which the finger touched; one second after the entry before when absent. */
  readonly afterMs?: number;
}

/**
 * Entries of one recorder, chained, through the one door. `head` continues a chain that was begun.
 * @throws RangeError when an entry does not parse
 */
export function chained(
  saids: readonly Said[],
  { rec = REC_A, head = null }: { readonly rec?: string; readonly head?: Entry | null } = {},
): readonly Entry[] {
  let before = head;
  return saids.map((said) => {
    const wall =
      said.afterMs === undefined
        ? epochMs(before === null ? START_MS : before.wall + 1000)
        : epochMs(START_MS + said.afterMs);
    const line = canonicalJson({
      v: 1,
      flight: FLIGHT_ID,
      rec,
      seq: (before?.seq ?? 0) + 1,
      prev: before?.id ?? null,
      ord: nextOrd(before?.ord ?? null, wall, null, wall),
      wall,
      mono: wall - START_MS,
      boot: 'b0',
      author: 'S1',
      role: 'scribe',
      kind: said.kind,
      body: said.body,
    });
    const read = parseEntry(line);
    if (!read.ok) {
      throw new RangeError(`a test entry must parse, got ${JSON.stringify(read.error)}: ${line}`);
    }
    before = read.value;
    return read.value;
  });
}
