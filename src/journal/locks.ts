import type { Locks } from './ports.ts';

export interface Claim {
  /** Whether it was ours at once. When not, `onFreed` is called once it is. */
  readonly held: boolean;
  readonly release: () => void;
}

/** Claims a name for this window alone, and waits in line for it when another window has it. */
export async function claim(
  locks: Locks | null,
  name: string,
  onFreed: () => void,
): Promise<Claim> {
  if (locks === null) {
    return { held: true, release: () => {} };
  }
  const { released, release } = hold();
  const waiting = new AbortController();
  const held = await new Promise<boolean>((answer) => {
    locks
      .request(name, { ifAvailable: true }, (lock) => {
        answer(lock !== null);
        return lock === null ? undefined : released;
      })
      // A browser that refuses to lock must not keep the scribe from writing.
      .catch(() => answer(true));
  });
  if (!held) {
    locks
      .request(name, { signal: waiting.signal }, () => {
        onFreed();
        return released;
      })
      .catch(() => {
        // Called off.
      });
  }
  return {
    held,
    release: () => {
      waiting.abort();
      release();
    },
  };
}

/** Holds a name together with other windows. Returns the way to let go. */
export function share(locks: Locks | null, name: string): () => void {
  const { released, release } = hold();
  locks
    ?.request(name, { mode: 'shared' }, () => released)
    .catch(() => {
      // A browser that refuses to lock: the worker may install, recording goes on.
    });
  return release;
}

function hold() {
  let release: () => void = () => {};
  const released = new Promise<void>((resolve) => {
    release = resolve;
  });
  return { released, release };
}
