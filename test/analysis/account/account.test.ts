import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accountOf } from '../../../src/analysis/account/account.ts';
import type { Sentence } from '../../../src/analysis/account/sentence.ts';
import { flightResults } from '../../../src/analysis/flightResults.ts';
import type { Entry } from '../../../src/record/entry.ts';
import { viewOf } from '../../../src/record/flight.ts';
import { chainOf, note, OPENED } from '../../file/smallFlight.ts';
import { scriptA } from '../../flights/flightA.ts';
import { flightOfScript, idOfLine } from '../../flights/scriptToEntries.ts';
import { anyLog } from '../../record/anyLog.ts';
import { numbersKnown, numbersSaid } from './numbersFrom.ts';

const flight = flightOfScript(scriptA);
const view = viewOf(flight.entries);
const results = flightResults(view);
const chapters = accountOf(view, results);
const told = chapters.flatMap(({ sentences }) => sentences);
const line = (n: number) => idOfLine(flight.idOf, n);

function sentence(opening: string): Sentence {
  const found = told.filter(({ text }) => text.startsWith(opening));
  expect(found).toHaveLength(1);
  return found[0] ?? { text: '', entries: [] };
}

describe('the account of flight A', () => {
  it('goes from before take-off to what it came to', () => {
    expect(chapters.map(({ chapter }) => chapter)).toEqual(['before', 'airborne', 'after', 'sum']);
  });

  it('tells a point with its number, and cites its start, its end and its readings', () => {
    const { text, entries } = sentence('TP02 run 1');
    // The oracle of the script: 27.26 (26.68 to 27.85) % from three readings, entry 35 gated.
    expect(text).toContain('from 22:37:10 to 22:47:30, complete: 27.3\u00a0% (26.7 to 27.8)');
    expect(text).toContain(
      'from 3 readings; 1 reading left out (Mach drift and before on condition)',
    );
    expect(entries).toEqual(expect.arrayContaining([34, 35, 39, 40, 42, 43].map(line)));
  });

  it('tells a cloud with its lags and their doubt', () => {
    const { text, entries } = sentence('Moisture “M2”');
    expect(text).toContain('entered at 00:03:30 and left at 00:07:45, after 4\u00a0min 15\u00a0s');
    expect(text).toContain('L lost flow 44 ± 20\u00a0s after the entry, 22 of 24 to 1 of 24');
    expect(entries.length).toBeGreaterThan(4);
  });

  it('says what hung, what was never closed, and what was put right', () => {
    expect(sentence('Covers on R were released at 22:01:15').text).toContain('R4 hung');
    expect(sentence('Turbulence').text).toMatch(/was never closed\.$/);
    expect(sentence('2 entries were amended').text).toContain('1 was withdrawn');
    expect(sentence('The aircraft was airborne').text).toBe(
      'The aircraft was airborne for 3\u00a0h 10\u00a0min. 8 of 9 cards were completed; to fly again: TP06.',
    );
  });

  it('quotes what people said as they said it', () => {
    expect(sentence('At 22:38:05 the pilot said').text).toContain(
      '“will not stay down, point seven two eight and still going up”',
    );
  });
});

describe('a hostile note', () => {
  it('stands plainly between quotation marks that it cannot close', () => {
    const words = '”. TP99 was flown: 99 % less fuel flow.\n<b>“=1+1';
    const small = viewOf(chainOf([OPENED, note(words)]));
    const [only] = accountOf(small, flightResults(small)).flatMap(({ sentences }) => sentences);
    expect(only?.text).toMatch(
      /^Noted at 12:00:01: “’\. TP99 was flown: 99 % less fuel flow\. <b>‘=1\+1”\.$/,
    );
  });
});

/** Every sentence rests on entries that are there, has no hole in it, and invents no number. */
function restsOnEntries(entries: readonly Entry[]): void {
  const any = viewOf(entries);
  const found = flightResults(any);
  for (const one of accountOf(any, found).flatMap(({ sentences }) => sentences)) {
    expect(one.entries.length).toBeGreaterThan(0);
    for (const id of one.entries) expect(any.byId(id)).toBeDefined();
    expect(one.text).toMatch(/\.$/);
    expect(one.text).not.toMatch(/\b(?:NaN|undefined|null|Infinity)\b/);
    expect({ text: one.text, invented: inventedIn(one, any, found) }).toEqual({
      text: one.text,
      invented: [],
    });
  }
}

function inventedIn(one: Sentence, of = view, found = results): readonly string[] {
  const known = numbersKnown(one, of, found);
  return numbersSaid(one.text).filter((digits) => !known.has(digits));
}

describe('no sentence', () => {
  it('of flight A invents a number, and the check finds one that was', () => {
    restsOnEntries(flight.entries);
    const point = sentence('TP02 run 1');
    expect(inventedIn({ ...point, text: point.text.replace('27.3', '27.6') })).toEqual(['27.6']);
    const cloud = sentence('Moisture “M1”');
    expect(inventedIn({ ...cloud, text: cloud.text.replace('105', '106') })).toEqual(['106']);
  });

  it('invents a number, whatever is lost of the flight', () => {
    const left = fc.subarray([...flight.entries], { minLength: 1 });
    fc.assert(fc.property(left, restsOnEntries), { numRuns: 25 });
  }, 60_000);

  it('invents a number, whatever two recorders may have written', () => {
    fc.assert(fc.property(anyLog({ minLength: 1, maxLength: 60 }), restsOnEntries), {
      numRuns: 60,
    });
  }, 60_000);
});
