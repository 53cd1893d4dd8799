import { describe, expect, it } from 'vitest';
import type { Suspicion } from '../../src/analysis/suspicion/suspected.ts';
import { suspicions } from '../../src/analysis/suspicions.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import type { Draft, Reading } from '../../src/record/entry.ts';
import { startFlight, type FlightView } from '../../src/record/flight.ts';
import { idOfLine } from '../flights/scriptToEntries.ts';
import {
  flightA,
  glanceOfLine,
  sealed,
  sheetA,
  touchAt,
  viewOfEntries,
  without,
} from './flights.ts';

const START = Date.parse('2032-06-02T22:00:00Z');

interface Look {
  readonly ff1: number;
  readonly ff2: number;
  /** Fuel used by engine 1 and 2, lb. */
  readonly used?: readonly [one: number, other: number];
}

/** Looks two minutes apart in one run. */
function run(...looks: readonly Look[]): FlightView {
  const opened: Draft = {
    kind: 'flightOpened',
    body: {
      nature: 'practice',
      title: 'slips',
      date: '2032-06-02',
      device: 'tablet',
      sheet: sheetA,
    },
    stamp: touchAt(START - 120_000),
  };
  const started: Draft = {
    kind: 'testPointStarted',
    body: { point: 'TP02', run: 1 },
    stamp: touchAt(START - 60_000),
  };
  const reads = looks.map(({ ff1, ff2, used }, index): Draft => {
    const readings: Reading[] = [
      { instrument: 'FF1', value: ff1, unit: 'lb/h' },
      { instrument: 'FF2', value: ff2, unit: 'lb/h' },
    ];
    if (used !== undefined) {
      readings.push({ instrument: 'FU1', value: used[0], unit: 'lb' });
      readings.push({ instrument: 'FU2', value: used[1], unit: 'lb' });
    }
    return { kind: 'fuelRead', body: { readings }, stamp: touchAt(START + index * 120_000) };
  });
  return viewOfEntries(sealed([opened, started, ...reads]));
}

function kinds(found: readonly Suspicion[]): readonly string[] {
  return found.map(({ kind, glance }) => `${kind} ${glance}`);
}

const USUAL: Look = { ff1: 880, ff2: 820 };

describe('a wrong engine', () => {
  it('is suspected where the split flips its sign and the sum stays', () => {
    const [found, ...more] = suspicions(run(USUAL, USUAL, { ff1: 820, ff2: 880 }, USUAL));
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      kind: 'enginesSwapped',
      glance: 2,
      instruments: ['FF1', 'FF2'],
      candidates: [880, 820],
    });
    expect(found?.entries.length).toBe(4);
  });

  it('is not suspected of engines that burn alike, nor of two looks', () => {
    const alike: Look = { ff1: 850, ff2: 840 };
    expect(suspicions(run(alike, alike, { ff1: 840, ff2: 850 }, alike))).toEqual([]);
    expect(suspicions(run(USUAL, { ff1: 820, ff2: 880 }))).toEqual([]);
  });

  it('is not suspected where the habit itself has no sign', () => {
    const other: Look = { ff1: 820, ff2: 880 };
    expect(kinds(suspicions(run(USUAL, other, USUAL, other)))).toEqual([]);
  });
});

describe('a wrong digit', () => {
  it('is suspected where a neighbouring key puts the gauge right with all witnesses', () => {
    const [found, ...more] = suspicions(run(USUAL, { ff1: 880, ff2: 920 }, USUAL));
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      kind: 'digitSlip',
      glance: 1,
      instrument: 'FF2',
      value: 920,
      candidate: 820,
      cause: 'neighbourKey',
      against: ['lastValue', 'otherEngine'],
    });
  });

  it('hears the counter of the engine as a third witness', () => {
    // 820 lb/h is 27.3 lb in two minutes, 82 in six.
    const looks = [0, 27, 55, 82].map((used, index): Look => ({
      ff1: 880,
      ff2: index === 1 ? 8200 : 820,
      used: [1000 + index * 29, 1000 + used],
    }));
    const [found] = suspicions(run(...looks));
    expect(found).toMatchObject({
      instrument: 'FF2',
      candidate: 820,
      cause: 'timesTen',
      against: ['lastValue', 'otherEngine', 'counterSlope'],
    });
  });

  it('is not suspected where one witness stands by the value', () => {
    // The counter says 920 lb/h for all of it: 92 lb in six minutes. Then the other readings are the odd ones.
    const looks = [0, 31, 61, 92].map((used, index): Look => ({
      ff1: 880,
      ff2: index === 1 ? 920 : 820,
      used: [1000 + index * 29, 1000 + used],
    }));
    const found = suspicions(run(...looks)).filter(({ glance }) => glance === 1);
    expect(found).toEqual([]);
  });

  it('is not suspected inside the band, nor where no single slip explains it', () => {
    expect(suspicions(run(USUAL, { ff1: 880, ff2: 870 }, USUAL))).toEqual([]);
    expect(suspicions(run(USUAL, { ff1: 880, ff2: 346 }, USUAL))).toEqual([]);
  });

  it('is not asked of a run of one look, or before there is a sheet', () => {
    expect(suspicions(run({ ff1: 880, ff2: 8 }))).toEqual([]);
    expect(suspicions(startFlight().view())).toEqual([]);
  });
});

describe('suspicions of flight A', () => {
  const whole = viewOfEntries(flightA.entries);

  it('find the wrong digit of line 51 and the exchanged engines of line 106 as they were written', () => {
    const asWritten = viewOfEntries(
      without(flightA.entries, ({ kind }) => kind === 'entryAmended'),
    );
    const found = suspicions(asWritten);
    expect(kinds(found)).toEqual([
      `digitSlip ${glanceOfLine(whole, 51)}`,
      `enginesSwapped ${glanceOfLine(whole, 106)}`,
    ]);
    // The crew amended FF2 from 910 to 810.
    expect(found[0]).toMatchObject({ instrument: 'FF2', value: 910, candidate: 810 });
  });

  it('are gone once the readings are amended', () => {
    expect(suspicions(whole)).toEqual([]);
  });

  it('change no result', () => {
    const before = pointResults(whole);
    suspicions(whole);
    expect(pointResults(whole)).toEqual(before);
    expect(idOfLine(flightA.idOf, 51)).toBeDefined();
  });
});
