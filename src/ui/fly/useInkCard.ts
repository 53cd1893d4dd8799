import { useRef, useState, type PointerEvent } from 'react';
import type { Stamp } from '../../record/entry.ts';
import { PalmWatch } from '../kit/palmWatch.ts';
import { capture } from '../kit/touchLook.ts';
import type { Fly } from './flyContext.ts';
import { longer, onCard } from './inkStroke.ts';

type CardEvent = PointerEvent<HTMLElement>;

interface Drawing {
  readonly pointerId: number;
  readonly first: Stamp;
  readonly stroke: readonly number[];
}

/**
 * The one place of Fly where a drag is the input. One finger draws; a second contact is a resting hand and is left
 * alone, a palm takes the stroke under way back, and a stroke ends where it leaves the card.
 */
export function useInkCard(given: {
  readonly fly: Fly;
  /** How many numbers the card holds already. */
  readonly drawn: number;
  readonly onStroke: (stroke: readonly number[], first: Stamp) => void;
}) {
  const { fly, drawn, onStroke } = given;
  const palms = useRef(new PalmWatch());
  // Contacts come faster than the screen is drawn: what a handler must know stands here, what the eye sees in the state.
  const drawing = useRef<Drawing | null>(null);
  const [stroke, setStroke] = useState<readonly number[] | null>(null);
  const draw = (next: Drawing | null): void => {
    drawing.current = next;
    setStroke(next?.stroke ?? null);
  };
  const finish = (event: CardEvent): void => {
    const done = drawing.current;
    if (done === null || done.pointerId !== event.pointerId) {
      return;
    }
    draw(null);
    if (done.stroke.length > 0) {
      onStroke(done.stroke, done.first);
    }
  };
  return {
    /** The stroke under the finger. */
    stroke,
    handlers: {
      onPointerDown: (event: CardEvent): void => {
        const stamp = fly.clock.stampOf(event.nativeEvent);
        if (palms.current.see(event.nativeEvent, stamp.mono, fly.layout.pxPerMm) !== null) {
          draw(null);
          return;
        }
        const point = onCard(event.currentTarget.getBoundingClientRect(), event);
        if (drawing.current === null && point !== null) {
          capture(event.currentTarget, event.pointerId);
          draw({ pointerId: event.pointerId, first: stamp, stroke: longer([], point, drawn) });
        }
      },
      onPointerMove: (event: CardEvent): void => {
        const box = event.currentTarget.getBoundingClientRect();
        const { nativeEvent } = event;
        for (const each of [...nativeEvent.getCoalescedEvents(), nativeEvent]) {
          const now = drawing.current;
          if (now === null || now.pointerId !== event.pointerId) {
            return;
          }
          const point = onCard(box, each);
          if (point === null) {
            finish(event);
          } else {
            draw({ ...now, stroke: longer(now.stroke, point, drawn) });
          }
        }
      },
      onPointerUp: finish,
      onPointerCancel: finish,
    },
  };
}
