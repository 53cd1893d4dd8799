import { useEffect, useRef, type PointerEvent, type RefObject } from 'react';
import { placeWithin } from '../../kit/zoomed.ts';
import type { Place } from './hitTest.ts';

const DRAG_FROM_PX = 8;

export interface ChartGestures {
  readonly onTap: (place: Place) => void;
  /** Moves the window by as much as the finger moved. */
  readonly onPan: (byPx: number) => void;
  /** `factor` below 1 narrows the window about `xPx`. */
  readonly onZoom: (factor: number, xPx: number) => void;
}

interface Touches {
  readonly at: Map<number, Place>;
  start: Place | null;
  isDrag: boolean;
}

/** One finger or the mouse drags, two fingers pinch, the wheel zooms; a touch that goes nowhere is a tap. */
export function useChartGestures(
  target: RefObject<HTMLElement | null>,
  gestures: ChartGestures,
): {
  readonly onPointerDown: (event: PointerEvent) => void;
  readonly onPointerMove: (event: PointerEvent) => void;
  readonly onPointerUp: (event: PointerEvent) => void;
  readonly onPointerCancel: (event: PointerEvent) => void;
} {
  const touches = useRef<Touches>({ at: new Map(), start: null, isDrag: false });
  useWheel(target, gestures);

  const placeIn = (event: PointerEvent): Place => placeWithin(event.currentTarget, event);
  const release = (event: PointerEvent): void => {
    touches.current.at.delete(event.pointerId);
    if (touches.current.at.size === 0) {
      touches.current.start = null;
      touches.current.isDrag = false;
    }
  };
  return {
    onPointerDown: (event) => {
      event.currentTarget.setPointerCapture(event.pointerId);
      const now = touches.current;
      const place = placeIn(event);
      now.start = now.at.size === 0 ? place : now.start;
      now.isDrag = now.isDrag || now.at.size > 0;
      now.at.set(event.pointerId, place);
    },
    onPointerMove: (event) => {
      const now = touches.current;
      const before = now.at.get(event.pointerId);
      if (before === undefined) {
        return;
      }
      const place = placeIn(event);
      const other = [...now.at].find(([id]) => id !== event.pointerId)?.[1];
      if (other !== undefined) {
        const spanBefore = Math.max(20, Math.abs(before.xPx - other.xPx));
        const spanNow = Math.max(20, Math.abs(place.xPx - other.xPx));
        gestures.onZoom(spanBefore / spanNow, (place.xPx + other.xPx) / 2);
        gestures.onPan((place.xPx - before.xPx) / 2);
      } else if (now.isDrag || Math.abs(place.xPx - (now.start?.xPx ?? 0)) > DRAG_FROM_PX) {
        now.isDrag = true;
        gestures.onPan(place.xPx - before.xPx);
      } else {
        return;
      }
      now.at.set(event.pointerId, place);
    },
    onPointerUp: (event) => {
      const { isDrag, start } = touches.current;
      const wasDown = touches.current.at.has(event.pointerId);
      release(event);
      if (wasDown && !isDrag && start !== null) {
        gestures.onTap(start);
      }
    },
    onPointerCancel: release,
  };
}

/** React listens to the wheel passively, which could not keep the page from scrolling under the chart. */
function useWheel(target: RefObject<HTMLElement | null>, gestures: ChartGestures): void {
  const latest = useRef(gestures);
  useEffect(() => {
    latest.current = gestures;
  });
  useEffect(() => {
    const element = target.current;
    if (element === null) {
      return;
    }
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const sideways = event.shiftKey ? event.deltaY : event.deltaX;
      if (Math.abs(sideways) > Math.abs(event.shiftKey ? 0 : event.deltaY)) {
        latest.current.onPan(-sideways);
      } else {
        latest.current.onZoom(Math.exp(event.deltaY * 0.0015), placeWithin(element, event).xPx);
      }
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [target]);
}
