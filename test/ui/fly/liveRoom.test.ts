import { describe, expect, it } from 'vitest';
import { flyLayout } from '../../../src/ui/fly/layout.ts';
import { liveRoom } from '../../../src/ui/fly/liveRoom.ts';

const SCREENS = [
  { name: '10 inch across', widthMm: 226.9, heightMm: 157.7, pxPerMm: 5.2 },
  { name: '10 inch upright', widthMm: 157.7, heightMm: 226.9, pxPerMm: 5.2 },
  { name: '13 inch', widthMm: 262.7, heightMm: 196.9, pxPerMm: 5.2 },
  { name: 'laptop', widthMm: 276.9, heightMm: 173, pxPerMm: 5.2 },
];

describe.each(SCREENS)('the live panel on $name', (screen) => {
  it.each([1, 1.25, 1.5])('has room for words and trend at text size %d', (size) => {
    const room = liveRoom(flyLayout(screen, 'right', size));
    // Net or laminar share, the card and one more; and an axis on which a tenth is wider than two figures are apart.
    expect(room?.lines).toBeGreaterThanOrEqual(3);
    expect(room?.plotMm).toBeGreaterThanOrEqual(20);
  });
});

it('is one line on the kneeboard', () => {
  expect(
    liveRoom(flyLayout({ widthMm: 115.9, heightMm: 176.5, pxPerMm: 6.42 }, 'right')),
  ).toBeNull();
});

describe('larger text on Fly', () => {
  it.each([
    // Class, its own size, the largest that its places hold.
    [SCREENS[0], 1, 1.1],
    [SCREENS[1], 1, 1.08],
    [SCREENS[2], 1.25, 1.25],
  ])('stops where keys would have to shrink (%o)', (screen, least, most) => {
    if (screen === undefined) throw new RangeError('there must be a screen');
    expect(flyLayout(screen, 'right', 1).textSize).toBe(least);
    expect(flyLayout(screen, 'right', 1.5).textSize).toBe(most);
  });

  it('moves nothing', () => {
    for (const screen of SCREENS) {
      expect(flyLayout(screen, 'right', 1.5).places).toEqual(flyLayout(screen, 'right', 1).places);
    }
  });
});
