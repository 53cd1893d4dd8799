import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it } from 'vitest';
import { checkChains } from '../../src/record/chain.ts';
import type { Entry } from '../../src/record/entry.ts';
import { openShelf } from '../../src/journal/idbJournal.ts';
import type { JournalStatus } from '../../src/journal/journal.ts';
import { FAULTS, faultyDisk, type Fault, type FaultyDisk } from './faultyDisk.ts';
import { noted, opening } from './smallFlight.ts';
import { letPass, settled, storedLines } from './standIn.ts';
import { testLocks, testPorts } from './testPorts.ts';
import { testTime } from './testTime.ts';

const HEALS_AFTER_MS = 20_000;
const RED_WITHIN_MS = 2_000;

let disk: FaultyDisk | null = null;
afterEach(() => disk?.restore());

/** Four touches while the disk fails at its `atCall`-th call. @returns whether the fault happened */
async function recordThrough(fault: Fault, atCall: number, lasting: boolean): Promise<boolean> {
  const time = testTime();
  const ports = testPorts({ schedule: time.schedule });
  const open = () => openShelf({ clock: time.clock, device: 'tablet 1', ports });
  const journal = await (await open()).openFlight(opening(time.clock.stampNow()));

  const spoilt = faultyDisk(fault, atCall, lasting);
  disk = spoilt;
  const told: Entry[] = [];
  const touch = (words: string) =>
    journal.append(noted(time.clock.stampNow(), words)).then((entry) => told.push(entry));
  const touches = [touch('one')];
  await settled();
  touches.push(touch('two'), touch('three'), touch('four'));

  for (let waitedMs = 0; waitedMs < 2 * HEALS_AFTER_MS; waitedMs += 500) {
    await settled();
    // What was told as saved is on disk, whatever the disk has answered.
    expect(storedLines(ports.databaseName)).toEqual(
      expect.arrayContaining(told.map(({ line }) => line)),
    );
    if (journal.status().pending.length > 0 && waitedMs >= RED_WITHIN_MS) {
      expect(journal.status().trouble).toMatchObject({ kind: 'notSaved' });
    }
    if (waitedMs === HEALS_AFTER_MS) {
      spoilt.heal();
    }
    time.advance(500);
  }
  await Promise.all(touches);
  await settled();
  const happened = spoilt.count() > 0;
  spoilt.restore();

  expect(told.map(({ seq }) => seq)).toEqual([2, 3, 4, 5]);
  expect(journal.status()).toMatchObject({ saved: 5, pending: [], trouble: null });
  await journal.close();
  const again = await (await open()).journalOf(journal.flight);
  expect(again.entries().map(({ line }) => line)).toEqual(
    journal.entries().map(({ line }) => line),
  );
  expect(checkChains(again.entries())).toEqual([]);
  expect(again.status()).toMatchObject({ saved: 5, trouble: null });
  await again.close();
  return happened;
}

describe('a disk that fails', () => {
  describe.each(FAULTS)('with %s', (fault) => {
    it.each([
      ['once', false],
      ['until it heals', true],
    ])(
      '%s, at any call: nothing is told saved that is not, and all is saved once',
      async (_, lasting) => {
        let atCall = 1;
        while (await recordThrough(fault, atCall, lasting)) {
          atCall += 1;
        }
        // The loop has met the fault at each call of the run and ended because there are no more.
        expect(atCall).toBeGreaterThan(2);
      },
      60_000,
    );
  });

  it.each<[Fault, Extract<JournalStatus['trouble'], { kind: 'notSaved' }>['because']]>([
    ['QuotaExceededError', 'full'],
    ['InvalidStateError', 'lostConnection'],
    ['noAnswer', 'slow'],
  ])('with %s says why: %s', async (fault, because) => {
    const time = testTime();
    const ports = testPorts({ schedule: time.schedule });
    const shelf = await openShelf({ clock: time.clock, device: 'tablet 1', ports });
    const journal = await shelf.openFlight(opening(time.clock.stampNow()));
    disk = faultyDisk(fault, 1, true);
    const touchedAt = time.clock.now();
    const draft = noted(time.clock.stampNow(), 'one');
    const saved = journal.append(draft);
    await settled();
    time.advance(RED_WITHIN_MS);
    expect(journal.status().pending).toEqual([draft]);
    expect(journal.status().trouble).toMatchObject({ kind: 'notSaved', because });
    const { trouble } = journal.status();
    expect(trouble?.kind === 'notSaved' && trouble.since - touchedAt).toBeLessThanOrEqual(
      RED_WITHIN_MS,
    );

    disk.heal();
    await letPass(time, HEALS_AFTER_MS);
    await saved;
    expect(journal.status()).toMatchObject({ pending: [], trouble: null });
  });

  it('does not open a flight that cannot be saved, and opens it when it can', async () => {
    const time = testTime();
    const locks = testLocks();
    const ports = testPorts({ schedule: time.schedule, locks });
    const shelf = await openShelf({ clock: time.clock, device: 'tablet 1', ports });
    disk = faultyDisk('QuotaExceededError', 1, true);
    const refused = shelf.openFlight(opening(time.clock.stampNow())).catch((error) => error);
    await letPass(time, 11_000);
    expect(await refused).toEqual(new Error('the flight could not be saved'));
    expect(locks.held()).toEqual([]);
    disk.heal();
    await letPass(time, 20_000);
    expect(await shelf.flights()).toEqual([]);
    const journal = await shelf.openFlight(opening(time.clock.stampNow()));
    expect(journal.status()).toMatchObject({ saved: 1, trouble: null });
  });

  it('does not try without a pause while the disk is full, but at once on the next touch', async () => {
    const time = testTime();
    const ports = testPorts({ schedule: time.schedule });
    const shelf = await openShelf({ clock: time.clock, device: 'tablet 1', ports });
    const journal = await shelf.openFlight(opening(time.clock.stampNow()));
    const full = faultyDisk('QuotaExceededError', 1, true);
    disk = full;
    const saved = [journal.append(noted(time.clock.stampNow(), 'one'))];
    await letPass(time, 60_000);
    // 0, 0.25, 0.5, 1, 2 and then every 5 s: fewer than 20 in a minute.
    expect(full.count()).toBeLessThan(20);
    const before = full.count();
    saved.push(journal.append(noted(time.clock.stampNow(), 'two')));
    await settled();
    expect(full.count()).toBeGreaterThan(before);

    full.heal();
    ports.show();
    await settled();
    expect((await Promise.all(saved)).map(({ seq }) => seq)).toEqual([2, 3]);
  });
});
