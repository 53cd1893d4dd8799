import type { FlyLayout } from './layout.ts';

/** In mm at text size 1: a line of words, what stands above the words, the words themselves, and the gap to the axis. */
const LINE_MM = 4.95;
const HEAD_MM = 6.2;
const FIGURE_MM = 13.9;
const GATE_MM = 5.6;
const WORDS_MM = 41;
const TALL_WORDS_MM = 47;
const TALL_FIGURE_MM = 61;
const GAP_MM = 3;
const TITLE_MM = 90;
/** The largest gross figure with its doubt, whatever the text size; and the net one, at text size 1. */
const GROSS_MM = 62;
const NET_MM = 27;
const MOST_LINES = 7;

/** What the live panel has room for beside its figure; `null` where the figure stands alone in one line. */
export interface LiveRoom {
  readonly lines: number;
  /** The title has no room beside it: that the figure is provisional is said below. */
  readonly wordsBelow: boolean;
  /** The net figure has no room beside the gross one: it stands among the lines. */
  readonly netBelow: boolean;
  readonly plotMm: number;
}

export function liveRoom({ places, screenClass, textSize }: FlyLayout): LiveRoom | null {
  const { w, h } = places.live;
  if (places.wing === null) {
    return null;
  }
  if (screenClass === 'tall') {
    return {
      wordsBelow: false,
      netBelow: true,
      lines: Math.floor((h - HEAD_MM * textSize) / (LINE_MM * textSize)),
      plotMm: w - TALL_FIGURE_MM - TALL_WORDS_MM * textSize - 2 * GAP_MM,
    };
  }
  const freeMm = h - (HEAD_MM + GATE_MM) * textSize - FIGURE_MM;
  return {
    wordsBelow: w < TITLE_MM * textSize,
    netBelow: w < GROSS_MM + NET_MM * textSize,
    lines: Math.min(MOST_LINES, Math.floor(freeMm / (LINE_MM * textSize))),
    plotMm: w - WORDS_MM * textSize - GAP_MM,
  };
}
