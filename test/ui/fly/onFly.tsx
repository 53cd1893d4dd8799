import { act, render, screen } from '@testing-library/react';
import { vi } from 'vitest';
import type { Journal } from '../../../src/journal/journal.ts';
import type { Author } from '../../../src/record/entry.ts';
import { viewOf, type FlightView } from '../../../src/record/flight.ts';
import type { FlightSheet } from '../../../src/record/sheet.ts';
import type { Cues } from '../../../src/ui/fly/cues.ts';
import { Fly } from '../../../src/ui/fly/Fly.tsx';
import type { Located } from '../../../src/ui/ports.ts';
import { openSettings } from '../../../src/ui/kit/settings.ts';
import { scriptA } from '../../flights/flightA.ts';
import { sheetOfScript } from '../../flights/sheetOfScript.ts';
import { memoryShelf } from '../../journal/memoryJournal.ts';
import { eventClock, finger, START_MS } from '../kit/fingers.tsx';

export interface OnFly {
  readonly journal: Journal;
  readonly view: () => FlightView;
  /** Touches the target of that name for 80 ms, so many milliseconds after the last touch. */
  readonly tap: (name: string, afterMs?: number, heldMs?: number) => Promise<void>;
  /** Page time of the last contact. */
  readonly lastMs: () => number;
  readonly words: (name: string) => string;
  readonly has: (name: string) => boolean;
  /** Lets time pass without a touch, and the second hand move once. Wants fake timers. */
  readonly wait: (ms: number) => void;
}

/** Fly on a memory journal with the flight sheet of the demo flight, on a 10 inch tablet across. */
export async function onFly(
  change: Partial<FlightSheet> = {},
  cues?: Cues,
  author: Author = { author: 'S1', role: 'scribe' },
  locate?: () => Promise<Located>,
): Promise<OnFly> {
  localStorage.clear();
  Object.defineProperty(window, 'innerWidth', { value: 1180, configurable: true });
  Object.defineProperty(window, 'innerHeight', { value: 820, configurable: true });
  const clock = eventClock();
  const shelf = memoryShelf({ clock, device: 'tablet' });
  const journal = await shelf.openFlight({
    nature: 'flight',
    title: 'Trial',
    date: '2032-06-02',
    device: 'tablet',
    sheet: { ...sheetOfScript(scriptA), ...change },
    author,
    stamp: clock.stampNow(),
  });
  render(
    <Fly
      journal={journal}
      clock={clock}
      settings={openSettings(localStorage)}
      awake={() => true}
      {...(cues !== undefined && { cues })}
      {...(locate !== undefined && { locate })}
      leave={{ toBrief: nothing, toDebrief: nothing, toManual: nothing, onEnded: nothing }}
    />,
  );
  let nowMs = 10_000;
  let touches = 0;
  const key = (name: string): HTMLElement => {
    const found = document.querySelector<HTMLElement>(`[data-act="${name}"]`);
    if (found === null) {
      throw new RangeError(`Fly must show ${name}, it shows ${shown().join(' ')}`);
    }
    return found;
  };
  const settle = (): Promise<void> =>
    act(async () => {
      await Promise.resolve();
    });
  return {
    journal,
    view: () => viewOf(journal.entries()),
    tap: async (name, afterMs = 1_000, heldMs = 80) => {
      nowMs += afterMs;
      clock.set(nowMs);
      // Nothing is laid out here, so each touched key is given a place of its own, far from the one before.
      const x = (touches % 50) * 200;
      touches += 1;
      const target = key(name);
      target.getBoundingClientRect = () => new DOMRect(x, 0, 100, 100);
      finger(target).tap(nowMs, heldMs, { x: x + 50 });
      await settle();
      await settle();
    },
    lastMs: () => START_MS + nowMs,
    words: (name) => key(name).textContent ?? '',
    has: (name) => document.querySelector(`[data-act="${name}"]`) !== null,
    wait: (ms) => {
      nowMs += ms;
      clock.set(nowMs);
      act(() => {
        vi.advanceTimersByTime(250);
      });
    },
  };
}

function nothing(): void {}

function shown(): readonly string[] {
  return screen.getAllByRole('button').map((each) => each.dataset['act'] ?? '');
}
