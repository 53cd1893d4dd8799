import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EntryId } from '../../../src/record/brand.ts';
import type { Reading } from '../../../src/record/entry.ts';
import { viewOf } from '../../../src/record/flight.ts';
import type { FlightSheet } from '../../../src/record/sheet.ts';
import { scriptA } from '../../flights/flightA.ts';
import { sheetOfScript } from '../../flights/sheetOfScript.ts';
import { inCruise } from '../inCruise.ts';
import { preparedSite, type PreparedSite } from '../prepared.ts';
import { NOW } from '../requirements/flyOn.ts';
import { entriesOnDisk, writtenBy } from '../requirements/saidOnDisk.ts';
import type { Scribe } from '../scribe.ts';
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

/** What the card says; two of four engines are as the flight's last reading has them. */
const CARD = { FF1: '0838', FF2: '0792', FF3: '0841', FF4: '0795' } as const;
const CALLS = { L1: 'laminar', L2: 'intermittent', L3: 'turbulent' } as const;
const CALLS_RIGHT = { R1: 'turbulent', R2: 'laminar', R3: 'intermittent' } as const;

/** Flight A's sheet with a third and a fourth engine, each gauge as the first one's. */
function onFourEngines(): FlightSheet {
  const sheet = sheetOfScript(scriptA);
  const first = sheet.instruments.find(({ id }) => id === 'FF1');
  if (first === undefined || sheet.aircraft === undefined) throw new Error('no FF1 on the sheet');
  return {
    ...sheet,
    aircraft: { ...sheet.aircraft, engineCount: 4 },
    instruments: [
      ...sheet.instruments,
      { ...first, id: 'FF3', consumer: 3 },
      { ...first, id: 'FF4', consumer: 4 },
    ],
  };
}

/** The readings of an entry as they stand on the disk now. */
async function readingsOf(scribe: Scribe, id: EntryId): Promise<readonly Reading[]> {
  const effective = viewOf(await entriesOnDisk(scribe)).byId(id)?.effective;
  return effective?.kind === 'fuelRead' ? (effective.body.readings ?? []) : [];
}

const valueOf = (readings: readonly Reading[], instrument: string): string =>
  readings
    .filter((each) => each.instrument === instrument)
    .map((each) => `${'value' in each ? each.value : 'blank'}${isQueried(each) ? '?' : ''}`)
    .join();
const isQueried = (reading: Reading): boolean =>
  'queried' in reading && reading.queried !== undefined;

describe.each(TABLETS)('the trial at $where', ({ where, ...setting }) => {
  it('6: four fuel readings from a card', async ({ task }) => {
    const entries = inCruise(NOW, onFourEngines());
    await onTablet(site, { ...setting, entries }, async (scribe) => {
      const hand = new Hand(scribe);
      const written = await writtenBy(scribe, async () => {
        hand.think();
        await hand.touch('tile-fuel');
        for (const digits of Object.values(CARD)) {
          hand.look();
          await hand.digits(digits);
          await hand.touch('key-enter');
        }
      });
      const ids = written.flatMap(({ kind, id }) => (kind === 'fuelRead' ? [id] : []));
      const readings = (await Promise.all(ids.map((id) => readingsOf(scribe, id)))).flat();
      const about = {
        task: 6,
        words: 'Four 4-digit fuel readings from a card',
        where,
        mark: 'under 15 s, 4 of 4 right, no query',
      };
      expect(
        trialled(task, about, hand, {
          '15 s or more': hand.seconds < 15,
          'not 4 of 4 right': Object.entries(CARD).every(
            ([instrument, digits]) => valueOf(readings, instrument) === String(Number(digits)),
          ),
          'something queried': !readings.some(isQueried) && !(await scribe.isThere('query-keep')),
        }),
      ).toEqual([]);
    });
  });

  it('7: a value ten times too large, put right, and the next reading', async ({ task }) => {
    await onTablet(site, setting, async (scribe) => {
      await scribe.tap('tile-fuel');
      const planted = new Hand(scribe);
      const [first] = await writtenBy(scribe, async () => {
        await planted.digits('8380');
        await planted.touch('key-enter');
      });
      if (first === undefined) throw new Error('the planted value must be written');
      const asWritten = valueOf(await readingsOf(scribe, first.id), 'FF1');
      await scribe.tablet.shown('query-candidate');
      scribe.waitUntil(scribe.nowMs + 1_000);
      // The next reading goes on at once, and the query is answered in the middle of it.
      const next = new Hand(scribe);
      await next.digits('07');
      const hand = new Hand(scribe);
      hand.think();
      await hand.touch('query-candidate');
      const rest = new Hand(scribe);
      await rest.digits('92');
      await rest.touch('key-enter');
      await scribe.tablet.saved();
      const all = await entriesOnDisk(scribe);
      const readings = all.flatMap(({ kind, id }) => (kind === 'fuelRead' ? [id] : [])).slice(1);
      const now = (await Promise.all(readings.map((id) => readingsOf(scribe, id)))).flat();
      const about = {
        task: 7,
        words: 'Ten times too large: put right; next reading',
        where,
        mark: 'put right 6 s, next entry not delayed',
      };
      expect(
        trialled(task, about, hand, {
          'later than 6 s': hand.seconds <= 6,
          'not kept as read and queried': asWritten === '8380?',
          'not put right': valueOf(now, 'FF1') === '838',
          'the next reading is not there': valueOf(now, 'FF2') === '792',
        }),
      ).toEqual([]);
    });
  });

  it('8: six panels from a card', async ({ task }) => {
    await onTablet(site, setting, async (scribe) => {
      const hand = new Hand(scribe);
      const call = async (calls: Readonly<Record<string, string>>): Promise<void> => {
        for (const [panel, state] of Object.entries(calls)) {
          hand.look();
          await hand.touch(`panel-${panel}`);
          await hand.touch(`state-${state}`);
          await scribe.tablet.saved();
        }
      };
      const written = await writtenBy(scribe, async () => {
        hand.think();
        if (!(await scribe.isThere('panel-L1'))) {
          await hand.touch((await scribe.isThere('wing-L')) ? 'wing-L' : 'tile-wing');
        }
        await call(CALLS);
        if (!(await scribe.isThere('panel-R1'))) await hand.touch('wing-other');
        await call(CALLS_RIGHT);
      });
      const view = viewOf(await entriesOnDisk(scribe));
      const wanted = { ...CALLS, ...CALLS_RIGHT };
      const right = Object.entries(wanted).filter(
        ([panel, state]) => view.state.panels[panel]?.state === state,
      );
      const about = {
        task: 8,
        words: 'Six panels from a card (no print is read)',
        where,
        mark: '25 s, 6 of 6',
      };
      expect(
        trialled(task, about, hand, {
          'later than 25 s': hand.seconds <= 25,
          'not six calls': written.filter(({ kind }) => kind !== 'reminderShown').length === 6,
          [`${right.length} of 6 as the card has them`]: right.length === 6,
        }),
      ).toEqual([]);
    });
  });
});
