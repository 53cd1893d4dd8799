import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import { checkChains } from '../../src/record/chain.ts';
import { oneTablet } from './onePage.ts';
import { closing, gearMoved, noted, opening, withdrawing } from './smallFlight.ts';
import { letPass, settled } from './standIn.ts';

async function twoWindows(tablet = oneTablet()) {
  const now = tablet.time.clock.stampNow;
  const first = await tablet.open();
  const writing = await first.shelf.openFlight(opening(now()));
  const second = await tablet.open();
  const reading = await second.shelf.journalOf(writing.flight);
  return { tablet, now, first, second, writing, reading };
}

describe('two windows on one flight', () => {
  it('lets one write; the other reads and says why', async () => {
    const { now, writing, reading } = await twoWindows();
    expect(writing.status().writer).toEqual({ kind: 'writing' });
    expect(reading.status().writer).toEqual({ kind: 'anotherWindow' });
    await writing.append(gearMoved(now()));
    await expect(reading.append(gearMoved(now()))).rejects.toThrow('may not write');
    expect(reading.status().pending).toEqual([]);
  });

  it('shows in the reading window what was written, once that is looked at', async () => {
    const { now, second, writing, reading } = await twoWindows();
    await writing.append(gearMoved(now()));
    second.ports.show();
    await settled();
    expect(reading.entries()).toEqual(writing.entries());
    expect(reading.status().writer).toEqual({ kind: 'anotherWindow' });
  });

  it('hands the pen to the reading window when the writing one closes', async () => {
    const { now, writing, reading } = await twoWindows();
    const last = await writing.append(gearMoved(now()));
    await writing.close();
    await settled();
    expect(reading.status().writer).toEqual({ kind: 'writing' });
    expect(reading.author()).toEqual(writing.author());
    const next = await reading.append(gearMoved(now(), 'down'));
    expect(next).toMatchObject({ rec: last.rec, seq: last.seq + 1, prev: last.id });
    expect(checkChains(reading.entries())).toEqual([]);
  });

  it('waits for what is pending before it hands the pen over', async () => {
    const { now, writing, reading } = await twoWindows();
    const saved = writing.append(gearMoved(now()));
    await writing.close();
    await settled();
    expect(reading.entries()).toContainEqual(await saved);
  });

  it('does not hand the pen to a window that stopped waiting', async () => {
    const { tablet, writing, reading } = await twoWindows();
    await reading.close();
    await writing.close();
    expect(tablet.locks?.held()).toEqual([]);
  });

  it('takes nobody the pen by looking at what another window writes', async () => {
    const tablet = oneTablet();
    const first = await tablet.open();
    const writing = await first.shelf.openFlight(opening(tablet.time.clock.stampNow()));
    const held = tablet.locks?.held();
    const second = await tablet.open();
    expect(await second.shelf.entriesOf(writing.flight)).toEqual(writing.entries());
    expect(tablet.locks?.held()).toEqual(held);
    await writing.close();
    await first.shelf.entriesOf(writing.flight);
    expect(tablet.locks?.held()).toEqual([]);
  });

  it('makes one recorder when both begin to write on a flight that came as a file', async () => {
    const { now, writing } = await twoWindows();
    const desk = oneTablet();
    const [one, two] = [await desk.open(), await desk.open()];
    await one.shelf.takeIn(writing.entries());
    const journals = [
      await one.shelf.journalOf(writing.flight),
      await two.shelf.journalOf(writing.flight),
    ];
    const written = await Promise.allSettled(journals.map((it) => it.append(gearMoved(now()))));
    expect(written.map(({ status }) => status)).toEqual(['fulfilled', 'rejected']);
  });

  it('without locks: each touch is kept once, and neither chain forks', async () => {
    const { tablet, now, writing, reading } = await twoWindows(oneTablet({ withLocks: false }));
    const one = writing.append(noted(now(), 'one'));
    const two = reading.append(noted(now(), 'two'));
    await letPass(tablet.time, 1_000);
    await writing.append(noted(now(), 'three'));
    expect(reading.status().trouble).toEqual({ kind: 'fork', seq: 2 });
    expect((await one).rec).not.toBe((await two).rec);

    const again = await (await tablet.open()).shelf.journalOf(writing.flight);
    const kept = again
      .entries()
      .flatMap((it) => (it.kind === 'deviceNoted' ? [it.body.words] : []));
    expect(new Set(kept)).toEqual(
      new Set(['one', 'two', 'three', 'recorder used twice at entry 2']),
    );
    expect(kept).toHaveLength(4);
    expect(checkChains(again.entries())).toEqual([]);
  });
});

describe('while a flight is open', () => {
  const OPEN = 'kneeline-flight-open';

  it('holds the name that keeps a new release from installing, until the flight is closed', async () => {
    const { shelf } = await oneTablet().open();
    expect(await shelf.openedFlight()).toBeNull();
    const tablet = oneTablet();
    const journal = await (
      await tablet.open()
    ).shelf.openFlight(opening(tablet.time.clock.stampNow()));
    expect(tablet.locks?.held()).toContain(OPEN);
    const closed = await journal.append(closing(tablet.time.clock.stampNow()));
    await settled();
    expect(tablet.locks?.held()).not.toContain(OPEN);
    await journal.append(withdrawing(tablet.time.clock.stampNow(), closed.id));
    expect(tablet.locks?.held()).toContain(OPEN);
    await journal.close();
    await settled();
    expect(tablet.locks?.held()).toEqual([]);
  });

  it('does not hold it for a flight that came as a file', async () => {
    const { writing } = await twoWindows();
    const desk = oneTablet();
    const { shelf } = await desk.open();
    await shelf.takeIn(writing.entries());
    await shelf.journalOf(writing.flight);
    expect(desk.locks?.held()).toEqual([`kneeline-recorder-${writing.flight}`]);
  });

  it('remembers a stop without a goodbye', async () => {
    const tablet = oneTablet();
    const first = await tablet.open();
    expect(first.shelf.stoppedUncleanly()).toBe(false);
    await first.shelf.openFlight(opening(tablet.time.clock.stampNow()));
    const second = await tablet.open();
    expect(second.shelf.stoppedUncleanly()).toBe(true);
    first.ports.leave();
    expect((await tablet.open()).shelf.stoppedUncleanly()).toBe(false);
    // A page kept aside comes back and the flight is still open.
    first.ports.show();
    expect((await tablet.open()).shelf.stoppedUncleanly()).toBe(true);
  });
});
