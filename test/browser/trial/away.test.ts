import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { linesOnDisk } from '../drillJudge.ts';
import { preparedSite, type PreparedSite } from '../prepared.ts';
import { flyOn } from '../requirements/flyOn.ts';
import { turnTo } from '../requirements/sizes.ts';
import { Scribe } from '../scribe.ts';
import { Hand } from './hand.ts';
import { TABLETS } from './tablets.ts';
import { trialled } from './trialRows.ts';

let site: PreparedSite;
beforeAll(async () => {
  site = await preparedSite();
});
afterAll(async () => {
  await site.close();
});

describe.each(TABLETS)('the trial at $where', ({ where, ...setting }) => {
  it('11: turned, swiped back and closed with an interval open', async ({ task }) => {
    let scribe = await flyOn(site, setting);
    try {
      await scribe.tap('tile-cloud');
      await scribe.tablet.saved();
      let known = await linesOnDisk(scribe.tablet.page);
      const hands: Hand[] = [];
      const faults = new Set<string>();
      const { width, height } = setting.size;
      const ways = {
        turned: () => turnTo(scribe.tablet.page, { width: height, height: width }),
        'swiped back': () => scribe.tablet.page.evaluate(() => history.back()),
        closed: async () => {
          const again = await scribe.tablet.newWindow();
          await scribe.tablet.page.close();
          await again.page.setViewportSize(setting.size);
          await again.open();
          scribe = new Scribe(again, scribe.nowMs + 5_000);
        },
      };
      for (const [way, happens] of Object.entries(ways)) {
        await happens();
        const hand = new Hand(scribe);
        hand.think();
        const before = await scribe.tablet.saved();
        await hand.touch('tile-mark');
        await scribe.tablet.savedBeyond(before);
        hands.push(hand);
        const now = await linesOnDisk(scribe.tablet.page);
        if (known.some((line, index) => now[index] !== line)) faults.add(`lost when ${way}`);
        if (!now.slice(known.length).some((line) => line.includes('"markMade"'))) {
          faults.add(`not recording again when ${way}`);
        }
        const words = await scribe.tablet.page.locator('[data-act="tile-cloud"]').innerText();
        if (!/\d:\d\d/.test(words)) faults.add(`cloud not open when ${way}`);
        known = now;
        scribe.waitUntil(scribe.nowMs + 5_000);
      }
      const seconds = Math.max(...hands.map((hand) => hand.seconds));
      const about = {
        task: 11,
        words: 'Turned, swiped back, closed: go on recording',
        where,
        mark: '5 s less the app’s own start, nothing lost, still open',
      };
      expect(
        trialled(
          task,
          about,
          { touches: 1, seconds },
          {
            'later than 5 s': seconds <= 5,
            [[...faults].join(', ')]: faults.size === 0,
          },
        ),
      ).toEqual([]);
    } finally {
      await scribe.tablet.context.close();
    }
  });
});
