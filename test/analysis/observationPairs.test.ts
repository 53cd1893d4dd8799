import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { observationPairs } from '../../src/analysis/observationPairs.ts';
import { recorderId } from '../../src/record/brand.ts';
import type { Body, Draft, Entry } from '../../src/record/entry.ts';
import { viewOf } from '../../src/record/flight.ts';
import { chainOf, ENGINEER, SCRIBE } from '../file/smallFlight.ts';
import { scriptA } from '../flights/flightA.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';

const NOON = Date.UTC(2032, 5, 2, 12, 0, 0);
const THIRD = recorderId('c3'.repeat(16));
type Content = Omit<Draft, 'stamp'>;

const opened: Content = {
  kind: 'flightOpened',
  body: {
    nature: 'flight',
    title: 'Two',
    date: '2032-06-02',
    device: 'tablet',
    sheet: sheetOfScript(scriptA),
  },
};
const joined: Content = { kind: 'recorderJoined', body: { device: 'second', purpose: 'inFlight' } };
const call = (panel: string, state: 'laminar' | 'turbulent'): Content => ({
  kind: 'panelStateCalled',
  body: { panel, state },
});
const lost = (body: Body<'laminarLost'>): Content => ({ kind: 'laminarLost', body });
const cloud: Content = { kind: 'moistureEntered', body: {} };

interface Seen {
  readonly rec: typeof SCRIBE;
  readonly s: number;
  readonly what: Content;
}
const scribe = (s: number, what: Content): Seen => ({ rec: SCRIBE, s, what });
const engineer = (s: number, what: Content): Seen => ({ rec: ENGINEER, s, what });

/** The scribe opens an hour before noon; what each saw stands so many seconds after noon. */
function log(...seen: readonly Seen[]): readonly Entry[] {
  const recs = [...new Set([SCRIBE, ...seen.map(({ rec }) => rec)])];
  return recs.flatMap((rec) => {
    const entries = [
      ...chainOf([rec === SCRIBE ? opened : joined], { rec, startMs: NOON - 3_600_000 }),
    ];
    for (const { s, what } of seen.filter((one) => one.rec === rec)) {
      entries.push(...chainOf([what], { rec, after: entries.at(-1), startMs: NOON + s * 1000 }));
    }
    return entries;
  });
}
const pairsOf = (...seen: readonly Seen[]) =>
  observationPairs(viewOf(log(...seen))).map(({ first, second, subjects, apartS }) => ({
    by: [first.entry.rec, second.entry.rec],
    subjects,
    apartS,
  }));

describe('what two recorders saw of one thing', () => {
  it('is a pair by kind and panel, in order of time, with the seconds between', () => {
    expect(
      pairsOf(scribe(10, call('L1', 'laminar')), engineer(14, call('L1', 'turbulent'))),
    ).toEqual([{ by: [SCRIBE, ENGINEER], subjects: ['L1'], apartS: 4 }]);
  });

  it('is none for another panel, another kind, the same recorder, or half a minute and more apart', () => {
    expect(pairsOf(scribe(10, call('L1', 'laminar')), engineer(14, call('L2', 'laminar')))).toEqual(
      [],
    );
    expect(pairsOf(scribe(10, call('L1', 'laminar')), engineer(14, cloud))).toEqual([]);
    expect(pairsOf(scribe(10, call('L1', 'laminar')), scribe(14, call('L1', 'turbulent')))).toEqual(
      [],
    );
    expect(pairsOf(scribe(10, cloud), engineer(41, cloud))).toEqual([]);
    expect(pairsOf(scribe(10, cloud), engineer(40, cloud))).toHaveLength(1);
  });

  it('reaches as far as twice the joined doubt of two times where that is more', () => {
    const doubtful = (doubtS: number): Content => ({ kind: 'moistureEntered', body: { doubtS } });
    // Twice the root of 30² + 40² is 100 s.
    expect(pairsOf(scribe(0, doubtful(30)), engineer(100, doubtful(40)))).toHaveLength(1);
    expect(pairsOf(scribe(0, doubtful(30)), engineer(101, doubtful(40)))).toEqual([]);
  });

  it('knows a loss of a panel and a loss of its wing as one, and asks where no wing was named', () => {
    const ofPanel = scribe(0, lost({ panels: ['L2'] }));
    const ofWing = (wing: 'L' | 'R') => engineer(5, lost({ wings: { [wing]: { of: 24 } } }));
    expect(pairsOf(ofPanel, ofWing('L'))[0]?.subjects).toEqual(['L']);
    expect(pairsOf(ofPanel, ofWing('R'))).toEqual([]);
    expect(pairsOf(ofPanel, engineer(5, lost({})))[0]?.subjects).toEqual(['L']);
  });

  it('takes the nearest partner and leaves readings and words alone', () => {
    expect(pairsOf(scribe(0, cloud), engineer(20, cloud), engineer(3, cloud))).toEqual([
      { by: [SCRIBE, ENGINEER], subjects: [], apartS: 3 },
    ]);
    const words: Content = { kind: 'noted', body: { words: 'haze' } };
    const read: Content = { kind: 'fuelRead', body: {} };
    expect(
      pairsOf(scribe(0, words), engineer(1, words), scribe(9, read), engineer(9, read)),
    ).toEqual([]);
  });

  it('stays a pair after a person decided, with who, why and which', () => {
    const both = log(scribe(10, call('L1', 'laminar')), engineer(14, call('L1', 'turbulent')));
    const [mine, theirs] = both.filter(({ kind }) => kind === 'panelStateCalled');
    const target = theirs?.id;
    const other = mine?.id;
    if (target === undefined || other === undefined) throw new RangeError('both must have called');
    const decided = chainOf(
      [
        joined,
        {
          kind: 'observationsResolved',
          body: { target, other, verdict: 'otherStands', reason: 'photo' },
        },
      ],
      { rec: THIRD, startMs: NOON + 3_600_000, author: { author: 'D1', role: 'director' } },
    );
    expect(observationPairs(viewOf([...both, ...decided]))).toMatchObject([
      { decided: { standsAlone: other, reason: 'photo', author: 'D1', role: 'director' } },
    ]);
    expect(observationPairs(viewOf(both))).toMatchObject([{ decided: null }]);
  });

  it('is the same in whatever order the files arrive, one partner a recorder, and never oneself', () => {
    const anySeen = fc.record({
      rec: fc.constantFrom(SCRIBE, ENGINEER, THIRD),
      s: fc.integer({ min: 0, max: 90 }),
      what: fc.constantFrom(cloud, call('L1', 'laminar'), call('L1', 'turbulent'), lost({})),
    });
    fc.assert(
      fc.property(fc.array(anySeen, { maxLength: 14 }), (seen) => {
        const inTime = seen.toSorted((a, b) => a.s - b.s);
        const entries = log(...inTime);
        const pairs = observationPairs(viewOf(entries));
        const idsOf = (all: typeof pairs) =>
          all.map(({ first, second }) => [first.entry.id, second.entry.id]);
        expect(idsOf(observationPairs(viewOf(entries.toReversed())))).toEqual(idsOf(pairs));
        const partners = pairs.flatMap(({ first, second }) => [
          `${first.entry.id} ${second.entry.rec}`,
          `${second.entry.id} ${first.entry.rec}`,
        ]);
        expect(new Set(partners).size).toBe(partners.length);
        for (const { first, second } of pairs) {
          expect(first.entry.rec).not.toBe(second.entry.rec);
          expect(first.entry.kind).toBe(second.entry.kind);
          expect(second.at).toBeGreaterThanOrEqual(first.at);
        }
      }),
    );
  });
});
