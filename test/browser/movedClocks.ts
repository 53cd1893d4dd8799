/**
 * Runs in the page before anything else, so it must stand on its own. Wall clock, monotonic clock and event times move
 * as one: a clock that alone was moved would be a clock that stepped.
 */
export function moveClocks(startShiftMs: number): void {
  const storageKey = 'test-clock-shift';
  let shiftMs = startShiftMs;
  try {
    // A reload goes on from where the page's time had got to.
    shiftMs = Number(sessionStorage.getItem(storageKey) ?? startShiftMs);
  } catch {
    // no storage in this frame: it keeps the start shift
  }
  const RealDate = Date;
  const realNow = RealDate.now.bind(RealDate);
  const realPerformanceNow = performance.now.bind(performance);
  const originShiftMs = shiftMs;
  const sinceStart = () => shiftMs - originShiftMs;
  const movedNow = () => realNow() + shiftMs;
  globalThis.Date = new Proxy(RealDate, {
    construct: (date, given) => Reflect.construct(date, given.length === 0 ? [movedNow()] : given),
    get: (date, key) => (key === 'now' ? movedNow : Reflect.get(date, key)),
  });
  performance.now = () => realPerformanceNow() + sinceStart();
  const timeStamp = Object.getOwnPropertyDescriptor(Event.prototype, 'timeStamp');
  Object.defineProperty(Event.prototype, 'timeStamp', {
    get(this: Event): number {
      return Number(timeStamp?.get?.call(this)) + sinceStart();
    },
  });
  Object.assign(globalThis, {
    realNow,
    moveClocksTo: (newShiftMs: number) => {
      shiftMs = newShiftMs;
      try {
        sessionStorage.setItem(storageKey, String(shiftMs));
      } catch {
        // no storage: a reload starts again from the start shift
      }
    },
  });
}
