import type { TestTime } from './testTime.ts';

/** A write of the largest batch takes about forty turns; two in a row must fit. */
const TURNS = 100;

/** Lets the stand-in for the database do everything that it can do without time passing. */
export async function settled(): Promise<void> {
  for (let turn = 0; turn < TURNS; turn += 1) {
    await new Promise<void>((resolve) => {
      setImmediate(resolve);
    });
  }
}

/** Time passes in short steps, and the disk answers in between. */
export async function letPass(time: TestTime, durationMs: number): Promise<void> {
  for (let passedMs = 0; passedMs < durationMs; passedMs += 250) {
    await settled();
    time.advance(250);
  }
  await settled();
}

/**
 * The own lines that the stand-in for the database has, looked up past the journal, its connections and whatever keeps
 * them waiting. Call it when everything is settled, so that no transaction is half done.
 */
export function storedLines(databaseName: string): readonly string[] {
  const { rawObjectStores } = Reflect.get(indexedDB, '_databases').get(databaseName);
  const records: Iterable<{ readonly value: { readonly line: string } }> = rawObjectStores
    .get('lines')
    .records.values();
  return Array.from(records, ({ value }) => value.line);
}
