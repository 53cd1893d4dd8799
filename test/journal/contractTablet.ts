import type { Clock, Journal, Shelf } from '../../src/journal/journal.ts';
import type { Stamp } from '../../src/record/entry.ts';
import { opening } from './smallFlight.ts';
import { testTime, type TestTime } from './testTime.ts';

/** Opens the shelf of one tablet, each time on what was kept before, as after a restart. */
export type Tablet = (clock: Clock) => Promise<Shelf>;

export interface TabletInUse {
  readonly time: TestTime;
  readonly tablet: Tablet;
  readonly shelf: Shelf;
  readonly now: () => Stamp;
}

export async function setUpTablet(tablet: Tablet): Promise<TabletInUse> {
  const time = testTime();
  return { time, tablet, shelf: await tablet(time.clock), now: time.clock.stampNow };
}

/** With a flight open on it. */
export async function flyOn(tablet: Tablet): Promise<TabletInUse & { readonly journal: Journal }> {
  const inUse = await setUpTablet(tablet);
  return { ...inUse, journal: await inUse.shelf.openFlight(opening(inUse.now())) };
}
