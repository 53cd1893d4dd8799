import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Entry } from '../../../src/record/entry.ts';
import { viewOf } from '../../../src/record/flight.ts';
import { inCruise } from '../inCruise.ts';
import { preparedSite, type PreparedSite } from '../prepared.ts';
import { Fingers } from '../requirements/fingers.ts';
import { NOW } from '../requirements/flyOn.ts';
import { entriesOnDisk, writtenBy } from '../requirements/saidOnDisk.ts';
import { seeded } from '../seeded.ts';
import { fromFlyToDebrief } from '../timelineFiles.ts';
import { Hand } from './hand.ts';
import { onTablet, TABLETS } from './tablets.ts';
import { trialled } from './trialRows.ts';

let site: PreparedSite;
beforeAll(async () => {
  site = await preparedSite();
});
afterAll(async () => {
  await site.close();
});

const kindsOf = (entries: readonly Entry[]): string =>
  entries
    .flatMap((entry) =>
      entry.kind === 'unrecognised' || entry.kind === 'reminderShown'
        ? []
        : [`${entry.kind}${entry.body.unconfirmed === undefined ? '' : '?'}`],
    )
    .join(' ');

/** 40 s back, where there is a key for 30 s and where there is none. */
const SHORT_WAY = ['back-30', 'back-10'] as const;
const LONG_WAY = ['back-10', 'back-10', 'back-10', 'back-10'] as const;

describe.each(TABLETS)('the trial at $where', ({ where, ...setting }) => {
  it('2: covers released, on cue', async ({ task }) => {
    await onTablet(site, setting, async (scribe) => {
      await scribe.tap('phase-climb');
      await scribe.tablet.saved();
      const hand = new Hand(scribe);
      let contactMs = 0;
      const [entry, ...others] = await writtenBy(scribe, async () => {
        hand.react();
        contactMs = await hand.touch('tile-coversLeft');
      });
      const about = {
        task: 2,
        words: 'Covers released, on cue',
        where,
        mark: '1 touch, 2 s, stored within 0.3 s of contact',
      };
      expect(
        trialled(task, about, hand, {
          'not one touch': hand.touches === 1,
          'later than 2 s': hand.seconds <= 2,
          'not one release': entry?.kind === 'coversReleased' && others.length === 0,
          'stored at another time': Math.abs((entry?.wall ?? 0) - contactMs) <= 300,
        }),
      ).toEqual([]);
    });
  });

  it('3: in cloud and out of it, each on cue', async ({ task }) => {
    await onTablet(site, setting, async (scribe) => {
      const contacts: number[] = [];
      const hands: Hand[] = [];
      const entries = await writtenBy(scribe, async () => {
        for (const cueMs of [0, 45_000]) {
          scribe.waitUntil(NOW + 30_000 + cueMs);
          const hand = new Hand(scribe);
          hand.react();
          contacts.push(await hand.touch('tile-cloud'));
          hands.push(hand);
        }
      });
      const [opened, closed] = entries;
      const [from = 0, until = 0] = contacts;
      const offMs = (closed?.wall ?? 0) - (opened?.wall ?? 0) - (until - from);
      const about = {
        task: 3,
        words: 'In cloud, out of cloud, each on cue',
        where,
        mark: 'each 2 s, duration within 0.5 s',
      };
      const both = {
        touches: hands.reduce((sum, { touches }) => sum + touches, 0),
        seconds: Math.max(...hands.map(({ seconds }) => seconds)),
      };
      expect(
        trialled(task, about, both, {
          'not an entry and an exit': kindsOf(entries) === 'moistureEntered moistureExited',
          'later than 2 s': both.seconds <= 2,
          'another duration': Math.abs(offMs) <= 500,
        }),
      ).toEqual([]);
    });
  });

  it('4: wrong, that was suction on', async ({ task }) => {
    const entries = inCruise(NOW).filter(({ kind }) => kind !== 'suctionTurnedOn');
    await onTablet(site, { ...setting, entries }, async (scribe) => {
      const [wrong] = await writtenBy(scribe, () => scribe.tap('tile-cloud'));
      scribe.waitUntil(scribe.nowMs + 5_000);
      const hand = new Hand(scribe);
      const put = await writtenBy(scribe, async () => {
        hand.think();
        await hand.touch('undo');
        await scribe.tablet.saved();
        hand.think();
        await hand.touch('tile-suction');
      });
      const [undone] = put;
      await fromFlyToDebrief(scribe);
      await scribe.tap('tab-audit');
      const audit = await scribe.tablet.page.getByRole('region', { name: 'Audit' }).innerText();
      await scribe.tap('audit-all');
      const all = await scribe.tablet.page.getByRole('region', { name: 'Audit' }).innerText();
      const about = {
        task: 4,
        words: 'Wrong, that was suction on: undo, then right',
        where,
        mark: '6 s, 3 touches, both in the audit',
      };
      expect(
        trialled(task, about, hand, {
          'later than 6 s': hand.seconds <= 6,
          'more than 3 touches': hand.touches <= 3,
          'not undone, then right': kindsOf(put) === 'entryWithdrawn suctionTurnedOn',
          'another entry undone':
            undone?.kind === 'entryWithdrawn' && undone.body.target === wrong?.id,
          [`the undone one is not in the audit, which says ${audit.replaceAll(/\s+/g, ' ')}`]:
            /cloud|moisture/i.test(audit) && /undone|withdrawn/i.test(audit),
          'the right one is not in the audit': /suction on/i.test(all),
        }),
      ).toEqual([]);
    });
  });

  it('5: an event missed 40 s ago', async ({ task }) => {
    await onTablet(site, setting, async (scribe) => {
      scribe.waitUntil(NOW + 60_000);
      const toldMs = scribe.nowMs;
      const hand = new Hand(scribe);
      const written = await writtenBy(scribe, async () => {
        hand.think();
        await hand.touch('tile-mark');
        await scribe.tablet.saved();
        hand.think();
        const hasThirty = await scribe.isThere('back-30');
        for (const act of hasThirty ? SHORT_WAY : LONG_WAY) {
          await hand.touch(act);
          await scribe.tablet.saved();
        }
      });
      const [mark] = written;
      if (mark === undefined) throw new Error('the mark must be written');
      const standing = viewOf(await entriesOnDisk(scribe)).byId(mark.id);
      const about = {
        task: 5,
        words: 'Back-date an event missed 40 s ago',
        where,
        mark: '12 s, within 10 s of truth, marked back-dated',
      };
      expect(
        trialled(task, about, hand, {
          'later than 12 s': hand.seconds <= 12,
          'more than 10 s from the truth':
            Math.abs((standing?.at ?? 0) - (toldMs - 40_000)) <= 10_000,
          'not marked back-dated': standing?.late === true,
        }),
      ).toEqual([]);
    });
  });

  it('9: a palm at rest, and double touches', async ({ task }) => {
    await onTablet(site, setting, async (scribe) => {
      const fingers = await Fingers.of(scribe);
      const random = seeded(9);
      const { size, pxPerMm } = setting;
      const palm = { x: size.width / 2, y: size.height - 4 * pxPerMm };
      const tile = await fingers.middleOf('tile-mark');
      const jitter = () => (random() - 0.5) * 6 * pxPerMm;
      const at = NOW + 30_000;
      const resting = await writtenBy(scribe, async () => {
        await fingers.down(0, palm, at, 17 * pxPerMm);
        await fingers.move(0, { x: palm.x + 2, y: palm.y }, at + 10_000);
      });
      const cues = Array.from({ length: 10 }, (_, index) => at + 12_000 + index * 4_000);
      const touched = await writtenBy(scribe, async () => {
        for (const cueMs of cues) {
          const place = { x: tile.x + jitter(), y: tile.y + jitter() };
          const gapMs = 60 + Math.round(random() * 300);
          await fingers.down(1, place, cueMs);
          await fingers.up(1, cueMs + 90);
          await fingers.down(1, { x: place.x + jitter() / 3, y: place.y }, cueMs + 90 + gapMs);
          await fingers.up(1, cueMs + 180 + gapMs);
        }
        await fingers.up(0, at + 60_000);
      });
      const events = touched.filter(({ kind }) => kind !== 'reminderShown');
      const about = {
        task: 9,
        words: 'Palm at rest 10 s, then 10 double touches',
        where,
        mark: 'none false, 10 of 10 saved once',
      };
      expect(
        trialled(
          task,
          about,
          { touches: 21, seconds: null },
          {
            'the palm wrote something': kindsOf(resting) === '',
            'not ten marks': kindsOf(events) === Array(10).fill('markMade').join(' '),
            'a mark is not of its first contact': cues.every(
              (cueMs, index) => Math.abs((events[index]?.wall ?? 0) - cueMs) <= 20,
            ),
          },
        ),
      ).toEqual([]);
    });
  });
});
