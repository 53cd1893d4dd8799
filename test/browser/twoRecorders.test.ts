import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { readTimeline } from '../../src/file/readTimeline.ts';
import { viewOf } from '../../src/record/flight.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import type { Size } from './requirements/sizes.ts';
import { SIZES, Tablet } from './tablet.ts';
import { takeInFile } from './takeInFile.ts';
import { fromFlyToDebrief, openFile, savedFile, takeIn } from './timelineFiles.ts';

const NOW = Date.UTC(2032, 5, 2, 12, 0, 0);
const MINUTE_MS = 60_000;

let site: PreparedSite;
let tablets: readonly Tablet[] = [];
beforeEach(async () => {
  site = await preparedSite();
});
afterEach(async () => {
  await Promise.all(tablets.map((tablet) => tablet.close()));
  await site.close();
});

async function switchedOn(size: Size = SIZES.kneeboard): Promise<Scribe> {
  const tablet = await Tablet.launch(site.origin, {
    executablePath: findBrowser() ?? '',
    startAt: NOW,
    size,
  });
  tablets = [...tablets, tablet];
  return new Scribe(tablet, NOW);
}

/** A tablet that knows nothing joins the flight of a file under a role, and goes to Fly. */
async function join(engineer: Scribe, file: { name: string; text: string }): Promise<void> {
  await engineer.tablet.open();
  await takeInFile(engineer, file);
  await engineer.tap('go-brief');
  await engineer.tap({ starts: 'days.join=' });
  await engineer.tap('join.role=wing engineer, left');
  await engineer.type('join.author', 'E2');
  await engineer.type('join.device', 'engineer tablet');
  await engineer.tap('join.go');
  await engineer.tap('nav.fly');
  await engineer.tablet.shown('tile-count');
}

async function callPanel(scribe: Scribe, panel: string, state: string, atMs: number) {
  await scribe.tapAt(`panel-${panel}`, atMs);
  await scribe.tap(`state-${state}`);
}

describe('a scribe and a wing engineer on the same flight', () => {
  it('record apart; their files merge, both records whole, and what they differ on is asked', async () => {
    const scribe = await switchedOn();
    await leaveFlightOpen(scribe.tablet.page, site.origin, inCruise(NOW));
    await scribe.tablet.open();
    await fromFlyToDebrief(scribe);
    const handed = await savedFile(scribe);
    await scribe.tap('go-fly');

    const engineer = await switchedOn(SIZES.tablet);
    await join(engineer, handed);
    const meetAt = Math.max(scribe.nowMs, engineer.nowMs) + MINUTE_MS;

    // Some minutes on both: a loss on the left wing, called as two people see it.
    await engineer.tapAt('tile-loss', meetAt);
    await engineer.tap('probes-count');
    await engineer.tap('count-20');
    await scribe.tapAt('tile-cloud', meetAt + 500);
    await scribe.tap('tile-wing');
    await callPanel(scribe, 'L2', 'laminar', meetAt + 10_000);
    await scribe.tap('pad-close');
    await engineer.tapAt('tile-more', meetAt + 12_000);
    await engineer.tap('tile-wing');
    await callPanel(engineer, 'L2', 'turbulent', meetAt + 15_000);
    await engineer.tap('pad-close');
    await engineer.tapAt('tile-sighted', meetAt + 3 * MINUTE_MS);
    await engineer.tap('tile-call');
    await scribe.tapAt('tile-cloud', meetAt + 4 * MINUTE_MS);

    // A kill in between: the engineer's tablet comes back to the flight, its role and its tiles.
    await engineer.tablet.open();
    await engineer.tablet.shown('tile-count');

    await fromFlyToDebrief(engineer);
    const theirs = await savedFile(engineer);
    await fromFlyToDebrief(scribe);
    await openFile(scribe, 'engineer.jsonl', theirs.text);
    expect(await takeIn(scribe)).toMatch(/ added, \d+ known already/);
    const both = await savedFile(scribe);

    const read = readTimeline(both.text, both.text.length);
    if (read.kind === 'refused') throw new Error(read.refusal.reason);
    const view = viewOf(read.entries);
    const told = view.standing.map(({ entry }) => `${entry.author} ${entry.role} ${entry.kind}`);
    expect(told).toEqual(
      expect.arrayContaining([
        'S1 scribe moistureEntered',
        'S1 scribe panelStateCalled',
        'S1 scribe moistureExited',
        'E2 wing engineer, left recorderJoined',
        'E2 wing engineer, left laminarLost',
        'E2 wing engineer, left panelStateCalled',
        'E2 wing engineer, left moistureSighted',
        'E2 wing engineer, left engineerCalled',
      ]),
    );
    const lost = view.standing.find(({ entry }) => entry.kind === 'laminarLost');
    // The time of an event is within 20 ms of its contact (R9).
    expect(Math.abs((lost?.entry.wall ?? 0) - meetAt)).toBeLessThanOrEqual(20);
    expect(lost?.effective).toMatchObject({
      body: { wings: { L: { of: 24, laminarCount: 20 } } },
    });
    expect(view.state.panels['L2']?.state).toBe('turbulent');
    expect(view.standing.every(({ standing }) => standing === 'stands')).toBe(true);

    await scribe.tap('tab-audit');
    await scribe.tap('audit-order');
    const audit = scribe.tablet.page.getByText(
      'Two recorders called one panel differently, and both calls are kept: L2 LAM by S1, TRB by E2.',
    );
    await audit.waitFor();

    // A person decides: the scribe's call stands, the engineer's gives way and stays readable.
    await scribe.tap('audit-pairs');
    await scribe.tap('pair-decide');
    await scribe.tap('verdict=first');
    await scribe.put('verdict-reason', 'seen again from the left seat');
    await scribe.tap('save');
    const pair = scribe.tablet.page.locator('[data-act="pair"]');
    await pair.getByText('Decided by S1').waitFor();
    expect(await pair.locator('del').innerText()).toContain('L2 TRB');
    await scribe.tap('audit-order');
    await expect.poll(() => audit.count()).toBe(0);
    const decided = await savedFile(scribe);
    const again = readTimeline(decided.text, decided.text.length);
    if (again.kind === 'refused') throw new Error(again.refusal.reason);
    expect(again.entries).toEqual(expect.arrayContaining([...read.entries]));
    expect(viewOf(again.entries).state.panels['L2']?.state).toBe('laminar');
  });
});
