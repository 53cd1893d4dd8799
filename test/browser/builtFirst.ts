import { ensureBuilt } from '../../.tools/built.mjs';

/** The journeys drive what was built, so that is made first unless it stands already. */
export function setup(): void {
  if (!ensureBuilt()) throw new Error('the app must build before a journey can start');
}
