import type { Scribe } from './scribe.ts';

/** The live figure as it stands on Fly. */
export interface LiveShown {
  readonly state: string;
  /** Gates broken, the first one first. */
  readonly because: readonly string[];
  readonly pct: number | null;
  readonly halfPct: number | null;
}

export async function liveShown(scribe: Scribe): Promise<LiveShown> {
  const live = scribe.tablet.page.locator('[data-live]');
  const [state, gates, words] = await live.evaluate((figure) => [
    figure.getAttribute('data-live') ?? '',
    figure.querySelector('[data-gate]')?.getAttribute('data-gate') ?? '',
    figure.querySelector('output')?.innerText ?? '',
  ]);
  const [, value, half] = /^([\u2212\d.]+)\s*%\s*±\u2060?([\d.]+)/.exec(words ?? '') ?? [];
  return {
    state: state ?? '',
    because: (gates ?? '').split(' ').filter((gate) => gate !== ''),
    pct: value === undefined ? null : Number(value.replace('\u2212', '-')),
    halfPct: half === undefined ? null : Number(half),
  };
}
