import { act } from '@testing-library/react';
import type { Clock } from '../../../src/journal/journal.ts';
import { epochMs } from '../../../src/record/brand.ts';

/** Wall time at page time 0 of these tests. */
export const START_MS = Date.UTC(2032, 5, 2, 22, 0, 0);

/** A clock that goes by the time stamps of events and by what a test sets. */
export function eventClock(): Clock & { readonly set: (ms: number) => void } {
  let nowMs = 0;
  const stampAt = (ms: number) => ({
    wall: epochMs(START_MS + Math.round(ms)),
    mono: ms,
    boot: 'b',
  });
  return {
    now: () => epochMs(START_MS + Math.round(nowMs)),
    stampNow: () => stampAt(nowMs),
    stampOf: (event) => stampAt(event.timeStamp),
    set: (ms) => {
      nowMs = ms;
    },
  };
}

/** One finger on an element, at given page times: what a browser sends, stamped as the test says. */
export function finger(target: Element, pointerId = 1) {
  const send = (
    type: string,
    ms: number,
    at: { readonly x?: number; readonly y?: number; readonly size?: number } = {},
  ): void => {
    const event = new PointerEvent(type, {
      bubbles: true,
      cancelable: true,
      pointerId,
      clientX: at.x ?? 50,
      clientY: at.y ?? 50,
      width: at.size ?? 10,
      height: at.size ?? 10,
    });
    Object.defineProperty(event, 'timeStamp', { value: ms });
    act(() => {
      target.dispatchEvent(event);
    });
  };
  return {
    down: (ms: number, at?: { readonly x?: number; readonly y?: number; readonly size?: number }) =>
      send('pointerdown', ms, at),
    up: (ms: number, at?: { readonly x?: number; readonly y?: number }) =>
      send('pointerup', ms, at),
    cancel: (ms: number) => send('pointercancel', ms),
    tap: (ms: number, lastedMs = 80, at: { readonly x?: number; readonly y?: number } = {}) => {
      send('pointerdown', ms, at);
      send('pointerup', ms + lastedMs, at);
    },
  };
}
