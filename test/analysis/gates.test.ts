import { describe, expect, it } from 'vitest';
import { liveEstimateOf } from '../../src/analysis/liveEstimate.ts';
import type { Gate } from '../../src/analysis/results.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import type { Draft, Entry } from '../../src/record/entry.ts';
import type { FlightView } from '../../src/record/flight.ts';
import { items } from '../../src/record/trail.ts';
import { idOfLine } from '../flights/scriptToEntries.ts';
import { bodyOf, flightA, rewritten, sealed, touchAt, viewOfEntries } from './flights.ts';

/** Tablet time of a line of flight A. */
function wallOf(n: number): number {
  const entry = flightA.entries.find(({ id }) => id === idOfLine(flightA.idOf, n));
  if (entry === undefined) throw new RangeError(`line ${n} must be written`);
  return entry.wall;
}

function brokenAt(view: FlightView, atMs: number): readonly Gate[] {
  const index = [...items(view.state.glances)].findIndex(({ at }) => at === atMs);
  const estimate = liveEstimateOf(view, index);
  if (estimate.kind !== 'value' && estimate.kind !== 'struck') throw new Error(estimate.kind);
  expect(estimate.kind).toBe(estimate.broken.length === 0 ? 'value' : 'struck');
  // A struck number is still a number.
  expect(Number.isFinite(estimate.fuel.fraction)).toBe(true);
  return estimate.broken;
}

/** Flight A with these gauges of line 40 reading otherwise; null takes a row away. */
function line40(values: Readonly<Record<string, number | null>>): readonly Entry[] {
  return rewritten(flightA.entries, (entry) => {
    if (entry.id !== idOfLine(flightA.idOf, 40) || entry.kind !== 'fuelRead') return bodyOf(entry);
    const readings = (entry.body.readings ?? []).flatMap((row) => {
      const value = values[row.instrument];
      if (value === null) return [];
      return value === undefined || 'blank' in row ? [row] : [{ ...row, value }];
    });
    return { ...entry.body, readings };
  });
}

/** Flight A with a second recorder's entries beside it. */
function beside(...drafts: readonly Draft[]): FlightView {
  return viewOfEntries([...flightA.entries, ...sealed(drafts)]);
}

const AIR = { MACH: null, ALT: null, SAT: null, MDRIFT: null, CLIMB: null };

describe('gates at line 40, which stands', () => {
  it.each([
    ['as read', {}, []],
    // Card: Mach 0.720 +/- 0.005, 37 000 ft +/- 100, climb 50 ft/min, drift 0.001 a minute.
    ['at the Mach limit', { MACH: 0.725 }, []],
    ['beyond it', { MACH: 0.726 }, ['mach']],
    ['slower', { MACH: 0.714 }, ['mach']],
    ['at the height limit', { ALT: 37_100 }, []],
    ['beyond it', { ALT: 37_110 }, ['altitude']],
    ['at the climb limit', { CLIMB: 50 }, []],
    ['sinking faster', { CLIMB: -60 }, ['climb']],
    ['at the drift limit', { MDRIFT: 0.001 }, []],
    ['drifting down faster', { MDRIFT: -0.0012 }, ['machDrift']],
    ['two at once', { MDRIFT: 0.0012, MACH: 0.726 }, ['machDrift', 'mach']],
    ['one engine over twice the other', { FF1: 1700 }, ['engineDisagrees']],
    ['air data left out, two minutes after line 39', AIR, []],
  ] as const)('%s', (_, values, broken) => {
    expect(brokenAt(viewOfEntries(line40(values)), wallOf(40))).toEqual(broken);
  });

  it('a correction of more than 3 % of the flow', () => {
    // 0.748 lb/h/lbf: 3 % of 1700 lb/h is 68 lbf, of 39 206 lb a slope of 0.0017: 74 ft/min at 715 ft/s.
    const broken = brokenAt(viewOfEntries(line40({ CLIMB: 80 })), wallOf(40));
    expect(broken).toEqual(['climb', 'energyCorrectionTooLarge']);
  });

  it('suction touched less than two minutes before', () => {
    const change: Draft = {
      kind: 'suctionChanged',
      body: { wing: 'L' },
      stamp: touchAt(wallOf(40) - 119_000),
    };
    expect(brokenAt(beside(change), wallOf(40))).toEqual(['suctionChanging']);
    const earlier: Draft = { ...change, stamp: touchAt(wallOf(40) - 121_000) };
    expect(brokenAt(beside(earlier), wallOf(40))).toEqual([]);
  });

  it('power touched less than five minutes before, until somebody calls on condition', () => {
    const throttle: Draft = {
      kind: 'throttleChanged',
      body: {},
      stamp: touchAt(wallOf(40) - 100_000),
    };
    const called: Draft = {
      kind: 'conditionReached',
      body: {},
      stamp: touchAt(wallOf(40) - 50_000),
    };
    expect(brokenAt(beside(throttle), wallOf(40))).toEqual(['notOnCondition']);
    expect(brokenAt(beside(throttle, called), wallOf(40))).toEqual([]);
  });

  it('in a turn, for as long as it is said to have lasted', () => {
    const turn = (beforeMs: number): Draft => ({
      kind: 'turnStarted',
      body: { lastedS: 140 },
      stamp: touchAt(wallOf(40) - beforeMs),
    });
    expect(brokenAt(beside(turn(139_000)), wallOf(40))).toEqual(['turn']);
    expect(brokenAt(beside(turn(141_000)), wallOf(40))).toEqual([]);
  });

  it('no air data in the run for five minutes: struck, and older air data serves', () => {
    const late: Draft = {
      kind: 'fuelRead',
      body: {
        readings: [
          { instrument: 'FF1', value: 880, unit: 'lb/h' },
          { instrument: 'FF2', value: 830, unit: 'lb/h' },
        ],
      },
      stamp: touchAt(wallOf(58) + 60_000),
    };
    const noAirSince = rewritten(flightA.entries, (entry) => {
      if (entry.kind !== 'fuelRead' || entry.id !== idOfLine(flightA.idOf, 58))
        return bodyOf(entry);
      const readings = (entry.body.readings ?? []).filter(({ instrument }) => !(instrument in AIR));
      return { ...entry.body, readings };
    });
    const view = viewOfEntries([...noAirSince, ...sealed([late])]);
    expect(brokenAt(view, wallOf(58) + 60_000)).toEqual(['noAirData']);
  });

  it('two amendments that do not know each other', () => {
    const amended = (value: number, afterMs: number): Draft => ({
      kind: 'entryAmended',
      body: {
        target: idOfLine(flightA.idOf, 40),
        replaces: [],
        changes: [{ field: 'readings.FF2.value', old: 820, new: value }],
        code: 'misKeyed',
        reason: 'photo panel',
      },
      stamp: touchAt(wallOf(40) + afterMs),
    });
    expect(brokenAt(beside(amended(830, 1000), amended(810, 2000)), wallOf(40))).toEqual([
      'amendmentsDisagree',
    ]);
    expect(brokenAt(beside(amended(830, 1000), amended(830, 2000)), wallOf(40))).toEqual([]);
  });
});

describe('rates that nobody keyed', () => {
  it('come from the slope of Mach and height over the run', () => {
    const rateless = (entries: readonly Entry[]): readonly Entry[] =>
      rewritten(entries, (entry) => {
        if (entry.kind === 'unrecognised' || entry.body.readings === undefined) {
          return bodyOf(entry);
        }
        const readings = entry.body.readings.filter(
          ({ instrument }) => instrument !== 'MDRIFT' && instrument !== 'CLIMB',
        );
        return { ...entry.body, readings };
      });
    const view = viewOfEntries(rateless(flightA.entries));
    // Line 84: Mach 0.719 and 37 000 ft, line 82 37 070 ft three minutes before: -14 ft/min or so, inside 50.
    expect(brokenAt(view, wallOf(84))).toEqual([]);
    // The first reading of a run has no slope yet.
    expect(brokenAt(view, wallOf(80))).toEqual(['noAirData']);
    // After landing the later readings of the run give it one.
    const point = pointResults(view).find(({ point: id }) => id === 'TP05');
    expect(point?.result.kind).toBe('valid');
    expect(point?.readingsUsed.length).toBeGreaterThanOrEqual(3);
  });
});
