import { describe, expect, it } from 'vitest';
import {
  BOTTOM_MM,
  EDGE_MM,
  flyLayout,
  GAP_MM,
  type FlyLayout,
} from '../../../src/ui/fly/layout.ts';
import type { Place, Places } from '../../../src/ui/fly/places.ts';
import { screenMm } from '../../../src/ui/kit/mm.ts';

/** Screens of the size table, both ways up, at both millimetres, and a desk's window. */
const SCREENS = [
  [744, 1133],
  [820, 1180],
  [1024, 1366],
].flatMap(([w = 0, h = 0]) => [[w, h] as const, [h, w] as const]);

const CASES = [
  ...SCREENS.flatMap(([w, h]) => [5.2, 6.42].map((px) => [w, h, px] as const)),
  [1440, 900, 5.2] as const,
].flatMap(([w, h, px]) => (['right', 'left'] as const).map((hand) => [w, h, px, hand] as const));

const TARGETS = [
  'phases',
  'theme',
  'tiles',
  'undo',
  'back',
  'states',
  'wing',
  'remind',
] as const satisfies readonly (keyof Places)[];
const READ = ['top', 'opens', 'live', 'entries'] as const satisfies readonly (keyof Places)[];

function gap(a: Place, b: Place): number {
  const across = Math.max(a.x - (b.x + b.w), b.x - (a.x + a.w));
  const down = Math.max(a.y - (b.y + b.h), b.y - (a.y + a.h));
  return Math.max(across, down);
}

function places(
  layout: FlyLayout,
  names: readonly (keyof Places)[],
): readonly (readonly [keyof Places, Place])[] {
  return names.flatMap((name) => {
    const place = layout.places[name];
    return place === null ? [] : [[name, place] as const];
  });
}

function closest(all: readonly (readonly [keyof Places, Place])[]): {
  readonly pair: string;
  readonly gapMm: number;
} {
  const pairs = all.flatMap(([a, first], index) =>
    all.slice(index + 1).map(([b, second]) => ({ pair: `${a} ${b}`, gapMm: gap(first, second) })),
  );
  return pairs.reduce((least, each) => (each.gapMm < least.gapMm ? each : least));
}

describe.each(CASES)('Fly on %i x %i px at %f px/mm, %s hand', (w, h, px, hand) => {
  const layout = flyLayout(screenMm(w, h, px), hand);
  const { widthMm, heightMm } = screenMm(w, h, px);

  it('lays nothing over anything else', () => {
    expect(closest(places(layout, [...TARGETS, ...READ])).gapMm).toBeGreaterThanOrEqual(-0.01);
  });

  it('keeps places of targets 4 mm apart', () => {
    expect(
      closest(
        places(
          layout,
          TARGETS.filter((name) => name !== 'remind'),
        ),
      ).gapMm,
    ).toBeGreaterThanOrEqual(GAP_MM - 0.31);
  });

  it('keeps targets off the edges and out of the bottom', () => {
    for (const [name, place] of places(layout, [
      ...TARGETS,
      'pad',
      'cells',
      'full',
      'controls',
      'panel',
      'queryKeys',
    ])) {
      expect(place.x, name).toBeGreaterThanOrEqual(EDGE_MM - 0.01);
      expect(place.x + place.w, name).toBeLessThanOrEqual(widthMm - EDGE_MM + 0.15);
      expect(heightMm - place.y - place.h, name).toBeGreaterThanOrEqual(BOTTOM_MM - 0.15);
    }
  });

  it('leaves twelve tiles of 20 mm and four keys of 20 mm a row', () => {
    const { tiles, pad, undo } = layout.places;
    expect((tiles.w - 3 * GAP_MM) / 4).toBeGreaterThanOrEqual(20);
    expect((tiles.h - 2 * GAP_MM) / 3).toBeGreaterThanOrEqual(20);
    expect((pad.w - 3 * GAP_MM) / 4).toBeGreaterThanOrEqual(20);
    expect((pad.h - 3 * GAP_MM) / 4).toBeGreaterThanOrEqual(20);
    expect(Math.min(undo.w, undo.h)).toBeGreaterThanOrEqual(19.99);
  });

  it('sets a pad apart from what stands beside it', () => {
    const { pad, echo, cells, controls } = layout.places;
    expect(gap(pad, echo)).toBeGreaterThanOrEqual(0.9);
    expect(gap(cells, controls)).toBeGreaterThanOrEqual(GAP_MM - 0.01);
  });
});

it('draws everything smaller, and says so, on a screen below every class', () => {
  const layout = flyLayout(screenMm(390, 844, 6), 'right');
  expect(layout.tooSmall).toBe(true);
  expect(layout.pxPerMm).toBeLessThan(6);
});
