import { createWriteStream, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { once } from 'node:events';
import { gunzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { DIST } from '../../.tools/built.mjs';
import { startApp } from '../browser/appServer.ts';
import { Tablet } from '../browser/tablet.ts';

const TRACE = join(import.meta.dirname, '../flights/scripts/flight-a-recorder.csv.gz');
const ROWS = 3_000_000;
/** Beside the seven columns of the trace: tens of channels, most of which nobody reads. */
const MORE_COLUMNS = 17;
const LONGEST_TASK_MS = 200;
const PATIENCE_MS = 600_000;

export interface RecorderOpened {
  readonly rows: number;
  readonly fileBytes: number;
  readonly readMs: number;
  readonly longestTaskMs: number;
  /** Of page and worker together, before and while the file is open. */
  readonly memoryBytes: readonly [before: number, open: number];
  readonly clock: string;
}

/** Opens three million rows on Debrief of the demo flight and watches the page all the while. */
export async function recorderRows(executablePath: string): Promise<RecorderOpened> {
  const folder = mkdtempSync(join(tmpdir(), 'kneeline-recorder-'));
  const server = await startApp(DIST);
  const tablet = await Tablet.launch(server.origin, { executablePath });
  const { page } = tablet;
  try {
    const file = join(folder, 'trace.csv');
    const fileBytes = await writeRows(file);
    await tablet.open();
    await tablet.tap('start.demo');
    await tablet.shown('timeline');
    await tablet.tap('tab-recorder');
    const before = await memoryOf(page);
    await page.evaluate(() => {
      const lengths: number[] = [0];
      Reflect.set(globalThis, 'taskLengths', lengths);
      new PerformanceObserver((list) => {
        for (const task of list.getEntries()) lengths.push(task.duration);
      }).observe({ type: 'longtask' });
    });
    const asking = page.waitForEvent('filechooser');
    await tablet.tap('recorder-open');
    await (await asking).setFiles(file);
    await tablet.shown('recorder-read');
    const from = performance.now();
    await tablet.tap('recorder-read');
    const clock = page.locator('[data-act="recorder-clock"]', { hasText: 'Recorder clock' });
    await clock.waitFor({ timeout: PATIENCE_MS });
    const readMs = performance.now() - from;
    await tablet.tap('tab-timeline');
    await tablet.shown('recorder-strip');
    for (let zoom = 0; zoom < 5; zoom += 1) await tablet.tap('zoom-in');
    await tablet.tap('zoom-all');
    await tablet.tap('tab-recorder');
    const open = await memoryOf(page);
    return {
      rows: ROWS,
      fileBytes,
      readMs,
      longestTaskMs: await page.evaluate(() =>
        Math.max(...(Reflect.get(globalThis, 'taskLengths') as readonly number[])),
      ),
      memoryBytes: [before, open],
      clock: await clock.innerText(),
    };
  } finally {
    await tablet.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

export function printedOpening(opened: RecorderOpened): string {
  const { rows, fileBytes, readMs, longestTaskMs, memoryBytes, clock } = opened;
  const mb = (bytes: number): string => `${(bytes / 1e6).toFixed(0)} MB`;
  const verdict = longestTaskMs < LONGEST_TASK_MS ? 'holds' : 'DOES NOT HOLD';
  return [
    `recorder of ${rows} rows, ${mb(fileBytes)}, read and matched in ${(readMs / 1000).toFixed(1)} s`,
    `longest task on the page ${longestTaskMs.toFixed(0)} ms (below ${LONGEST_TASK_MS}) ${verdict}`,
    `memory of page and worker ${mb(memoryBytes[0])} before, ${mb(memoryBytes[1])} with the file open`,
    clock,
  ].join('\n');
}

/** Page and workers together, as the browser counts them once it has tidied up. */
async function memoryOf(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const measure = Reflect.get(performance, 'measureUserAgentSpecificMemory') as () => Promise<{
      readonly bytes: number;
    }>;
    return (await measure.call(performance)).bytes;
  });
}

/** Each second of flight A's trace as many rows, and columns beside that no one asked for. */
async function writeRows(file: string): Promise<number> {
  const [header = '', ...lines] = gunzipSync(readFileSync(TRACE)).toString().trim().split('\n');
  const more = Array.from({ length: MORE_COLUMNS }, (_, index) => `channel${index + 1}`);
  const perSecond = Math.ceil(ROWS / lines.length);
  const out = createWriteStream(file);
  let written = 0;
  let text = `${[header, ...more].join(',')}\n`;
  for (const line of lines) {
    const [time = '', ...values] = line.split(',');
    for (let row = 0; row < perSecond && written < ROWS; row += 1) {
      const ms = String(Math.floor((1000 * row) / perSecond)).padStart(3, '0');
      const others = more.map((_, index) => ((written * 7 + index * 13) % 9973) / 10);
      text += `${[time.replace('Z', `.${ms}Z`), ...values, ...others].join(',')}\n`;
      written += 1;
    }
    if (text.length > 1e6) {
      if (!out.write(text)) await once(out, 'drain');
      text = '';
    }
  }
  out.end(text);
  await once(out, 'finish');
  return out.bytesWritten;
}
