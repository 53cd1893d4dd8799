import { readlinkSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { judgeDisk, linesOnDisk, type Seen, type Sent } from './drillJudge.ts';
import { Tablet } from './tablet.ts';

/** Touches of a burst: mostly marks, and two intervals that a kill may leave open. */
const TILES = ['tile-mark', 'tile-mark', 'tile-mark', 'tile-cloud', 'tile-sample'] as const;
const LEAST_TOUCHES = 21;
const MORE_TOUCHES = 18;
/** Page time between two touches: no bounce, and an interval may close again. */
const GAP_MS = 3_000;
/** Page time between two starts of the browser. */
const ROUND_MS = 600_000;

/** A browser on a tablet with a flight open, and what its disk held when it had started. */
interface Session {
  readonly tablet: Tablet;
  readonly disk: readonly string[];
}

export interface DrillSetUp {
  readonly origin: string;
  /** The profile of a tablet on which a flight is open and in cruise. */
  readonly profile: string;
  readonly executablePath: string;
  /** Page time of the first start. */
  readonly startMs: number;
  readonly rounds: number;
  /** From 0 to below 1; the same sequence makes the same touches. */
  readonly random: () => number;
}

/**
 * Kills the whole browser in the middle of bursts of touches, again and again on one tablet.
 *
 * @param onRound told what was seen from outside after each kill
 * @returns the tablet, running, after the last kill
 */
export async function runDrill(given: DrillSetUp, onRound: (seen: Seen) => void): Promise<Tablet> {
  let session = await started(given, 0);
  for (let round = 1; round <= given.rounds; round += 1) {
    const burst = await killedInABurst(session, given, given.startMs + (round - 1) * ROUND_MS);
    const before = session.disk;
    session = await started(given, round);
    onRound(await judgeDisk(session.tablet.page, { ...burst, before, disk: session.disk }));
  }
  return session.tablet;
}

async function started(given: DrillSetUp, round: number): Promise<Session> {
  const tablet = await Tablet.launch(given.origin, {
    profile: given.profile,
    executablePath: given.executablePath,
    startAt: given.startMs + round * ROUND_MS,
  });
  await tablet.open();
  await tablet.shown('tile-mark');
  await tablet.page.locator('[data-saved][data-pending="0"]').waitFor();
  return { tablet, disk: await linesOnDisk(tablet.page) };
}

/** What was sent, and how many entries the page had said to be saved when it was killed. */
async function killedInABurst(
  { tablet, disk }: Session,
  { profile, random }: DrillSetUp,
  fromMs: number,
): Promise<{ readonly sent: readonly Sent[]; readonly saidSaved: number }> {
  let saidSaved = disk.length;
  let onSaid = (): void => {};
  await whenSaidSaved(tablet.page, (count) => {
    saidSaved = Math.max(saidSaved, count);
    onSaid();
  });
  const sent: Sent[] = [];
  const touch = async (): Promise<void> => {
    const tile = TILES[Math.floor(random() * TILES.length)] ?? 'tile-mark';
    const atMs = fromMs + (sent.length + 1) * GAP_MS;
    sent.push({ tile, atMs });
    await tablet.tap(tile, atMs);
  };
  const isWaiting = (): boolean => saidSaved < disk.length + sent.length;
  const least = LEAST_TOUCHES + Math.floor(random() * MORE_TOUCHES);
  const way = Math.floor(random() * 3);
  while (sent.length < least || (way === 0 && !isWaiting())) {
    await touch();
  }
  // Three places in the way of a touch: handled but not yet said to be saved; under way; while another is being saved.
  const left = way === 0 ? Promise.resolve() : touch().catch(() => undefined);
  if (way === 1) {
    await tablet.page.evaluate(() => undefined);
  } else if (way === 2 && isWaiting()) {
    await Promise.race([new Promise<void>((resolve) => (onSaid = resolve)), left]);
  }
  const seen = { sent: [...sent], saidSaved };
  await killWhole(profile);
  await left;
  return seen;
}

/** Tells outside of the browser how many entries the page says to be saved, each time that it says so. */
export async function whenSaidSaved(page: Page, say: (count: number) => void): Promise<void> {
  await page.exposeFunction('sayOutside', say);
  await page.evaluate(() => {
    const look = () => {
      const count = document.querySelector<HTMLElement>('[data-saved]')?.dataset['saved'];
      Reflect.get(globalThis, 'sayOutside')(Number(count));
    };
    const watched = { subtree: true, attributes: true, attributeFilter: ['data-saved'] };
    new MutationObserver(look).observe(document.body, watched);
  });
}

/** SIGKILL to every process of the browser that holds this profile; none of them can say goodbye. */
export async function killWhole(profile: string): Promise<void> {
  const pid = Number(readlinkSync(join(profile, 'SingletonLock')).split('-').at(-1));
  if (!Number.isInteger(pid) || pid <= 1) throw new Error('the browser must have a process id');
  process.kill(-pid, 'SIGKILL');
  while (isAlive(pid)) await new Promise((resolve) => setImmediate(resolve));
}

function isAlive(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}
