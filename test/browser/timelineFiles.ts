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

/** What the page says about a file that was opened. */
export interface ReadAloud {
  readonly refused: boolean;
  readonly sentences: readonly string[];
}

/** Opens a file on Debrief by touch. */
export async function openFile(scribe: Scribe, name: string, text: string): Promise<ReadAloud> {
  const { page } = scribe.tablet;
  await scribe.tap('tab-files');
  const asking = page.waitForEvent('filechooser');
  await scribe.tap('open-file');
  const chooser = await asking;
  await chooser.setFiles({ name, mimeType: 'application/x-ndjson', buffer: Buffer.from(text) });
  const reading = page.locator('[data-act="file-read"], [data-act="file-refused"]', {
    has: page.getByRole('heading', { name, exact: true }),
  });
  await reading.waitFor();
  const refused = (await reading.getAttribute('data-act')) === 'file-refused';
  const sentences = await reading.locator('[role="alert"], li').allInnerTexts();
  return { refused, sentences };
}

/** Takes in what was just opened, by touch. @returns what the page says then */
export async function takeIn(scribe: Scribe): Promise<string> {
  await scribe.tap('take-in');
  const status = scribe.tablet.page.getByRole('status').filter({ hasText: /added|Not taken/ });
  return (await status.innerText()).trim();
}

/** The entries of a file, as they stand in it. */
export function linesOf(text: string): readonly string[] {
  return text.trimEnd().split('\n').slice(1, -1);
}
