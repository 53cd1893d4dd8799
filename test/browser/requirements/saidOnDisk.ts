import type { Entry } from '../../../src/record/entry.ts';
import { parseEntry } from '../../../src/record/parse.ts';
import { linesOnDisk } from '../drillJudge.ts';
import type { Scribe } from '../scribe.ts';

/** The entries that the tablet's own database holds, in the order of writing. */
export async function entriesOnDisk({ tablet }: Scribe): Promise<readonly Entry[]> {
  return (await linesOnDisk(tablet.page)).map((line) => {
    const read = parseEntry(line);
    if (!read.ok) throw new Error(`a line on the disk must be an entry, got ${line}`);
    return read.value;
  });
}

/** What a piece of work wrote, once it is on the disk. */
export async function writtenBy(
  scribe: Scribe,
  work: () => Promise<void>,
): Promise<readonly Entry[]> {
  await scribe.tablet.saved();
  const before = (await entriesOnDisk(scribe)).length;
  await work();
  await scribe.tablet.saved();
  return (await entriesOnDisk(scribe)).slice(before);
}
