/**
 * Runs in the page before anything else, after the clocks were made movable, so it must stand on its own. What repeats
 * is remembered, so that `passTime` can let page time pass at once: the clocks move, then everything that ticks is told.
 */
export function ownTicks(): void {
  const ticking = new Map<unknown, () => void>();
  const realSetInterval = window.setInterval.bind(window);
  const realClearInterval = window.clearInterval.bind(window);
  Object.assign(window, {
    setInterval: (handler: () => void, everyMs?: number) => {
      const timer = realSetInterval(handler, everyMs);
      ticking.set(timer, handler);
      return timer;
    },
    clearInterval: (timer: number) => {
      ticking.delete(timer);
      realClearInterval(timer);
    },
  });
  const passTime = (byMs: number): void => {
    const realNow: () => number = Reflect.get(globalThis, 'realNow');
    Reflect.get(globalThis, 'moveClocksTo')(Date.now() - realNow() + byMs);
    for (const tick of ticking.values()) tick();
  };
  Object.assign(globalThis, { passTime });
}
