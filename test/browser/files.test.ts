import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import { flightId } from '../../src/record/brand.ts';
import { chainOf, ENGINEER, mark, note, OPENED, OTHER_FLIGHT } from '../file/smallFlight.ts';
import { damagedCopies } from './damagedCopies.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';
import {
  fromFlyToDebrief,
  linesOf,
  openFile,
  savedFile,
  takeIn,
  verifiedByReadme,
} from './timelineFiles.ts';

const NOW = Date.UTC(2032, 5, 2, 12, 0, 0);

let site: PreparedSite;
let tablet: Tablet;
let scribe: Scribe;
beforeEach(async () => {
  site = await preparedSite();
  tablet = await Tablet.launch(site.origin, { executablePath: findBrowser() ?? '', startAt: NOW });
  await leaveFlightOpen(tablet.page, site.origin, inCruise(NOW));
  scribe = new Scribe(tablet, NOW + 60_000);
  await tablet.open();
  await fromFlyToDebrief(scribe);
});
afterEach(async () => {
  await tablet.close();
  await site.close();
});

/** Where the own record ends, as Debrief shows it beside the file. */
async function shownHeads(): Promise<string> {
  await scribe.tap('tab-files');
  return tablet.page.locator('dt:text-is("Heads") + dd').innerText();
}

describe('the timeline file of a flight recorded here', () => {
  it('is plain JSON, line by line, and its chain verifies with the code in the README', async () => {
    const { name, text } = await savedFile(scribe);
    expect(name).toMatch(/\.jsonl$/);
    const lines = text.trimEnd().split('\n');
    // Canonical JSON: what any reader makes of a line is written again as the same bytes.
    expect(lines.map((line) => JSON.stringify(JSON.parse(line)))).toEqual(lines);
    expect(verifiedByReadme(text)).toContain(`${lines.length - 2} entries`);
    expect(() => verifiedByReadme(text.replace('"value":840', '"value":940'))).toThrow(
      'chain broken',
    );
  });

  it('is opened damaged with the sentence that says what happened, and the own record stays', async () => {
    const { text } = await savedFile(scribe);
    const heads = await shownHeads();
    const own = linesOf(text).length;
    const copies = damagedCopies(text);
    expect(copies.length).toBeGreaterThanOrEqual(10);
    for (const [index, copy] of copies.entries()) {
      const read = await openFile(scribe, `copy ${index}.jsonl`, copy.text);
      expect({ damage: copy.damage, sentences: read.sentences }).toEqual({
        damage: copy.damage,
        sentences: copy.sentences,
      });
      expect(read.refused).toBe(copy.kept === 0);
      if (!read.refused) {
        expect(await takeIn(scribe)).toBe(
          `0 added, ${copy.kept} known already. This flight holds them now.`,
        );
      }
      expect(await shownHeads()).toBe(heads);
    }
    const after = await savedFile(scribe);
    expect(after.text).toBe(text);
    expect(linesOf(after.text)).toHaveLength(own);
  });

  it('takes in a flight of somebody else as another flight', async () => {
    const heads = await shownHeads();
    const other = chainOf([OPENED, mark, note('haze')], { flight: OTHER_FLIGHT, rec: ENGINEER });
    const read = await openFile(scribe, 'other.jsonl', writeTimeline(other));
    expect(read).toEqual({ refused: false, sentences: [] });
    expect(await takeIn(scribe)).toBe(
      '3 added, 0 known already. It is kept as another flight of this tablet; open it on Brief.',
    );
    expect(await shownHeads()).toBe(heads);
    await scribe.tap('go-brief');
    await scribe.tap('brief.tab=days');
    await scribe.tap(`days.debrief=${OTHER_FLIGHT}`);
    await tablet.page.locator('header', { hasText: 'Slot check' }).waitFor();
    expect(linesOf((await savedFile(scribe)).text)).toEqual(other.map(({ line }) => line));
  });

  it('keeps an entry of a kind that only a newer app knows, byte for byte', async () => {
    const { text } = await savedFile(scribe);
    const heads = await shownHeads();
    const flight = flightId(JSON.parse(linesOf(text)[0] ?? '').flight);
    const theirs = chainOf([mark, note('warm')], { flight, rec: ENGINEER }).map(({ line }) => line);
    const newer = theirs.map((line) => line.replace('"kind":"noted"', '"kind":"probeWarmed"'));
    const opening = text.split('\n').slice(0, 2);
    const read = await openFile(scribe, 'newer.jsonl', `${[...opening, ...newer].join('\n')}\n`);
    expect(read.sentences).toEqual([
      'The file is cut: its last line is missing. 3 entries recovered; how many followed cannot be told.',
    ]);
    expect(await takeIn(scribe)).toBe('2 added, 1 known already. This flight holds them now.');
    expect(await shownHeads()).toContain(heads.trim());
    expect(linesOf((await savedFile(scribe)).text)).toEqual(expect.arrayContaining(newer));
  });
});
