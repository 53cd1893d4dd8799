import { describe, expect, it } from 'vitest';
import { epochMs } from '../../src/record/brand.ts';
import { fileJournal, replayJournal } from '../../src/journal/replay.ts';
import { memoryShelf } from './memoryJournal.ts';
import { gearMoved, noted, opening, SCRIBE } from './smallFlight.ts';
import { testTime } from './testTime.ts';

async function recorded() {
  const time = testTime();
  const shelf = memoryShelf({ clock: time.clock, device: 'tablet 1' });
  const journal = await shelf.openFlight(opening(time.clock.stampNow()));
  const startMs = time.clock.now();
  for (const words of ['one', 'two', 'three']) {
    time.advance(60_000);
    await journal.append(noted(time.clock.stampNow(), words));
  }
  return { flight: journal.flight, entries: journal.entries(), startMs, time };
}

describe('replay', () => {
  it('shows what was touched up to the moment it is moved to', async () => {
    const { flight, entries, startMs } = await recorded();
    const { journal, reveal } = replayJournal(flight, entries.toReversed());
    expect(journal.entries()).toEqual([]);
    reveal(epochMs(startMs + 60_000));
    expect(journal.entries()).toEqual(entries.slice(0, 2));
    reveal(epochMs(startMs + 179_999));
    expect(journal.entries()).toEqual(entries.slice(0, 3));
    reveal(epochMs(startMs + 3_600_000));
    expect(journal.entries()).toEqual(entries);
  });

  it('never takes back, and tells its listeners only of what is new', async () => {
    const { flight, entries, startMs } = await recorded();
    const { journal, reveal } = replayJournal(flight, entries);
    let calls = 0;
    const stop = journal.subscribe(() => {
      calls += 1;
    });
    reveal(epochMs(startMs + 60_000));
    const shown = journal.entries();
    reveal(epochMs(startMs));
    reveal(epochMs(startMs + 60_001));
    expect(journal.entries()).toBe(shown);
    expect(calls).toBe(1);
    stop();
    reveal(epochMs(startMs + 120_000));
    expect(calls).toBe(1);
  });

  it('takes no entries', async () => {
    const { flight, entries, time } = await recorded();
    const { journal } = replayJournal(flight, entries);
    await expect(journal.append(gearMoved(time.clock.stampNow()))).rejects.toThrow('replay');
    await expect(journal.merge(entries)).rejects.toThrow('replay');
    expect(journal.status()).toEqual({
      saved: 0,
      pending: [],
      unsaved: [],
      writer: { kind: 'readOnly', because: 'replay' },
      trouble: null,
      head: null,
    });
    expect(journal.recorder()).toBeNull();
  });
});

describe('a file looked at', () => {
  it('shows everything and takes nothing', async () => {
    const { flight, entries, time } = await recorded();
    const journal = fileJournal(flight, entries);
    expect(journal.entries()).toEqual(entries);
    expect(journal.author()).toEqual(SCRIBE);
    expect(journal.status().writer).toEqual({ kind: 'readOnly', because: 'fileOnly' });
    await expect(journal.append(gearMoved(time.clock.stampNow()))).rejects.toThrow('file');
  });
});
