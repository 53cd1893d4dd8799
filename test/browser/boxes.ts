import type { Page } from 'playwright-core';

/** Millimetres that targets on Fly must have and keep. */
export const RULES = {
  /** Event tiles, keypad, undo: gloves and turbulence. */
  largeMm: 20,
  targetMm: 15,
  gapMm: 4,
  consequentialGapMm: 13,
  edgeMm: 8,
  bottomMm: 12,
  consequentialEdgeMm: 12,
} as const;

/** Layout is rounded to device pixels. */
const TOLERANCE_PX = 0.5;
/** A line of text is laid out a little taller than its letters are. */
const LINE_TOLERANCE_MM = 0.5;

const PAGE = 'the page';

interface Box {
  readonly name: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

interface TargetBox extends Box {
  readonly form: string;
  /** Whether its words stand inside it. */
  readonly holdsWords: boolean;
}

/** Fly as it stands in the page: every target, every part, and whether anything would scroll. */
interface Measured {
  readonly width: number;
  readonly height: number;
  readonly targets: readonly TargetBox[];
  readonly parts: readonly Box[];
  /** What is larger than its place, and by how much the larger of the two ways. */
  readonly overfull: readonly { readonly name: string; readonly byPx: number }[];
}

/** What was measured on one screen. */
export interface Boxes {
  /** What breaks a rule of size, gap, edge or place, each with its figure. */
  readonly offences: readonly string[];
  /** The least of each kind on that screen in mm; infinite where there is none of the kind. */
  readonly leastMm: {
    readonly largeSide: number;
    readonly side: number;
    readonly gap: number;
    readonly consequentialGap: number;
    readonly edge: number;
    readonly consequentialEdge: number;
    readonly bottom: number;
  };
  /** Event tiles, and the sides of the smallest of them. */
  readonly tiles: {
    readonly count: number;
    readonly leastWidthMm: number;
    readonly leastHeightMm: number;
  };
  /** How far the page could be scrolled. */
  readonly scrollPx: number;
}

/** Measures the screen that stands now, once everything on it is saved and drawn. */
export async function boxesOn(page: Page, pxPerMm: number): Promise<Boxes> {
  await page.locator('[data-saved][data-pending="0"]').waitFor();
  const measured = await page.evaluate(measureInPage);
  return {
    offences: offencesIn(measured, pxPerMm),
    leastMm: leastIn(measured, pxPerMm),
    tiles: tilesIn(measured, pxPerMm),
    scrollPx: measured.overfull.find(({ name }) => name === PAGE)?.byPx ?? 0,
  };
}

function offencesIn(measured: Measured, pxPerMm: number): readonly string[] {
  if (measured.targets.length < 3) return [`only ${measured.targets.length} targets`];
  return [
    ...measured.overfull
      .filter(({ name, byPx }) => byPx > (name === PAGE ? 0 : LINE_TOLERANCE_MM * pxPerMm))
      .map(({ name, byPx }) => `${name} is ${millimetres(byPx, pxPerMm)} larger than its place`),
    ...measured.targets.flatMap((target) => [
      ...sizeOffences(target, pxPerMm),
      ...edgeOffences(target, measured, pxPerMm),
      ...(target.holdsWords ? [] : [`${target.name} does not hold its words`]),
    ]),
    ...pairs(measured.targets).flatMap(([a, b]) => gapOffences(a, b, pxPerMm)),
    ...pairs(measured.parts)
      .filter(([a, b]) => gapPx(a, b) < -TOLERANCE_PX)
      .map(([a, b]) => `${a.name} lies over ${b.name}`),
  ];
}

function leastIn(measured: Measured, pxPerMm: number): Boxes['leastMm'] {
  const { targets, width, height } = measured;
  const least = (px: readonly number[]): number => Math.min(...px) / pxPerMm;
  const isPlain = (target: TargetBox): boolean => !isConsequential(target);
  const edgePx = (target: TargetBox): number =>
    Math.min(target.left, target.top, width - target.right);
  const near = pairs(targets);
  return {
    largeSide: least(targets.filter(isLarge).map(sidePx)),
    side: least(targets.filter((target) => !isLarge(target)).map(sidePx)),
    gap: least(near.filter((pair) => pair.every(isPlain)).map(([a, b]) => gapPx(a, b))),
    consequentialGap: least(
      near.filter((pair) => !pair.every(isPlain)).map(([a, b]) => gapPx(a, b)),
    ),
    edge: least(targets.filter(isPlain).map(edgePx)),
    consequentialEdge: least(targets.filter(isConsequential).map(edgePx)),
    bottom: least(targets.map(({ bottom }) => height - bottom)),
  };
}

function tilesIn({ targets }: Measured, pxPerMm: number): Boxes['tiles'] {
  const tiles = targets.filter(({ name }) => name.startsWith('tile-'));
  return {
    count: tiles.length,
    leastWidthMm: Math.min(...tiles.map(({ left, right }) => right - left)) / pxPerMm,
    leastHeightMm: Math.min(...tiles.map(({ top, bottom }) => bottom - top)) / pxPerMm,
  };
}

function sidePx({ left, top, right, bottom }: TargetBox): number {
  return Math.min(right - left, bottom - top);
}

function sizeOffences(target: TargetBox, pxPerMm: number): readonly string[] {
  const leastMm = isLarge(target) ? RULES.largeMm : RULES.targetMm;
  const px = sidePx(target);
  return px < leastMm * pxPerMm - TOLERANCE_PX
    ? [`${target.name} measures ${millimetres(px, pxPerMm)}, not ${leastMm}`]
    : [];
}

function isLarge({ name, form }: TargetBox): boolean {
  return form === 'digit' || name === 'undo' || /^(tile|act|back|key|step)-/.test(name);
}

function edgeOffences(
  target: TargetBox,
  { width, height }: Measured,
  pxPerMm: number,
): readonly string[] {
  const side = isConsequential(target) ? RULES.consequentialEdgeMm : RULES.edgeMm;
  const edges = [
    { name: 'left', px: target.left, leastMm: side },
    { name: 'top', px: target.top, leastMm: side },
    { name: 'right', px: width - target.right, leastMm: side },
    { name: 'bottom', px: height - target.bottom, leastMm: RULES.bottomMm },
  ];
  return edges
    .filter(({ px, leastMm }) => px < leastMm * pxPerMm - TOLERANCE_PX)
    .map(
      ({ name, px, leastMm }) =>
        `${target.name} is ${millimetres(px, pxPerMm)} from the ${name} edge, not ${leastMm}`,
    );
}

function gapOffences(a: TargetBox, b: TargetBox, pxPerMm: number): readonly string[] {
  const leastMm = isConsequential(a) || isConsequential(b) ? RULES.consequentialGapMm : RULES.gapMm;
  const px = gapPx(a, b);
  return px < leastMm * pxPerMm - TOLERANCE_PX
    ? [`${a.name} and ${b.name} are ${millimetres(px, pxPerMm)} apart, not ${leastMm}`]
    : [];
}

/** What cannot be taken back lightly is held, not touched. */
function isConsequential({ form }: TargetBox): boolean {
  return form === 'hold';
}

/** Dead space between two boxes; negative where they overlap. */
function gapPx(a: Box, b: Box): number {
  return Math.max(a.left - b.right, b.left - a.right, a.top - b.bottom, b.top - a.bottom);
}

function pairs<Item>(all: readonly Item[]): readonly (readonly [Item, Item])[] {
  return all.flatMap((a, index) => all.slice(index + 1).map((b) => [a, b] as const));
}

function millimetres(px: number, pxPerMm: number): string {
  return `${(px / pxPerMm).toFixed(1)} mm`;
}

/** Runs in the page. */
function measureInPage(): Measured {
  const isDrawn = (element: Element) => element.getClientRects().length > 0;
  const boxOf = (name: string, element: Element) => {
    const { left, top, right, bottom } = element.getBoundingClientRect();
    return { name, left, top, right, bottom };
  };
  const holds = (target: Element) => {
    const box = target.getBoundingClientRect();
    const words = document.createRange();
    words.selectNodeContents(target);
    return [...words.getClientRects()].every(
      (line) =>
        line.width === 0 ||
        (line.left >= box.left - 1 &&
          line.right <= box.right + 1 &&
          line.top >= box.top - 1 &&
          line.bottom <= box.bottom + 1),
    );
  };
  const targets = [...document.querySelectorAll<HTMLElement>('[data-act]')].filter(isDrawn);
  const parts = [...document.querySelectorAll<HTMLElement>('section[aria-label]')].filter(isDrawn);
  const root = document.documentElement;
  const places = [
    { name: 'the page', element: root },
    ...parts.map((element) => ({ name: element.getAttribute('aria-label') ?? '', element })),
  ];
  return {
    width: root.clientWidth,
    height: root.clientHeight,
    targets: targets.map((element) => ({
      ...boxOf(element.dataset['act'] ?? '', element),
      form: element.dataset['form'] ?? '',
      holdsWords: holds(element),
    })),
    parts: parts.map((element) => boxOf(element.getAttribute('aria-label') ?? '', element)),
    overfull: places.map(({ name, element }) => ({
      name,
      byPx: Math.max(
        element.scrollWidth - element.clientWidth,
        element.scrollHeight - element.clientHeight,
      ),
    })),
  };
}
