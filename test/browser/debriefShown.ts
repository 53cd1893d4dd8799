import { readFile } from 'node:fs/promises';
import type { Scribe } from './scribe.ts';

/** A reduction as Debrief shows it, in per cent. */
export interface ShownFigure {
  readonly pct: number;
  /** Half of the 95 % interval. */
  readonly halfPct: number;
}

export interface ShownPoint {
  readonly point: string;
  readonly run: number;
  /** Words in the value column: the figure, a flow, or why there is none. */
  readonly words: string;
  readonly fuel: ShownFigure | null;
  readonly drag: ShownFigure | null;
}

/** From wherever the app stands to the Debrief of a flight that is on this tablet. */
export async function toDebriefOf(scribe: Scribe, title: string): Promise<void> {
  const { page } = scribe.tablet;
  const ways = ['nav.brief', 'go-brief', 'start.setup', 'brief.tab=days'];
  await page
    .locator(ways.map((act) => `[data-act="${act}"]`).join(', '))
    .first()
    .waitFor();
  for (const way of ways) {
    if (await scribe.isThere(way)) {
      await scribe.tap(way);
    }
  }
  const flight = page
    .getByRole('listitem')
    .filter({ hasText: title })
    .filter({ hasNotText: 'Demo.' });
  const key = flight.locator('[data-act^="days.debrief="]');
  await scribe.tap((await key.getAttribute('data-act')) ?? '');
}

/** Every row of the results by test point, and what stands beside each when it is touched. */
export async function pointsShown(scribe: Scribe): Promise<readonly ShownPoint[]> {
  await scribe.tap('tab-answers');
  if (await scribe.isThere('answers-all')) {
    await scribe.tap('answers-all');
  }
  await scribe.tap('answer-1');
  await scribe.tablet.shown({ starts: 'result-' });
  const rows = (await scribe.tablet.targets()).filter(({ act }) => act.startsWith('result-'));
  const shown: ShownPoint[] = [];
  for (const { act, words } of rows) {
    const [, point = '', run = ''] = /^result-(.+)-(\d+)$/.exec(act) ?? [];
    await scribe.tap(`point-${point}-${run}`);
    const beside = await scribe.tablet.page
      .getByRole('region', { name: `${point} run ${run}`, exact: true })
      .innerText();
    const drag = /^Drag\s+(.*)$/m.exec(beside)?.[1] ?? '';
    shown.push({ point, run: Number(run), words, fuel: figureIn(words), drag: figureIn(drag) });
  }
  return shown;
}

/** "26.9 ± 1.7" with a true minus. */
function figureIn(words: string): ShownFigure | null {
  const [, value, half] = /([\u2212\d.]+) ± ([\d.]+)/.exec(words) ?? [];
  return value === undefined || half === undefined
    ? null
    : { pct: Number(value.replace('\u2212', '-')), halfPct: Number(half) };
}

/** Touches Save and returns the file as the browser wrote it. */
export async function savedFile(scribe: Scribe): Promise<{ name: string; text: string }> {
  await scribe.tap('tab-files');
  const { page } = scribe.tablet;
  const [download] = await Promise.all([page.waitForEvent('download'), scribe.tap('save-file')]);
  const path = await download.path();
  return { name: download.suggestedFilename(), text: await readFile(path, 'utf8') };
}
