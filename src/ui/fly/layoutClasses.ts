import type { Places } from './places.ts';

/**
 * The classes of screens in millimetres. Each is drawn for one tablet and stretched from there: `extra` is what the
 * screen has beyond it. Targets keep 8 mm from the edges and 12 mm from the bottom, and 4 mm from each other.
 */

/** 10 to 11 inch, landscape: 226.9 x 157.7 mm. Hand on the left, eye on the right. */
export function wide(widthMm: number, heightMm: number): Places {
  const left = Math.max(116, 116 + (widthMm - 226.9) / 2);
  const right = widthMm - 20 - left;
  const x = 12 + left;
  const extra = heightMm - 157.7;
  const foot = 125.7 + extra;
  const undoW = (left - 16) / 5;
  return {
    top: { x: 8, y: 5, w: left, h: 11 },
    opens: { x: 8, y: 17, w: left, h: 7 },
    remind: { x, y: 8, w: right, h: 15 },
    phases: { x: 8, y: 28, w: left - 24, h: 15 },
    theme: { x: 8 + left - 20, y: 28, w: 20, h: 15 },
    tiles: { x: 8, y: 47, w: left, h: 74.7 + extra },
    undo: { x: 8, y: foot, w: undoW, h: 20 },
    back: { x: 12 + undoW, y: foot, w: left - undoW - 4, h: 20 },
    live: { x, y: 26.6, w: right, h: 49.4 + extra },
    wing: { x, y: 77.7 + extra, w: right, h: 44 },
    states: { x, y: foot, w: right, h: 20 },
    entries: { x: 8, y: 148.6 + extra, w: widthMm - 16, h: 7 },
    pad: { x: 8, y: 28, w: left, h: 93.7 + extra },
    echo: { x, y: 78.4 + extra, w: right, h: 32 },
    query: { x, y: 112.4 + extra, w: right, h: 12 },
    queryKeys: { x, y: foot, w: right, h: 20 },
    full: { x: 8, y: 28, w: left, h: 93.7 + extra },
    cells: { x: 8, y: 28, w: left, h: 93.7 + extra },
    controls: { x, y: 78.4 + extra, w: right, h: 67.3 },
    panel: { x, y: 78.4 + extra, w: right, h: 67.3 },
  };
}

/** 13 inch, landscape: 262.7 x 196.9 mm, type for 75 cm, the wing in one piece. */
export function thirteen(widthMm: number, heightMm: number): Places {
  const left = 140 + (widthMm - 262.7) / 2;
  const right = widthMm - 20 - left;
  const x = 12 + left;
  const extra = heightMm - 196.9;
  const low = 135 + extra / 2;
  const wingH = 49.9 + extra / 2;
  const wingW = widthMm - 102.7;
  return {
    top: { x: 8, y: 5, w: left, h: 13 },
    opens: { x: 8, y: 19.5, w: left, h: 8 },
    remind: { x, y: 8, w: right, h: 15.6 },
    phases: { x: 8, y: 32, w: left - 26, h: 15 },
    theme: { x: 8 + left - 22, y: 32, w: 22, h: 15 },
    tiles: { x: 8, y: 51, w: left, h: 80 + extra / 2 },
    undo: { x: widthMm - 90.7, y: low + wingH - 22.9, w: 82.7, h: 22.9 },
    back: { x, y: 111 + extra / 2, w: right, h: 20 },
    live: { x, y: 28, w: right, h: 79 + extra / 2 },
    wing: { x: 8, y: low, w: wingW, h: wingH },
    states: { x: widthMm - 90.7, y: low, w: 82.7, h: wingH - 26.9 },
    entries: { x: 8, y: 187.4 + extra, w: widthMm - 16, h: 8 },
    pad: { x: 8, y: 32, w: left, h: 99 + extra / 2 },
    echo: { x: 8, y: low, w: wingW, h: 35 },
    query: { x: 8, y: low + 37, w: wingW, h: 12 },
    queryKeys: { x: widthMm - 90.7, y: low, w: 82.7, h: 23 },
    full: { x: 8, y: 32, w: left, h: 99 + extra / 2 },
    cells: { x: 8, y: 32, w: left, h: 99 + extra / 2 },
    controls: { x: 8, y: low, w: wingW, h: wingH },
    panel: { x: 8, y: low, w: wingW, h: wingH },
  };
}

/** 10 to 11 inch, portrait: 157.7 x 226.9 mm. */
export function tall(widthMm: number, heightMm: number): Places {
  const w = widthMm - 16;
  const extra = heightMm - 226.9;
  const live = 24 + Math.max(0, extra * 0.4);
  const shift = live - 24;
  const tilesH = 72 + extra - shift;
  const wingY = 73.4 + shift + tilesH;
  const foot = 193.4 + extra;
  const undoW = (w - 16) / 5;
  return {
    top: { x: 8, y: 4.7, w: w - 24.7, h: 11.1 },
    opens: { x: 8, y: 16, w: w - 24.7, h: 6.6 },
    theme: { x: widthMm - 28, y: 8, w: 20, h: 15 },
    live: { x: 8, y: 24.6, w, h: live },
    remind: { x: 8, y: 50.4 + shift, w, h: 15 },
    phases: { x: 8, y: 69.4 + shift, w: 26, h: tilesH },
    tiles: { x: 38, y: 69.4 + shift, w: w - 30, h: tilesH },
    wing: { x: 8, y: wingY, w: w - 48, h: 44 },
    states: { x: widthMm - 52, y: wingY, w: 44, h: 44 },
    undo: { x: 8, y: foot, w: undoW, h: 20 },
    back: { x: 12 + undoW, y: foot, w: w - undoW - 4, h: 20 },
    entries: { x: 8, y: 216.6 + extra, w, h: 8 },
    pad: { x: 8, y: 97.4 + shift, w, h: 92 + extra - shift },
    echo: { x: 8, y: 68 + shift, w, h: 26 },
    query: { x: 8, y: 216.6 + extra, w, h: 7 },
    queryKeys: { x: 12 + undoW, y: foot, w: w - undoW - 4, h: 20 },
    full: { x: 8, y: 69.4 + shift, w, h: tilesH },
    cells: { x: 8, y: 97.4 + shift, w, h: 92 + extra - shift },
    controls: { x: 8, y: 50.4 + shift, w, h: 43 },
    panel: { x: 8, y: wingY - 3, w, h: 47 },
  };
}

/** 8 inch, portrait: 115.9 x 176.5 mm. The wing is a pad, the live figure one line. */
export function eight(widthMm: number, heightMm: number): Places {
  const w = widthMm - 16;
  const extra = heightMm - 176.5;
  const undoW = (w - 12) / 4;
  const foot = 144.4 + extra;
  return {
    top: { x: 8, y: 3.6, w, h: 10.7 },
    opens: { x: 8, y: 14.4, w, h: 6.4 },
    theme: null,
    live: { x: 8, y: 22.4, w, h: 10.9 },
    remind: { x: 8, y: 34.2, w, h: 15 },
    phases: { x: 8, y: 53.3, w, h: 15 },
    tiles: { x: 8, y: 72.3, w, h: 68.1 + extra },
    wing: null,
    states: null,
    undo: { x: 8, y: foot, w: undoW, h: 20 },
    back: { x: 12 + undoW, y: foot, w: w - undoW - 4, h: 20 },
    entries: { x: 8, y: 164.8 + extra, w, h: 11.2 },
    pad: { x: 8, y: 48.35, w, h: 92.1 + extra },
    echo: { x: 8, y: 22.4, w, h: 25 },
    query: { x: 8, y: 165.2 + extra, w, h: 10.4 },
    queryKeys: { x: 12 + undoW, y: foot, w: w - undoW - 4, h: 20 },
    full: { x: 8, y: 24.4, w, h: 116 + extra },
    cells: { x: 8, y: 67.3, w, h: 73.1 + extra },
    controls: { x: 8, y: 22.3, w, h: 41 },
    panel: { x: 8, y: 22.3, w, h: 45.9 },
  };
}

/** 8 inch, landscape: 176.5 x 115.9 mm. */
export function eightWide(widthMm: number, heightMm: number): Places {
  const left = Math.max(92, 100 + (widthMm - 176.5) / 2);
  const right = widthMm - 20 - left;
  const x = 12 + left;
  const extra = heightMm - 115.9;
  const foot = 83.9 + extra;
  const undoW = (left - 12) / 4;
  return {
    top: { x, y: 3.4, w: right, h: 16.4 },
    opens: { x, y: 20, w: right, h: 6.4 },
    theme: null,
    live: { x, y: 27.6, w: right, h: 11 },
    remind: { x, y: 39.4, w: right, h: 26.5 },
    phases: { x, y: 69.9 + extra, w: right, h: 34 },
    tiles: { x: 8, y: 11.8, w: left, h: 68.1 + extra },
    wing: null,
    states: null,
    undo: { x: 8, y: foot, w: undoW, h: 20 },
    back: { x: 12 + undoW, y: foot, w: left - undoW - 4, h: 20 },
    entries: { x: 8, y: 105.6 + extra, w: widthMm - 16, h: 7 },
    pad: { x: 8, y: 11.85, w: left, h: 92.1 + extra },
    echo: { x, y: 27.6, w: right, h: 34 },
    query: { x, y: 63 + extra, w: right, h: 18 },
    queryKeys: { x, y: foot, w: right, h: 20 },
    full: { x: 8, y: 11.9, w: left, h: 92 + extra },
    cells: { x: 8, y: 11.9, w: left, h: 92 + extra },
    controls: { x, y: 27.6, w: right, h: 76.3 + extra },
    panel: { x, y: 27.6, w: right, h: 76.3 + extra },
  };
}
