import { describe, expect, it } from 'vitest';
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
