import { deleteDB } from 'idb';
import { expect, it } from 'vitest';
import { checkChains } from '../../src/record/chain.ts';
import { openShelf } from '../../src/journal/idbJournal.ts';
import type { Journal } from '../../src/journal/journal.ts';
import { browserClock } from '../../src/journal/stamp.ts';
import { browserTablet } from './browserTablet.ts';
import { intercept } from './intercept.ts';
import { gearMoved, noted, opening } from './smallFlight.ts';

const clock = browserClock();

async function windowOf(ports: ReturnType<typeof browserTablet>) {
  return openShelf({ clock, device: 'tablet 1', ports });
}

/** Resolves once the journal is in the state, told by the journal itself. */
function becomes(journal: Journal, isSo: () => boolean): Promise<void> {
  return new Promise((resolve) => {
    const look = () => {
      if (isSo()) {
        stop();
        resolve();
      }
    };
    const stop = journal.subscribe(look);
    look();
  });
}

it('one window writes, the other waits and goes on with the same chain', async () => {
  const ports = browserTablet();
  const writing = await (await windowOf(ports)).openFlight(opening(clock.stampNow()));
  const reading = await (await windowOf(ports)).journalOf(writing.flight);
  expect(reading.status().writer).toEqual({ kind: 'anotherWindow' });
  await expect(reading.append(gearMoved(clock.stampNow()))).rejects.toThrow('may not write');
  const last = await writing.append(gearMoved(clock.stampNow()));

  await writing.close();
  await becomes(reading, () => reading.status().writer.kind === 'writing');
  const next = await reading.append(gearMoved(clock.stampNow(), 'down'));
  expect(next).toMatchObject({ rec: last.rec, seq: 3, prev: last.id });
  expect(checkChains(reading.entries())).toEqual([]);
  await reading.close();
});

it('holds back a new release while a flight is open', async () => {
  const ports = browserTablet();
  const names = async () => {
    const { held } = await navigator.locks.query();
    return held?.flatMap(({ name, mode }) =>
      name?.startsWith(ports.databaseName) === true ? [`${mode} ${name.split('/')[1]}`] : [],
    );
  };
  const journal = await (await windowOf(ports)).openFlight(opening(clock.stampNow()));
  expect(await names()).toEqual(
    expect.arrayContaining([
      'shared kneeline-flight-open',
      `exclusive kneeline-recorder-${journal.flight}`,
    ]),
  );
  await journal.close();
  // A request of our own comes after the release in the manager's queue.
  await navigator.locks.request(`${ports.databaseName}/kneeline-flight-open`, () => {});
  expect(await names()).toEqual([]);
});

it('asks this browser for strict durability, and gets it', async () => {
  const begun: IDBTransaction[] = [];
  const undo = intercept(IDBDatabase.prototype, 'transaction', (_, run) => {
    const tx = run();
    if (tx instanceof IDBTransaction && tx.mode === 'readwrite') {
      begun.push(tx);
    }
    return tx;
  });
  const journal = await (await windowOf(browserTablet())).openFlight(opening(clock.stampNow()));
  await journal.append(gearMoved(clock.stampNow()));
  undo();
  expect(begun.map(({ durability }) => durability)).toEqual(['strict', 'strict']);
  await journal.close();
});

it('brings back from memory what this browser lost under an open flight', async () => {
  const ports = browserTablet();
  const journal = await (await windowOf(ports)).openFlight(opening(clock.stampNow()));
  await journal.append(noted(clock.stampNow(), 'one'));
  const entries = journal.entries();
  await deleteDB(ports.databaseName);
  await becomes(journal, () => journal.status().trouble !== null);
  expect(journal.status().trouble).toEqual({ kind: 'missing', expectedSeq: 2, foundSeq: 0 });
  await journal.append(gearMoved(clock.stampNow()));
  await journal.close();

  const again = await (await windowOf(ports)).journalOf(journal.flight);
  expect(again.entries()).toEqual(expect.arrayContaining([...entries]));
  expect(again.status().trouble).toBeNull();
  expect(checkChains(again.entries())).toEqual([]);
  await again.close();
});

it('remembers in the storage of this browser where its log ends', async () => {
  const ports = { ...browserTablet(), memory: localStorage };
  const journal = await (await windowOf(ports)).openFlight(opening(clock.stampNow()));
  const last = await journal.append(gearMoved(clock.stampNow()));
  window.dispatchEvent(new PageTransitionEvent('pagehide'));
  const mark = localStorage.getItem(`kneeline-canary-${last.rec}`);
  expect(JSON.parse(mark ?? '')).toEqual({
    flight: journal.flight,
    rec: last.rec,
    seq: 2,
    headHash: last.id,
    open: true,
  });
  expect(localStorage.getItem('kneeline-session')).toBeNull();
  window.dispatchEvent(new PageTransitionEvent('pageshow'));
  expect(localStorage.getItem('kneeline-session')).toBe('open');
  await journal.close();
  localStorage.clear();
});
