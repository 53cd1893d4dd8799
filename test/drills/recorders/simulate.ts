import 'fake-indexeddb/auto';
import { entryId } from '../../../src/record/brand.ts';
import { checkChains } from '../../../src/record/chain.ts';
import type { Entry } from '../../../src/record/entry.ts';
import { headCode } from '../../../src/record/headCode.ts';
import { headsOf, writeTimeline } from '../../../src/file/timelineFile.ts';
import { FAULTS } from '../../journal/faultyDisk.ts';
import { opening, SCRIBE } from '../../journal/smallFlight.ts';
import { chanceOf, type Chance } from '../../simulation/chance.ts';
import type { DrillSeen, RoundSeen } from '../seen.ts';
import { handedOver, MISHAPS } from './shared.ts';
import { Tablet } from './tablet.ts';
import { heldTurns, type Turns } from './turns.ts';

const START_MS = Date.UTC(2031, 4, 6, 12, 0, 0);
const HOUR_MS = 3_600_000;
type Step = (typeof STEPS)[number];
const STEPS = [
  'touch',
  'touch',
  'touch',
  'pass',
  'pass',
  'stepClock',
  'sleep',
  'breakDisk',
  'mendDisk',
  'crash',
  'share',
  'share',
] as const;

/** One to four tablets on one flight, through whatever happens to them in the course of one seed. */
async function simulateSeed(seed: number): Promise<RoundSeen> {
  const chance = chanceOf(seed, 0);
  const turns = heldTurns();
  const tablets = newTablets(chance, turns);
  const course = courseOf(tablets, chance, turns);
  let step: Step | 'taking off' | 'landing' = 'taking off';

  try {
    await course.takeOff();
    for (let left = chance.whole(5, 30); left > 0; left -= 1) {
      const next = chance.oneOf(STEPS);
      step = next;
      await course.take(next);
      course.judge(`after ${next}`);
    }
    step = 'landing';
    await course.land();
  } catch (error) {
    course.broken.push(`${step}: ${String(error)}`);
  } finally {
    tablets.forEach((tablet) => tablet.forget());
    turns.restore();
  }
  const broken = [...course.broken, ...tablets.flatMap((tablet) => tablet.broken)];
  return { faults: course.faults(), lost: course.lost(), broken };
}

function newTablets(chance: Chance, turns: Turns): readonly [Tablet, ...Tablet[]] {
  const randomId = () =>
    Array.from({ length: 32 }, () => chance.whole(0, 15).toString(16)).join('');
  const one = (number: number) =>
    new Tablet(`tablet ${number}`, {
      wallMs: START_MS + chance.whole(-HOUR_MS, HOUR_MS),
      turns,
      randomId,
    });
  return [one(1), ...Array.from({ length: chance.whole(0, 3) }, (_, index) => one(index + 2))];
}

function courseOf(tablets: readonly [Tablet, ...Tablet[]], chance: Chance, turns: Turns) {
  const broken: string[] = [];
  const late: (readonly Entry[])[] = [];
  let faults = 0;
  let lost = 0;

  async function pass(durationMs: number) {
    for (let leftMs = durationMs; leftMs > 0;) {
      const dueMs = Math.max(1, Math.min(leftMs, ...tablets.map((it) => it.nextDueMs())));
      tablets.forEach((tablet) => tablet.pass(dueMs));
      leftMs -= dueMs;
      await turns.take();
    }
  }

  async function takeOff() {
    const [first, ...others] = tablets;
    await first.start();
    const flight = await first.fly(
      first.page.shelf.openFlight(opening(first.page.time.clock.stampNow())),
    );
    for (const tablet of others) {
      await tablet.start();
      const { shelf, time } = tablet.page;
      const stamp = time.clock.stampNow();
      const author = { author: tablet.name, role: SCRIBE.role };
      const taken = shelf.takeIn(first.journal.entries());
      await tablet.fly(
        taken.then(() => shelf.joinFlight({ flight, device: tablet.name, author, stamp })),
      );
    }
  }

  function merge(into: Tablet, entries: readonly Entry[]) {
    // A merge that a failing disk refuses changes nothing, and is done again.
    void into.journal.merge(entries).catch(() => {});
  }

  async function share(from: Tablet, into: Tablet) {
    const mishap = chance.oneOf(MISHAPS);
    faults += mishap === 'none' ? 0 : 1;
    const entries = handedOver(from.journal.entries(), mishap, chance);
    if (mishap === 'late') {
      late.push(entries);
      return;
    }
    merge(into, entries);
    if (chance.happens(0.3)) merge(into, late.shift() ?? entries);
    await turns.take(chance.whole(0, 80));
  }

  async function take(step: Step) {
    const tablet = chance.oneOf(tablets);
    switch (step) {
      case 'touch':
        for (let left = chance.whole(1, 12); left > 0; left -= 1) tablet.touch();
        break;
      case 'pass':
        await pass(chance.whole(1, 6_000));
        break;
      case 'stepClock':
        faults += 1;
        tablet.stepClock(chance.whole(-HOUR_MS, HOUR_MS));
        break;
      case 'sleep':
        faults += 1;
        tablet.stepClock(chance.whole(1_000, HOUR_MS));
        tablet.show();
        break;
      case 'breakDisk':
        faults += 1;
        tablet.breakDisk(chance.oneOf(FAULTS), chance.whole(1, 12), chance.happens(0.5));
        break;
      case 'mendDisk':
        tablet.mendDisk();
        break;
      case 'crash':
        faults += 1;
        for (let left = chance.whole(0, 6); left > 0; left -= 1) tablet.touch();
        await turns.take(chance.whole(0, 60));
        await tablet.crash(chance.happens(0.5));
        break;
      case 'share':
        await share(tablet, chance.oneOf(tablets));
        break;
    }
    if (chance.happens(0.7)) await turns.take();
  }

  /** What was told saved is on the disk; what was not is still shown as waiting. */
  function judge(when: string) {
    for (const tablet of tablets) {
      const stored = tablet.stored();
      const gone = tablet.told.filter(({ line }) => !stored.has(line));
      lost += gone.length;
      broken.push(...gone.map(({ seq }) => `${when}: ${tablet.name} lost entry ${seq}`));
      const pending = tablet.journal.status().pending.length;
      if (pending !== tablet.open.size) {
        broken.push(
          `${when}: ${tablet.name} has ${tablet.open.size} touches open, shows ${pending}`,
        );
      }
    }
  }

  async function land() {
    tablets.forEach((tablet) => tablet.mendDisk());
    await pass(30_000);
    for (const tablet of tablets) {
      const { pending, trouble } = tablet.journal.status();
      if (pending.length > 0 || trouble !== null) {
        broken.push(
          `${tablet.name} ends with ${pending.length} pending, ${JSON.stringify(trouble)}`,
        );
      }
      await tablet.crash(false);
    }
    judge('after the last start');
    // Each tablet hands its file to each other, the first ones having seen less: twice around.
    for (const [from, into] of [...tablets, ...tablets].flatMap((a) =>
      tablets.map((b) => [a, b] as const),
    )) {
      merge(into, handedOver(from.journal.entries(), 'none', chance));
      await turns.take();
    }
    compare();
  }

  function compare() {
    const [first] = tablets;
    const text = writeTimeline(first.journal.entries());
    const code = codeOf(first);
    const written = new Set(tablets.flatMap((tablet) => [...tablet.stored()]));
    for (const tablet of tablets) {
      const entries = tablet.journal.entries();
      const ids = new Set(entries.map(({ id }) => id));
      if (writeTimeline(entries) !== text || codeOf(tablet) !== code) {
        broken.push(`${tablet.name} has another file than ${first.name}`);
      }
      const strange = entries.filter(({ line }) => !written.has(line));
      if (strange.length > 0) broken.push(`${tablet.name} has entries that nobody wrote`);
      const gone = tablets.flatMap(({ told }) => told.filter(({ id }) => !ids.has(id)));
      if (gone.length > 0) broken.push(`${tablet.name} lacks ${gone.length} entries told saved`);
      const words = entries.flatMap((entry) =>
        entry.kind === 'deviceNoted' ? [entry.body.words] : [],
      );
      const doubled = words.length - new Set(words).size;
      if (doubled > 0) broken.push(`${tablet.name} has ${doubled} touches twice`);
      lost += gone.length + doubled;
      broken.push(
        ...checkChains(entries).map((finding) => `${tablet.name}: ${JSON.stringify(finding)}`),
      );
    }
  }

  return { broken, takeOff, take, judge, land, faults: () => faults, lost: () => lost };
}

function codeOf({ journal }: Tablet): string {
  return headCode(headsOf(journal.entries()).map(({ hash }) => entryId(hash)));
}

/** Courses of events numbered from `from` on, each a course of events of its own; a failing one is flown again by its number alone. */
export async function severalRecorders(seeds: number, from: number): Promise<DrillSeen> {
  let faults = 0;
  let lost = 0;
  const broken: string[] = [];
  for (let seed = from; seed < from + seeds; seed += 1) {
    const seen = await simulateSeed(seed);
    faults += seen.faults;
    lost += seen.lost;
    broken.push(...seen.broken.map((words) => `seed ${seed}: ${words}`));
  }
  return { drill: 'recorders simulated', rounds: seeds, faults, lost, broken };
}
