import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import type { Entry } from '../../src/record/entry.ts';
import { chainOf, ENGINEER, FLIGHT, mark, note } from '../file/smallFlight.ts';
import { inCruise } from './inCruise.ts';
import { preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';
import { linesOf, openFile, savedFile, takeIn } from './timelineFiles.ts';

const NOW = Date.UTC(2032, 5, 2, 12, 0, 0);

function at(entries: readonly Entry[], index: number): Entry {
  const entry = entries.at(index);
  if (entry === undefined) throw new RangeError(`there must be an entry at ${index}`);
  return entry;
}

function amended(target: Entry, field: string, old: unknown, next: unknown) {
  return {
    kind: 'entryAmended',
    body: {
      target: target.id,
      replaces: [],
      changes: [{ field, old, new: next }],
      code: 'misKeyed',
      reason: 'read again',
    },
  } as const;
}

/**
 * Copies of one flight that overlap: two people who correct each other and, unknown to one another, the same digit, and
 * a recorder that was used twice.
 */
function copies(): readonly (readonly Entry[])[] {
  const base = inCruise(NOW);
  const fuel = at(base, -1);
  const theirs = chainOf([mark, note('haze'), amended(fuel, 'readings.FF1.value', 840, 845)], {
    rec: ENGINEER,
    startMs: NOW,
  });
  const ours = chainOf(
    [
      amended(fuel, 'readings.FF1.value', 840, 850),
      amended(at(theirs, 1), 'words', 'haze', 'haze, left'),
    ],
    { after: fuel, startMs: NOW + 60_000 },
  );
  const forked = chainOf([note('another branch')], { after: at(base, 4), startMs: NOW });
  return [
    base.slice(0, 6),
    [...base, ...ours],
    [...base.slice(0, 5), ...forked],
    theirs,
    [...theirs, ...base.slice(2)],
  ];
}

let site: PreparedSite;
let scratch = '';
beforeEach(async () => {
  site = await preparedSite();
  scratch = mkdtempSync(join(tmpdir(), 'kneeline-merging-'));
});
afterEach(async () => {
  await site.close();
  rmSync(scratch, { recursive: true, force: true });
});

/** The lines of files, each once, as the text tools of any system put them together. */
function unionByTextTools(files: readonly string[]): string {
  const paths = files.map((file, index) => {
    const path = join(scratch, `copy-${index}.txt`);
    writeFileSync(
      path,
      linesOf(file)
        .map((line) => `${line}\n`)
        .join(''),
    );
    return path;
  });
  return execFileSync('sort', ['-u', ...paths], {
    encoding: 'utf8',
    env: { ...process.env, LC_ALL: 'C' },
  });
}

/** Opens the files one after the other on a new tablet, takes each in, and saves what came of it. */
async function merged(files: readonly string[]): Promise<string> {
  const tablet = await Tablet.launch(site.origin, {
    executablePath: findBrowser() ?? '',
    startAt: NOW,
  });
  const scribe = new Scribe(tablet, NOW);
  await tablet.open();
  await scribe.tap('start.demo');
  await tablet.shown('tab-files');
  for (const [index, file] of files.entries()) {
    await openFile(scribe, `copy ${index}.jsonl`, file);
    await takeIn(scribe);
    if (index === 0) {
      await scribe.tap('go-brief');
      await scribe.tap(`days.debrief=${FLIGHT}`);
      await tablet.shown('tab-files');
    }
  }
  const { text } = await savedFile(scribe);
  await tablet.close();
  return text;
}

describe('overlapping, forked and cross-amended copies of one flight', () => {
  it('merge to the same bytes in every order, and to the union that sort makes of their lines', async () => {
    const files = copies().map((entries) => writeTimeline(entries));
    const forwards = await merged(files);
    expect(await merged(files.toReversed())).toBe(forwards);
    expect(await merged([...files.slice(2), ...files.slice(0, 2)])).toBe(forwards);
    expect(await merged([...files, ...files])).toBe(forwards);
    expect(unionByTextTools([forwards])).toBe(unionByTextTools(files));
    expect(linesOf(forwards)).toHaveLength(unionByTextTools(files).trimEnd().split('\n').length);
  });
});
