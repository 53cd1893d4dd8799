import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Entry } from '../../src/record/entry.ts';
import { parseEntry } from '../../src/record/parse.ts';
import { scriptA } from '../flights/flightA.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { killWhole, whenSaidSaved } from './drill.ts';
import { judgeDisk, linesOnDisk, type Sent } from './drillJudge.ts';
import { gaugesOf, keyGlance } from './flyPads.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite } from './prepared.ts';
import { ownTicks } from './requirements/ownTicks.ts';
import { passTime } from './requirements/passingTime.ts';
import { Scribe } from './scribe.ts';
import { seeded } from './seeded.ts';
import { Tablet } from './tablet.ts';

const START = Date.UTC(2032, 5, 2, 12, 0, 0);
const HOUR_MS = 3_600_000;
/** A touch in so many is a look at the fuel gauges, and one an undo; both are waited for. */
const FUEL_EVERY = 5;
const UNDO_EVERY = 12;
const TILES = ['tile-mark', 'tile-mark', 'tile-cloud', 'tile-sample'] as const;
/** Page time that is left for the touch itself, and the longest that passes at once: nothing that ticks is passed over. */
const LEAD_MS = 4_000;
const LONGEST_PASS_MS = 20_000;
/** Touches after which a page is warm enough for its memory to be compared. */
const WARM = 4;

/** Memory in use after a collection, in one run of the browser between two kills. */
export interface Heap {
  readonly firstMiB: number;
  readonly lastMiB: number;
  readonly touches: number;
}

export interface FlightSeen {
  readonly kills: number;
  /** Entries on the disk at the end, and touches that were sent. */
  readonly entries: number;
  readonly touches: number;
  /** In words, what was lost, doubled, altered or shown wrongly. */
  readonly faults: readonly string[];
  /** Reminders in each hour of the flight. */
  readonly reminders: readonly number[];
  readonly heaps: readonly Heap[];
}

/** A flight of some hours with touches all along it, and the whole browser killed at random instants of it. */
export async function flyLong(given: {
  readonly executablePath: string;
  readonly hours: number;
  readonly touches: number;
  readonly kills: number;
  readonly seed: number;
}): Promise<FlightSeen> {
  const profile = mkdtempSync(join(tmpdir(), 'kneeline-long-'));
  const site = await preparedSite();
  try {
    const prepared = await Tablet.launch(site.origin, { ...given, profile });
    await leaveFlightOpen(prepared.page, site.origin, inCruise(START));
    await prepared.close();
    return await new LongFlight(given, site.origin, profile).fly();
  } finally {
    await site.close();
    rmSync(profile, { recursive: true, force: true });
  }
}

class LongFlight {
  readonly #given: Parameters<typeof flyLong>[0];
  readonly #origin: string;
  readonly #profile: string;
  readonly #random: () => number;
  readonly #faults: string[] = [];
  readonly #heaps: Heap[] = [];
  /** Readings and undos that the page had said to be saved. */
  #waitedFor = { fuelRead: 0, entryWithdrawn: 0 };
  #atMs = START;

  constructor(given: Parameters<typeof flyLong>[0], origin: string, profile: string) {
    this.#given = given;
    this.#origin = origin;
    this.#profile = profile;
    this.#random = seeded(given.seed);
  }

  async fly(): Promise<FlightSeen> {
    const { touches, kills, hours } = this.#given;
    const lastTouches = [...this.#killPlaces(touches, kills), touches];
    let tablet = await this.#launched();
    let disk = await linesOnDisk(tablet.page);
    let from = 0;
    for (const until of lastTouches) {
      const before = disk;
      const seen = await this.#session(tablet, from, until, until < touches);
      if (until < touches) {
        tablet = await this.#launched();
      } else {
        await tablet.savedBeyond(before.length);
      }
      disk = await linesOnDisk(tablet.page);
      const { faults } = await judgeDisk(tablet.page, { ...seen, before, disk });
      this.#faults.push(...faults.map((fault) => `after touch ${until}: ${fault}`));
      from = until;
    }
    await tablet.close();
    const entries = disk.map(entryOf);
    this.#countWaitedFor(entries);
    return {
      kills,
      entries: entries.length,
      touches,
      faults: this.#faults,
      reminders: remindersByHour(entries, hours),
      heaps: this.#heaps,
    };
  }

  /** Touches from one number to another, the last of them with the browser killed at some instant of its way. */
  async #session(
    tablet: Tablet,
    from: number,
    until: number,
    isKilled: boolean,
  ): Promise<{ readonly sent: readonly Sent[]; readonly saidSaved: number }> {
    const scribe = new Scribe(tablet, this.#atMs);
    const sent: Sent[] = [];
    let saidSaved = (await linesOnDisk(tablet.page)).length;
    await whenSaidSaved(tablet.page, (count) => (saidSaved = Math.max(saidSaved, count)));
    let firstMiB = 0;
    for (let touch = from + 1; touch <= until; touch += 1) {
      await this.#passUntil(
        scribe,
        START + (touch * this.#given.hours * HOUR_MS) / this.#given.touches,
      );
      const isLast = touch === until;
      if (isLast && firstMiB > 0) {
        this.#heaps.push({ firstMiB, lastMiB: await heapMiB(tablet), touches: until - from });
      }
      if (isLast && isKilled) {
        await this.#killedDuring(this.#tile(scribe, sent), tablet);
      } else if (!isLast && touch % FUEL_EVERY === 0) {
        await this.#look(scribe);
      } else if (!isLast && touch % UNDO_EVERY === 0) {
        await this.#undo(scribe);
      } else {
        await this.#tile(scribe, sent);
      }
      if (touch === from + WARM) firstMiB = await heapMiB(tablet);
    }
    return { sent: [...sent], saidSaved: isKilled ? saidSaved : await tablet.saved() };
  }

  async #killedDuring(touch: Promise<void>, { page }: Tablet): Promise<void> {
    const left = touch.catch(() => undefined);
    const turns = Math.floor(this.#random() * 8);
    for (let turn = 0; turn < turns; turn += 1) await page.evaluate(() => undefined);
    await killWhole(this.#profile);
    await left;
  }

  #tile(scribe: Scribe, sent: Sent[]): Promise<void> {
    const tile = TILES[Math.floor(this.#random() * TILES.length)] ?? 'tile-mark';
    sent.push({ tile, atMs: this.#atMs });
    return scribe.tapAt(tile, this.#atMs);
  }

  async #look(scribe: Scribe): Promise<void> {
    const read = [838, 792].map((value, index) => ({
      instrument: `FF${index + 1}`,
      value: value + Math.round(this.#random() * 4),
      unit: 'lb/h' as const,
    }));
    await scribe.tap('tile-fuel');
    await keyGlance(scribe, gaugesOf(sheetOfScript(scriptA), 'fuel'), read, scribe.nowMs + 420);
    this.#waitedFor.fuelRead += read.length;
  }

  async #undo(scribe: Scribe): Promise<void> {
    const before = await scribe.tablet.saved();
    await scribe.tapAt('undo', this.#atMs);
    await scribe.tablet.savedBeyond(before);
    this.#waitedFor.entryWithdrawn += 1;
  }

  async #passUntil(scribe: Scribe, atMs: number): Promise<void> {
    for (;;) {
      const leftMs = atMs - LEAD_MS - (await scribe.tablet.page.evaluate(() => Date.now()));
      if (leftMs <= 0) break;
      await passTime(scribe, Math.min(leftMs, LONGEST_PASS_MS));
    }
    this.#atMs = Math.round(atMs);
    scribe.waitUntil(this.#atMs);
  }

  async #launched(): Promise<Tablet> {
    const { executablePath } = this.#given;
    const tablet = await Tablet.launch(this.#origin, {
      profile: this.#profile,
      executablePath,
      startAt: this.#atMs + 2_000,
    });
    await tablet.context.addInitScript(ownTicks);
    await tablet.open();
    await tablet.shown('tile-mark');
    await tablet.page.locator('[data-saved][data-pending="0"]').waitFor();
    return tablet;
  }

  /** Places of the kills: anywhere in the flight, never two within so few touches that none is between them. */
  #killPlaces(touches: number, kills: number): readonly number[] {
    const share = touches / (kills + 1);
    return Array.from({ length: kills }, (_, index) =>
      Math.round((index + 0.55 + 0.9 * this.#random()) * share),
    );
  }

  #countWaitedFor(entries: readonly Entry[]): void {
    for (const [kind, wanted] of Object.entries(this.#waitedFor)) {
      const found =
        entries.filter((entry) => entry.kind === kind).length - (kind === 'fuelRead' ? 1 : 0);
      if (found !== wanted)
        this.#faults.push(`${wanted} of ${kind} were entered, ${found} are there`);
    }
  }
}

async function heapMiB(tablet: Tablet): Promise<number> {
  const protocol = await tablet.context.newCDPSession(tablet.page);
  await protocol.send('HeapProfiler.collectGarbage');
  const { usedSize } = await protocol.send('Runtime.getHeapUsage');
  await protocol.detach();
  return usedSize / 2 ** 20;
}

function remindersByHour(entries: readonly Entry[], hours: number): readonly number[] {
  return Array.from(
    { length: Math.ceil(hours) },
    (_, hour) =>
      entries.filter(
        ({ kind, wall }) =>
          kind === 'reminderShown' && Math.floor((wall - START) / HOUR_MS) === hour,
      ).length,
  );
}

function entryOf(line: string): Entry {
  const read = parseEntry(line);
  if (!read.ok) throw new Error(`a line on the disk must be an entry, got ${line}`);
  return read.value;
}
