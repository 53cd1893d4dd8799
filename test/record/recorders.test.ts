import { describe, expect, it } from 'vitest';
import { recorderId } from '../../src/record/brand.ts';
import type { Entry } from '../../src/record/entry.ts';
import { viewOf } from '../../src/record/flight.ts';
import { union } from '../../src/record/merge.ts';
import { rolePage, USUAL_TILE_PAGES } from '../../src/record/tiles.ts';
import { chainOf, ENGINEER } from '../file/smallFlight.ts';
import { scriptA } from '../flights/flightA.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { doubtsOf } from './folding.ts';

const NOON = Date.UTC(2032, 5, 2, 12, 0, 0);
const SHEET = sheetOfScript(scriptA);

const opened = {
  kind: 'flightOpened',
  body: { nature: 'flight', title: 'Two', date: '2032-06-02', device: 'tablet', sheet: SHEET },
} as const;
const call = (panel: string, state: 'laminar' | 'turbulent') =>
  ({ kind: 'panelStateCalled', body: { panel, state } }) as const;
const joined = {
  kind: 'recorderJoined',
  body: { device: 'engineer tablet', purpose: 'inFlight' },
} as const;

/** The scribe's calls from 10 s after noon on, the engineer's from so many seconds after noon on; a second apart. */
function together(
  scribe: readonly ReturnType<typeof call>[],
  engineer: readonly ReturnType<typeof call>[],
  engineerAtS: number,
): readonly Entry[] {
  const [first] = chainOf([opened], { startMs: NOON });
  return union(first === undefined ? [] : [first], [
    ...chainOf(scribe, { after: first, startMs: NOON + 10_000 }),
    ...chainOf([joined, ...engineer], {
      rec: ENGINEER,
      startMs: NOON + (engineerAtS - 1) * 1000,
      author: { author: 'E2', role: 'wing engineer, left' },
    }),
  ]);
}

describe('two recorders that call one panel', () => {
  it('differently within one look: the newest shows, both stand, and the record asks', () => {
    const view = viewOf(together([call('L1', 'laminar')], [call('L1', 'turbulent')], 14));
    expect(view.state.panels['L1']?.state).toBe('turbulent');
    expect(doubtsOf(view.state)).toEqual(['recordersDisagree: L1 LAM by S1, TRB by E2']);
    expect(
      view.standing
        .filter(({ entry }) => entry.kind === 'panelStateCalled')
        .map(({ entry, standing }) => [entry.author, entry.role, standing]),
    ).toEqual([
      ['S1', 'scribe', 'stands'],
      ['E2', 'wing engineer, left', 'stands'],
    ]);
  });

  it('alike, or more than half a minute apart, ask nothing', () => {
    const alike = together([call('L1', 'laminar')], [call('L1', 'laminar')], 14);
    expect(doubtsOf(viewOf(alike).state)).toEqual([]);
    const later = together([call('L1', 'laminar')], [call('L1', 'turbulent')], 41);
    expect(doubtsOf(viewOf(later).state)).toEqual([]);
    const atTheEdge = together([call('L1', 'laminar')], [call('L1', 'turbulent')], 40);
    expect(doubtsOf(viewOf(atTheEdge).state)).toHaveLength(1);
  });

  it('ask nothing about a change of mind of one of them', () => {
    const calls = [call('L1', 'laminar'), call('L1', 'turbulent')];
    expect(doubtsOf(viewOf(together(calls, [], 14)).state)).toEqual([]);
  });
});

describe('the pen of the log', () => {
  it('stays with the scribe when an engineer takes or passes a pen', () => {
    const [first] = chainOf([opened], { startMs: NOON });
    const passed = chainOf(
      [
        joined,
        { kind: 'scribeChanged', body: { from: 'E2', to: 'E3', role: 'wing engineer, left' } },
      ],
      {
        rec: ENGINEER,
        startMs: NOON + 5_000,
        author: { author: 'E3', role: 'wing engineer, left' },
      },
    );
    const view = viewOf(union(first === undefined ? [] : [first], passed));
    expect(view.state.scribe).toEqual({ author: 'S1', role: 'scribe' });
  });
});

describe('the page of a role', () => {
  it('is the one of the flight sheet, else the usual one, else none', () => {
    const own = { role: 'wing engineer, left', tiles: ['loss', null, 'mark'] };
    expect(rolePage({ ...SHEET, rolePages: [own] }, 'wing engineer, left')).toEqual(own.tiles);
    expect(rolePage({ ...SHEET, rolePages: [own] }, 'wing engineer, right')).toContain('rake');
    expect(rolePage(SHEET, 'scribe')).toBeNull();
    expect(USUAL_TILE_PAGES.cruise).toContain('point');
  });
});

describe('one thing seen by two recorders', () => {
  const both = together([call('L1', 'laminar')], [call('L1', 'turbulent')], 14);
  const [scribes, engineers] = both.filter(({ kind }) => kind === 'panelStateCalled');
  const last = both.at(-1);
  if (scribes === undefined || engineers === undefined || last === undefined) {
    throw new RangeError('both must have called the panel');
  }
  const resolving = (target: Entry, other: Entry, verdict: 'otherStands' | 'bothStand') =>
    ({
      kind: 'observationsResolved',
      body: { target: target.id, other: other.id, verdict, reason: 'seen from the left seat' },
    }) as const;
  const standingOf = (log: readonly Entry[]) => {
    const view = viewOf(log);
    return [scribes, engineers].map(({ id }) => view.byId(id)?.standing);
  };
  /** Each decision on a tablet of its own, so that none knows the other; the last is written last. */
  const decided = (...decisions: readonly ReturnType<typeof resolving>[]): readonly Entry[] => [
    ...both,
    ...decisions.flatMap((decision, index) =>
      chainOf([joined, decision], {
        rec: recorderId(String(index + 1).repeat(32)),
        startMs: NOON + 3_600_000 * (index + 1),
      }),
    ),
  ];

  it('gives way where a person decides so: out of the state, readable in the record, the question answered', () => {
    const log = decided(resolving(engineers, scribes, 'otherStands'));
    const view = viewOf(log);
    expect(view.state.panels['L1']?.state).toBe('laminar');
    expect(doubtsOf(view.state)).toEqual([]);
    expect(view.byId(engineers.id)).toMatchObject({
      standing: 'withdrawn',
      withdrawnBy: log.at(-1)?.id,
      effective: { body: { state: 'turbulent' } },
    });
    expect(standingOf(log)[0]).toBe('stands');
  });

  it('both stand where the two were different events', () => {
    expect(standingOf(decided(resolving(engineers, scribes, 'bothStand')))).toEqual([
      'stands',
      'stands',
    ]);
  });

  it('never both give way: of two decisions the later one counts, in whatever order they arrive', () => {
    const log = decided(
      resolving(engineers, scribes, 'otherStands'),
      resolving(scribes, engineers, 'otherStands'),
    );
    expect(standingOf(log)).toEqual(['withdrawn', 'stands']);
    expect(standingOf(log.toReversed())).toEqual(['withdrawn', 'stands']);
  });

  it('stands again when the decision is withdrawn', () => {
    const log = decided(resolving(engineers, scribes, 'otherStands'));
    const decision = log.at(-1);
    if (decision === undefined) throw new RangeError('there must be a decision');
    const taken = chainOf(
      [{ kind: 'entryWithdrawn', body: { target: decision.id, reason: 'no' } }],
      {
        after: decision,
        rec: decision.rec,
        startMs: NOON + 7_200_000,
      },
    );
    expect(standingOf([...log, ...taken])).toEqual(['stands', 'stands']);
  });
});
