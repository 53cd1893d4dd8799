import { render, screen } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import type { Touch } from '../../../src/ui/kit/touchBoard.ts';
import type { TargetForm } from '../../../src/ui/kit/touchRules.ts';
import { HoldKey, TouchKey, TouchSurface } from '../../../src/ui/kit/TouchSurface.tsx';
import { eventClock, finger, START_MS } from './fingers.tsx';

const PX_PER_MM = 5;

/** Two keys, 100 px square and 20 px apart, as a browser would lay them out. */
function twoKeys(form: TargetForm = 'event') {
  const touched = vi.fn<(name: string, touch: Touch) => void>();
  const ignored = vi.fn<(act: string) => void>();
  render(
    <TouchSurface clock={eventClock()} pxPerMm={PX_PER_MM} onIgnored={ignored}>
      <TouchKey act="left" form={form} onTouch={(touch) => touched('left', touch)}>
        Left
      </TouchKey>
      <TouchKey act="right" form={form} onTouch={(touch) => touched('right', touch)}>
        Right
      </TouchKey>
    </TouchSurface>,
  );
  const left = placed('Left', 0);
  const right = placed('Right', 120);
  return { left, right, touched, ignored, surface: left.parentElement ?? left };
}

function placed(name: string, x: number): HTMLElement {
  const key = screen.getByRole('button', { name });
  key.getBoundingClientRect = () => new DOMRect(x, 0, 100, 100);
  return key;
}

const outcomes = (touched: ReturnType<typeof twoKeys>['touched']): readonly string[] =>
  touched.mock.calls.map(([name, touch]) => `${name} ${touch.outcome}`);

describe('a touch on an event key', () => {
  it.each([50, 400, 1500])('carries the time of first contact, held %i ms', (heldMs) => {
    const { left, touched } = twoKeys();
    finger(left).tap(5_000, heldMs);
    expect(touched).toHaveBeenCalledOnce();
    expect(touched.mock.calls[0]?.[1].stamp.wall).toBe(START_MS + 5_000);
  });

  it('shows the pressed look and the frozen time between contact and release', () => {
    const { left } = twoKeys();
    finger(left).down(7_000);
    expect(left).toHaveAttribute('data-frozen', '22:00:07\u00a0Z');
    finger(left).up(7_090);
    expect(left).not.toHaveAttribute('data-frozen');
  });

  it('holds within 8 mm of its edge and is unconfirmed beyond', () => {
    const { left, touched } = twoKeys();
    finger(left).down(1_000);
    finger(left).up(1_100, { x: 50, y: 100 + 7 * PX_PER_MM });
    finger(left).down(3_000);
    finger(left).up(3_100, { x: 50, y: 100 + 12 * PX_PER_MM });
    expect(outcomes(touched)).toEqual(['left sure', 'left slippedOff']);
  });

  it('is kept, marked, when it was very short, cut off or held long', () => {
    const { left, touched } = twoKeys();
    finger(left).tap(1_000, 20);
    finger(left).down(3_000);
    finger(left).cancel(3_100);
    finger(left).tap(5_000, 2_500);
    expect(outcomes(touched)).toEqual(['left briefContact', 'left cancelled', 'left heldLong']);
  });

  it.each([
    [80, 1],
    [300, 1],
    [700, 2],
  ])('counts a repeat %i ms after release as %i', (gapMs, expected) => {
    const { left, touched } = twoKeys();
    finger(left).tap(1_000, 80);
    finger(left).tap(1_080 + gapMs, 80);
    expect(touched).toHaveBeenCalledTimes(expected);
  });

  it('says that it ignored the second touch', () => {
    const { left, ignored } = twoKeys();
    finger(left).tap(1_000, 80);
    finger(left).tap(1_200, 80);
    expect(ignored).toHaveBeenCalledExactlyOnceWith('left');
  });

  it('keeps both of two keys inside 300 ms, the second unconfirmed', () => {
    const { left, right, touched } = twoKeys();
    finger(left).down(1_000);
    finger(right, 2).down(1_250, { x: 170 });
    finger(left).up(1_300);
    finger(right, 2).up(1_350, { x: 170 });
    expect(outcomes(touched)).toEqual(['left sure', 'right twoTiles']);
  });
});

describe('palm and rest', () => {
  it('ignores a contact of 34 mm', () => {
    const { left, touched } = twoKeys();
    finger(left).down(1_000, { size: 34 * PX_PER_MM });
    finger(left).up(1_200);
    expect(touched).not.toHaveBeenCalled();
  });

  it('ignores three contacts within 100 ms, the first two taken back', () => {
    const { left, right, surface, touched } = twoKeys();
    finger(left, 1).down(1_000);
    finger(right, 2).down(1_040, { x: 170 });
    finger(surface, 3).down(1_090, { x: 500, y: 500 });
    finger(left, 1).up(1_200);
    finger(right, 2).up(1_200, { x: 170 });
    expect(touched).not.toHaveBeenCalled();
  });

  it('takes a touch while a palm rests elsewhere', () => {
    const { left, surface, touched } = twoKeys();
    finger(surface, 1).down(1_000, { x: 600, y: 600, size: 34 * PX_PER_MM });
    finger(left, 2).tap(4_000);
    expect(outcomes(touched)).toEqual(['left sure']);
  });

  it('gives a touch in the gap to the nearer key', () => {
    const { surface, touched } = twoKeys();
    finger(surface).down(1_000, { x: 113, y: 50 });
    finger(surface).up(1_100, { x: 113, y: 50 });
    expect(outcomes(touched)).toEqual(['right sure']);
  });
});

describe('other keys', () => {
  it.each([
    [80, 1],
    [160, 2],
  ])('of a number pad take the same digit %i ms later as %i', (gapMs, expected) => {
    const { left, touched } = twoKeys('digit');
    finger(left).tap(1_000, 60);
    finger(left).tap(1_060 + gapMs, 60);
    expect(touched).toHaveBeenCalledTimes(expected);
  });

  it('do nothing when the finger slides away', () => {
    const { left, touched } = twoKeys('key');
    finger(left).down(1_000);
    finger(left).up(1_200, { x: 50, y: 400 });
    expect(touched).not.toHaveBeenCalled();
  });

  it('ignore a finger that bounces on what has just taken the place of its key', () => {
    const { left, right, touched } = twoKeys('key');
    finger(left).tap(1_000);
    finger(right).down(1_200, { x: 55, y: 55 });
    finger(right).up(1_280, { x: 125, y: 55 });
    expect(outcomes(touched)).toEqual(['left sure']);
  });

  it('answer to the keyboard', () => {
    const { left, touched } = twoKeys('key');
    left.dispatchEvent(new MouseEvent('click', { bubbles: true, detail: 0 }));
    left.dispatchEvent(new MouseEvent('click', { bubbles: true, detail: 1 }));
    expect(touched).toHaveBeenCalledOnce();
  });
});

describe('a key that must be held', () => {
  function holdKey() {
    const done = vi.fn<(touch: Touch) => void>();
    render(
      <TouchSurface clock={eventClock()} pxPerMm={PX_PER_MM} onIgnored={() => undefined}>
        <HoldKey act="end" onTouch={done}>
          End
        </HoldKey>
      </TouchSurface>,
    );
    return { key: placed('End', 0), done };
  }

  it.each([
    [700, 0],
    [900, 1],
  ])('held %i ms does it %i times', (heldMs, times) => {
    const { key, done } = holdKey();
    finger(key).tap(1_000, heldMs);
    expect(done).toHaveBeenCalledTimes(times);
  });

  it('forgives a lift of 150 ms', () => {
    const { key, done } = holdKey();
    finger(key).tap(1_000, 500);
    finger(key).tap(1_640, 200);
    expect(done).toHaveBeenCalledOnce();
  });
});
