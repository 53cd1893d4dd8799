import { describe, expect, it } from 'vitest';
import { lengthOf, PAGE_COLUMNS } from '../../src/desk/page/layout.ts';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import { flightA, without } from '../analysis/flights.ts';
import { smallFlight } from '../file/smallFlight.ts';
import { DEMO, typed } from './typed.ts';

const page = typed('results a.jsonl', { 'a.jsonl': DEMO });

describe('the page of flight A', () => {
  it('opens with what the meeting asks first', () => {
    expect(page.code).toBe(0);
    expect(page.out).toMatch(/^Suction effectiveness, five legs {2}\(DEMO\)\n/);
    expect(page.out).toMatch(/Airborne {3}22:00:14Z to 01:10:40Z, 3 h 10 min \[\d+ \d+\]/);
    expect(page.out).toContain('Cards      8 of 9 complete; to fly again: TP06');
  });

  it('gives each number its interval and unit, in the units of the flight sheet', () => {
    // TP08: 28.66 % (28.05 to 29.27), gross 633, unit 88, net 545 lb/h in the worked results.
    expect(page.out).toMatch(
      /TP08 r1 +complete +3 +28\.7 \(28\.0 to 29\.3\) .* 633 ± \d+ +88 +545 ± \d+\n/,
    );
    expect(page.out).toContain('Gross lb/h');
  });

  it('names the gate that left a reading out, and the entry', () => {
    expect(page.out).toMatch(/left out \[38\] Mach drift, before on condition/);
    expect(page.out).toMatch(/\[38\] {2}2032-06-02 22:37:45Z Fuel 920, 850 lb\/h/);
  });

  it('explains every entry that it cites', () => {
    const [body = '', list = ''] = page.out.split('\nEntries cited');
    const cited = [...body.matchAll(/\[([\d ]+)\]/g)].flatMap(([, numbers = '']) =>
      numbers.split(' '),
    );
    expect(cited.length).toBeGreaterThan(20);
    expect(cited.filter((number) => !list.includes(`\n[${number}]`))).toEqual([]);
  });

  it('never says cause, and defers in its foot', () => {
    expect(page.out).toContain('Association is not cause');
    expect(page.out.replace(/\s+/g, ' ')).toContain(
      'A record, not an instrument: not for flying, navigating, fuel planning or fuel state. The operator’s approval and ' +
        'the test safety plan overrule this page',
    );
  });

  it('keeps to the width of the paper', () => {
    const tooLong = page.out.split('\n').filter((line) => lengthOf(line) > PAGE_COLUMNS);
    expect(tooLong).toEqual([]);
  });
});

describe('a flight with hardly anything in it', () => {
  it('gets a page that says what is missing', () => {
    const { code, out } = typed('results s', { s: writeTimeline(smallFlight()) });
    expect(code).toBe(0);
    expect(out).toContain('No test point was started.');
    expect(out).toContain('No lift-off was marked.');
    expect(out).toContain('No time hack was taken');
    expect(out).toContain('Draft: the flight is not closed.');
    expect(out).not.toMatch(/NaN|undefined|null/);
  });
});

describe('a reading with a slip in it', () => {
  it('is named with what may have been meant, and stays as it is', () => {
    // Engine 2 keyed 910 for 810; the script puts it right. Without that amendment it is only suspected.
    const unamended = writeTimeline(
      without(flightA.entries, (entry) => entry.kind === 'entryAmended'),
    );
    const { out } = typed('results a', { a: unamended });
    expect(out.replace(/\s+/g, ' ')).toMatch(/FF2 read 910: 810 would fit .*a key beside it/);
    expect(page.out).not.toContain('would fit');
  });
});
