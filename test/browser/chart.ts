import type { Tablet } from './tablet.ts';

/** A mark of the timeline, as the list beside the canvas says where it stands. */
export interface ChartMark {
  readonly entry: string;
  readonly seq: number;
  readonly kind: string;
  readonly lane: string;
  readonly x: number;
  readonly y: number;
}

/** The marks inside the window of time, in the order of the list. */
export async function marksShown(tablet: Tablet): Promise<readonly ChartMark[]> {
  return tablet.page.evaluate(() => {
    const chart = document.querySelector<HTMLElement>('[data-act="timeline"]');
    const canvas = chart?.getBoundingClientRect();
    // Larger text draws the chart larger than its own pixels say.
    const zoom = (canvas?.width ?? 1) / (chart?.offsetWidth ?? 1);
    return [...document.querySelectorAll<HTMLElement>('[data-act="mark"][data-shown="yes"]')].map(
      ({ dataset }) => ({
        entry: dataset['entry'] ?? '',
        seq: Number(dataset['seq']),
        kind: dataset['kind'] ?? '',
        lane: dataset['lane'] ?? '',
        x: Number(dataset['x']) * zoom + (canvas?.x ?? 0),
        y: Number(dataset['y']) * zoom + (canvas?.y ?? 0),
      }),
    );
  });
}

/** Touches the canvas where a mark is drawn. */
export async function touchMark(
  tablet: Tablet,
  choose: (marks: readonly ChartMark[]) => ChartMark | undefined,
): Promise<ChartMark> {
  const mark = choose(await marksShown(tablet));
  if (mark === undefined) throw new Error('no such mark in the window');
  await tablet.touch([{ x: mark.x, y: mark.y }]);
  return mark;
}
