import { intercept } from '../../journal/intercept.ts';

/** The turns of the stand-in for the database, taken one by one, so that one seed is one course of events. */
export interface Turns {
  /** Takes turns until nothing is left to do, or so many: a closing that waits for a held transaction asks for ever. */
  readonly take: (most?: number) => Promise<void>;
  readonly restore: () => void;
}

/** A write of the largest batch takes about forty turns. */
const MANY = 250;

export function heldTurns(): Turns {
  const real = globalThis.setImmediate;
  const waiting: (() => void)[] = [];
  const restore = intercept(globalThis, 'setImmediate', (_self, _run, [task]) => {
    waiting.push(() => {
      if (typeof task === 'function') Reflect.apply(task, undefined, []);
    });
  });
  /** Everything that promises have to say is said before the next turn. */
  const said = () =>
    new Promise<void>((resolve) => {
      real(resolve);
    });
  return {
    take: async (most = MANY) => {
      await said();
      for (let taken = 0; taken < most; taken += 1) {
        const next = waiting.shift();
        if (next === undefined) return;
        next();
        await said();
      }
    },
    restore,
  };
}
