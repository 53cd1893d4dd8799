import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { intercept } from './intercept.ts';
import { oneTablet } from './onePage.ts';
import { gearMoved, opening, sheet } from './smallFlight.ts';

let begun: IDBTransaction[] = [];
let undo: () => void = () => {};

beforeEach(() => {
  begun = [];
  undo = intercept(IDBDatabase.prototype, 'transaction', (_, run) => {
    const tx = run();
    if (tx instanceof IDBTransaction) {
      begun.push(tx);
    }
    return tx;
  });
});
afterEach(() => undo());

// A relaxed write lost the last 9 s of a simulated power cut; an unset durability is relaxed in Chromium from 121.
it('asks for strict durability in every transaction that writes', async () => {
  const tablet = oneTablet();
  const now = tablet.time.clock.stampNow;
  const { shelf } = await tablet.open();
  const journal = await shelf.openFlight(opening(now()));
  await journal.append(gearMoved(now()));
  await shelf.keepSheet(sheet);
  await shelf.removeSheet(sheet.id);
  const other = await oneTablet().open();
  await other.shelf.takeIn(journal.entries());
  await (await other.shelf.journalOf(journal.flight)).append(gearMoved(now()));

  const writing = begun.filter(({ mode }) => mode === 'readwrite');
  expect(writing).toHaveLength(6);
  expect(writing.map(({ durability }) => durability)).toEqual(writing.map(() => 'strict'));
});

it('brings what waits in the queue to the disk together, at most 32 at a time', async () => {
  const tablet = oneTablet();
  const now = tablet.time.clock.stampNow;
  const journal = await (await tablet.open()).shelf.openFlight(opening(now()));
  begun = [];
  await Promise.all(Array.from({ length: 66 }, () => journal.append(gearMoved(now()))));
  // The first goes at once; 65 wait meanwhile.
  expect(begun.map(({ mode }) => mode)).toEqual(Array.from({ length: 4 }, () => 'readwrite'));
});
