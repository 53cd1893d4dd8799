import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { recorderId } from '../../src/record/brand.ts';
import { checkChains, sealEntry } from '../../src/record/chain.ts';
import type { Entry } from '../../src/record/entry.ts';
import { openShelf } from '../../src/journal/idbJournal.ts';
import type { Journal } from '../../src/journal/journal.ts';
import { FAULTS, faultyDisk, type Fault, type FaultyDisk } from './faultyDisk.ts';
import { gearMoved, noted, opening, SCRIBE } from './smallFlight.ts';
import { letPass, settled, storedLines } from './standIn.ts';
import { testLocks, testMemory, testPorts, type TestPorts } from './testPorts.ts';
import { testTime } from './testTime.ts';

type Step =
  | { readonly what: 'touch'; readonly times: number }
  | { readonly what: 'wait'; readonly ms: number }
  | { readonly what: 'stepClock'; readonly ms: number }
  | {
      readonly what: 'break';
      readonly fault: Fault;
      readonly atCall: number;
      readonly lasting: boolean;
    }
  | { readonly what: 'heal' | 'crash' | 'show' | 'merge' };

const anyStep: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({ what: fc.constant('touch'), times: fc.integer({ min: 1, max: 40 }) }),
  },
  {
    weight: 3,
    arbitrary: fc.record({ what: fc.constant('wait'), ms: fc.integer({ min: 1, max: 12_000 }) }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      what: fc.constant('stepClock'),
      ms: fc.integer({ min: -3_600_000, max: 3_600_000 }),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      what: fc.constant('break'),
      fault: fc.constantFrom(...FAULTS),
      atCall: fc.integer({ min: 1, max: 12 }),
      lasting: fc.boolean(),
    }),
  },
  { weight: 4, arbitrary: fc.record({ what: fc.constantFrom('heal', 'crash', 'show', 'merge') }) },
);

const wordsOf = (entries: readonly Entry[]) =>
  entries.flatMap((entry) => (entry.kind === 'deviceNoted' ? [entry.body.words ?? ''] : []));

/** A tablet through one sequence of mishaps; checks after each step and at the end. */
async function simulate(steps: readonly Step[]): Promise<void> {
  const time = testTime();
  const now = time.clock.stampNow;
  const locks = testLocks();
  const kept = { locks, memory: testMemory(), databaseName: `sim-${(runs += 1)}` };
  let disk: FaultyDisk | null = null;
  let touches = 0;
  let open: string[] = [];
  const told: Entry[] = [];
  let foreign: readonly Entry[] = [];

  async function page() {
    let alive = true;
    const ports = testPorts({
      ...kept,
      // A page that is gone does nothing any more.
      schedule: (ms, run) => time.schedule(ms, () => alive && run()),
    });
    const shelf = await openShelf({ clock: time.clock, device: 'tablet 1', ports });
    const flight = await shelf.openedFlight();
    const journal: Journal =
      flight === null ? await shelf.openFlight(opening(now())) : await shelf.journalOf(flight);
    const kill = () => {
      alive = false;
      locks.drop();
    };
    return { ports, journal, kill };
  }

  function well() {
    disk?.heal();
    disk?.restore();
    disk = null;
  }

  let { ports, journal, kill }: { ports: TestPorts; journal: Journal; kill: () => void } =
    await page();

  async function take(step: Step) {
    switch (step.what) {
      case 'touch':
        for (let count = 0; count < step.times; count += 1) {
          const words = `touch ${(touches += 1)}`;
          open.push(words);
          void journal.append(noted(now(), words)).then((entry) => {
            told.push(entry);
            open = open.filter((it) => it !== words);
          });
        }
        return;
      case 'wait':
        return letPass(time, step.ms);
      case 'stepClock':
        time.setWall(time.clock.now() + step.ms);
        return;
      case 'break':
        well();
        disk = faultyDisk(step.fault, step.atCall, step.lasting);
        return;
      case 'heal':
        well();
        return;
      case 'show':
        ports.show();
        return;
      case 'merge': {
        const next = anothersEntry(journal, foreign.at(-1), time.clock.now());
        foreign = [...foreign, next];
        void journal.merge([next]).catch(() => {});
        return;
      }
      case 'crash':
        await quiet(kept.databaseName);
        kill();
        well();
        await quiet(kept.databaseName);
        // What was not told saved may be lost or there, and is nobody's promise any more.
        open = [];
        ({ ports, journal, kill } = await page());
        return;
    }
  }

  for (const step of steps) {
    await take(step);
    await settled();
    expect(storedLines(kept.databaseName)).toEqual(
      expect.arrayContaining(told.map(({ line }) => line)),
    );
    expect(journal.status().pending.length).toBe(open.length);
  }

  well();
  await letPass(time, 30_000);
  expect(open).toEqual([]);
  expect(journal.status()).toMatchObject({ pending: [], trouble: null });
  const shown = journal.entries();
  await journal.close();
  kill();
  ({ journal, kill } = await page());
  const own = (entries: readonly Entry[]) => entries.filter(({ rec }) => rec !== OTHER);
  expect(own(journal.entries())).toEqual(own(shown));
  // A merge whose answers were lost was refused and may have arrived all the same.
  expect(journal.entries()).toEqual(expect.arrayContaining([...shown]));
  expect(shown).toEqual(expect.arrayContaining(told));
  const words = wordsOf(shown);
  expect(new Set(words).size).toBe(words.length);
  expect(checkChains(own(shown))).toEqual([]);
  expect(journal.status().trouble).toBeNull();
  kill();
}

let runs = 0;
const OTHER = recorderId('e'.repeat(32));

/** What a page had under way, its last breath included, has come to its end. */
async function quiet(databaseName: string): Promise<void> {
  let before = -1;
  while (before !== storedLines(databaseName).length) {
    before = storedLines(databaseName).length;
    await settled();
  }
}

/** The next entry of another tablet on the same flight. */
function anothersEntry(journal: Journal, before: Entry | undefined, nowMs: number): Entry {
  return sealEntry({
    flight: journal.flight,
    rec: OTHER,
    seq: (before?.seq ?? 0) + 1,
    prev: before?.id ?? null,
    ord: Math.max((before?.ord ?? 0) + 1, nowMs),
    draft: gearMoved(testTime(nowMs).clock.stampNow()),
    author: SCRIBE,
  });
}

it('loses nothing that was told saved and writes nothing twice, whatever happens in whatever order', async () => {
  await fc.assert(fc.asyncProperty(fc.array(anyStep, { minLength: 1, maxLength: 25 }), simulate), {
    numRuns: 60,
  });
}, 120_000);
