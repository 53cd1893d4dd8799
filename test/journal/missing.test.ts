import 'fake-indexeddb/auto';
import { deleteDB, openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { checkChains } from '../../src/record/chain.ts';
import type { Entry } from '../../src/record/entry.ts';
import { union } from '../../src/record/merge.ts';
import { headOf } from '../../src/journal/ownLog.ts';
import { oneTablet } from './onePage.ts';
import { closing, gearMoved, noted, opening } from './smallFlight.ts';
import { letPass, settled } from './standIn.ts';

/** A flight of three entries whose window was closed. */
async function recorded() {
  const tablet = oneTablet();
  const now = tablet.time.clock.stampNow;
  const { shelf } = await tablet.open();
  const journal = await shelf.openFlight(opening(now()));
  await journal.append(noted(now(), 'one'));
  await journal.append(noted(now(), 'two'));
  const entries = journal.entries();
  return { tablet, now, shelf, journal, flight: journal.flight, entries };
}

/** Takes the last entry from the disk behind the journal's back, as if an older image of it had come back. */
async function loseLast(databaseName: string, own: readonly Entry[]) {
  const [before, last] = own.slice(-2);
  if (before === undefined || last === undefined) {
    throw new RangeError('there must be two entries to lose the last');
  }
  const db = await openDB(databaseName);
  const tx = db.transaction(['lines', 'heads'], 'readwrite');
  await tx.objectStore('lines').delete([last.rec, last.seq]);
  await tx.objectStore('heads').put(headOf(before));
  await tx.done;
  db.close();
}

const words = (entries: readonly Entry[]) =>
  entries.flatMap((entry) => (entry.kind === 'deviceNoted' ? [entry.body.words] : [entry.kind]));

describe('a log that is not what the tablet remembers', () => {
  it('says at the start what is missing, and goes on under a new recorder', async () => {
    const { tablet, now, journal, flight, entries } = await recorded();
    await journal.close();
    await loseLast(tablet.ports.databaseName, entries);

    const again = await (await tablet.open()).shelf.journalOf(flight);
    expect(again.status().trouble).toEqual({ kind: 'missing', expectedSeq: 3, foundSeq: 2 });
    expect(again.recorder()).toBeNull();
    const written = await again.append(gearMoved(now()));
    expect(written.rec).not.toBe(journal.recorder());
    expect(words(again.entries())).toEqual([
      'flightOpened',
      'one',
      'recorderJoined',
      'log missing: expected 3 entries, found 2',
      'gearMoved',
    ]);
    expect(again.entries()[2]).toMatchObject({ body: { purpose: 'inFlight' } });
    expect(again.status().trouble).toMatchObject({ kind: 'missing' });
  });

  it('is whole again once a copy is taken in, and no later start says otherwise', async () => {
    const { tablet, now, journal, flight, entries } = await recorded();
    await journal.close();
    await loseLast(tablet.ports.databaseName, entries);
    const { shelf } = await tablet.open();
    const again = await shelf.journalOf(flight);
    await again.append(gearMoved(now()));
    expect(await shelf.takeIn(entries)).toEqual({ flight, outcome: { added: 1, known: 2 } });
    expect(again.status().trouble).toBeNull();
    expect(checkChains(again.entries())).toEqual([]);
    const whole = again.entries();
    const recorder = again.recorder();
    await again.close();

    const later = await (await tablet.open()).shelf.journalOf(flight);
    expect(later.status().trouble).toBeNull();
    expect(later.entries()).toEqual(whole);
    expect(later.recorder()).toBe(recorder);
  });

  it('does not write on under the old number when only the copy made it whole', async () => {
    const { tablet, now, journal, flight, entries } = await recorded();
    await journal.close();
    await loseLast(tablet.ports.databaseName, entries);
    const { shelf } = await tablet.open();
    await shelf.takeIn(entries);
    const again = await shelf.journalOf(flight);
    expect(again.status().trouble).toBeNull();
    const written = await again.append(gearMoved(now()));
    expect(written.rec).not.toBe(journal.recorder());
    expect(checkChains(again.entries())).toEqual([]);
  });

  it('says so when the whole database is gone, and never begins a new log silently', async () => {
    const { tablet, now, shelf, journal, flight, entries } = await recorded();
    await journal.close();
    await deleteDB(tablet.ports.databaseName);
    expect(await shelf.flights()).toEqual([]);

    const { shelf: next } = await tablet.open();
    expect(await next.openedFlight()).toBe(flight);
    const again = await next.journalOf(flight);
    expect(again.status().trouble).toEqual({ kind: 'missing', expectedSeq: 3, foundSeq: 0 });
    await again.append(closing(now(), 'aborted'));
    expect(await next.openedFlight()).toBeNull();

    expect(await next.takeIn(entries)).toEqual({ flight, outcome: { added: 3, known: 0 } });
    expect(again.status().trouble).toBeNull();
    expect(await next.flights()).toMatchObject([
      { flight, title: 'Wing sweep 3', state: 'aborted', entries: 6 },
    ]);
  });

  it('brings back from memory what the disk lost under an open flight', async () => {
    const { tablet, now, journal, flight, entries } = await recorded();
    expect(journal.status().trouble).toBeNull();
    await deleteDB(tablet.ports.databaseName);
    await letPass(tablet.time, 1_000);
    expect(journal.status().trouble).toEqual({ kind: 'missing', expectedSeq: 3, foundSeq: 0 });
    await journal.append(gearMoved(now()));
    await journal.close();

    const again = await (await tablet.open()).shelf.journalOf(flight);
    expect(again.status().trouble).toBeNull();
    expect(again.entries()).toEqual(expect.arrayContaining([...entries]));
    expect(again.entries()).toHaveLength(6);
    expect(checkChains(again.entries())).toEqual([]);
  });

  it('keeps a touch once that was saved beside a gap, and fills the gap from memory', async () => {
    const { tablet, now, journal, flight, entries } = await recorded();
    await loseLast(tablet.ports.databaseName, entries);
    const saved = journal.append(noted(now(), 'beside the gap'));
    await letPass(tablet.time, 1_000);
    expect((await saved).seq).toBe(4);
    expect(journal.status().trouble).toEqual({ kind: 'missing', expectedSeq: 3, foundSeq: 2 });
    const next = await journal.append(gearMoved(now()));
    expect(next.rec).not.toBe((await saved).rec);
    const all = journal.entries();
    await journal.close();

    const again = await (await tablet.open()).shelf.journalOf(flight);
    expect(again.entries()).toEqual(all);
    expect(words(all).filter((it) => it === 'beside the gap')).toHaveLength(1);
    expect(again.status().trouble).toBeNull();
    expect(checkChains(all)).toEqual([]);
  });

  it('says fork when the remembered end of the log is another one', async () => {
    const { tablet, journal, flight, entries } = await recorded();
    await journal.close();
    const mark = `kneeline-canary-${journal.recorder() ?? ''}`;
    const remembered = JSON.parse(tablet.ports.memory.getItem(mark) ?? '');
    const other = JSON.stringify({ ...remembered, headHash: 'f'.repeat(64) });
    tablet.ports.memory.setItem(mark, other);
    const again = await (await tablet.open()).shelf.journalOf(flight);
    expect(again.status().trouble).toEqual({ kind: 'fork', seq: 3 });
    expect(again.entries()).toEqual(entries);
  });

  it('takes marks that nobody can read for none', async () => {
    const { tablet, journal, flight } = await recorded();
    await journal.close();
    for (const text of ['', 'null', '{}', '{"flight":1,"rec":"x","seq":"3"}', '[']) {
      tablet.ports.memory.setItem('kneeline-canary-x', text);
      const again = await (await tablet.open()).shelf.journalOf(flight);
      expect(again.status().trouble).toBeNull();
      await again.close();
    }
  });

  it('counts a line that cannot be read as missing', async () => {
    const { tablet, journal, flight, entries } = await recorded();
    await journal.close();
    const db = await openDB(tablet.ports.databaseName);
    const tx = db.transaction('lines', 'readwrite');
    await tx.store.put({ line: '{"v":2}' }, [journal.recorder() ?? '', 2]);
    await tx.done;
    db.close();
    const again = await (await tablet.open()).shelf.journalOf(flight);
    expect(again.status().trouble).toEqual({ kind: 'missing', expectedSeq: 3, foundSeq: 1 });
    await again.merge(entries);
    expect(again.entries()).toEqual(entries);
    expect(again.status().trouble).toBeNull();
    await again.close();
    const later = await (await tablet.open()).shelf.journalOf(flight);
    expect(later.entries()).toEqual(entries);
    expect(later.status().trouble).toBeNull();
  });

  it('lists a flight once, with what was merged into it', async () => {
    const { tablet, flight, shelf, journal, now } = await recorded();
    const other = oneTablet();
    const { shelf: there } = await other.open();
    await there.takeIn(journal.entries());
    const joined = await there.journalOf(flight);
    await joined.append(gearMoved(now()));
    await shelf.takeIn(union(joined.entries(), journal.entries()));
    await settled();
    expect(await shelf.flights()).toMatchObject([{ flight, entries: 5, state: 'open' }]);
    expect(tablet.locks?.held()).toHaveLength(2);
  });
});
