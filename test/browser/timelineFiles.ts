import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Scribe } from './scribe.ts';

const README = join(import.meta.dirname, '../../README.md');

/** From Fly as it stands to Debrief of the same flight. */
export async function fromFlyToDebrief(scribe: Scribe): Promise<void> {
  await scribe.tap('tile-more');
  await scribe.tap('tile-desk');
  await scribe.tap('desk-debrief');
  await scribe.tablet.shown('tab-files');
}

/** Saves the timeline file of the flight on Debrief by touch, and reads what was saved. */
export async function savedFile(
  scribe: Scribe,
): Promise<{ readonly name: string; readonly text: string }> {
  await scribe.tap('tab-files');
  const coming = scribe.tablet.page.waitForEvent('download');
  await scribe.tap('save-file');
  const download = await coming;
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

/** What the lines of code in the README print about a file. @throws when they find its chain broken */
export function verifiedByReadme(text: string): string {
  const code = /```js\n([\s\S]*?)```/.exec(readFileSync(README, 'utf8'))?.[1];
  if (code === undefined) throw new Error('the README must give the code that verifies a file');
  const scratch = mkdtempSync(join(tmpdir(), 'kneeline-verify-'));
  try {
    writeFileSync(join(scratch, 'verify.mjs'), code);
    writeFileSync(join(scratch, 'flight.jsonl'), text);
    return execFileSync(process.execPath, ['verify.mjs', 'flight.jsonl'], {
      cwd: scratch,
      encoding: 'utf8',
      stdio: 'pipe',
    });
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}
