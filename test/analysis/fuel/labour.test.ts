import { describe, expect, it } from 'vitest';
import { labour } from '../../../src/analysis/fuel/labour.ts';
import { labourAcross } from '../../../src/analysis/fuel/labourAcross.ts';
import { viewOf, type FlightView } from '../../../src/record/flight.ts';
import { chained, type Said } from '../../record/writing.ts';
import { answerOf, reasonOf } from '../encounters/reading.ts';
import { turbulent } from '../encounters/smallFlight.ts';
import { entriesOf, flightOf, say, steadyLines, steadySheet, type Line } from './steadyFlight.ts';

const AFTER_S = 12_000;

const squawk = (id: string, panels: readonly string[], labourH?: number): Line =>
  say(AFTER_S, 'squawkRaised', {
    squawk: id,
    panels,
    words: `${id} to mend`,
    ...(labourH !== undefined && { labourH }),
  });

const work = (
  action: string,
  panels: readonly string[],
  also: { readonly squawk?: string; readonly labourH?: number } = {},
): Line => say(AFTER_S + 3600, 'maintenanceDone', { panels, action, ...also });

function workAfter(...lines: readonly Line[]): ReturnType<typeof labour>['work'] {
  return labour(flightOf([...steadyLines(), ...lines])).work;
}

function brokenIn(found: ReturnType<typeof workAfter>): readonly string[] {
  if (found.kind === 'noAnswer') throw new Error(`no answer: ${found.because}`);
  return found.how.broken;
}

describe('hours of work', () => {
  it('are those of the squawk until the work is booked, and never both', () => {
    const raised = [squawk('SQ-1', ['R2'], 4.5), squawk('SQ-2', ['L1', 'R1'], 2)];
    expect(answerOf(workAfter(...raised)).labourH).toBe(6.5);
    const found = answerOf(
      workAfter(...raised, work('cut and faired', ['R2'], { squawk: 'SQ-1', labourH: 6 })),
    );
    expect(found.labourH).toBe(8);
    expect(found.asRaisedH).toBe(2);
    expect(found.byTask.map(({ squawk: id, labourH, from }) => [id, labourH, from])).toEqual([
      ['SQ-2', 2, 'squawk'],
      ['SQ-1', 6, 'maintenance'],
    ]);
  });

  it('add up over two shifts on one squawk', () => {
    const { labourH } = answerOf(
      workAfter(
        squawk('SQ-1', ['R2'], 4.5),
        work('cut', ['R2'], { squawk: 'SQ-1', labourH: 1.5 }),
        work('faired', ['R2'], { squawk: 'SQ-1', labourH: 2 }),
      ),
    );
    expect(labourH).toBe(3.5);
  });

  it('stay as raised where the work was booked without hours', () => {
    const found = workAfter(squawk('SQ-1', ['R2'], 4.5), work('cut', ['R2'], { squawk: 'SQ-1' }));
    expect(answerOf(found)).toMatchObject({ labourH: 4.5, asRaisedH: 4.5 });
  });

  it('of work that names no squawk count, and may be counted twice on the same panel', () => {
    const other = workAfter(squawk('SQ-1', ['R2'], 4.5), work('washed', ['L1'], { labourH: 1 }));
    expect(answerOf(other).labourH).toBe(5.5);
    expect(brokenIn(other)).toEqual([]);
    const same = workAfter(squawk('SQ-1', ['R2'], 4.5), work('faired', ['R2'], { labourH: 1 }));
    expect(brokenIn(same)).toEqual(['maybeTwice']);
  });

  it('are the least where some work has none', () => {
    const found = workAfter(squawk('SQ-1', ['R2'], 4.5), squawk('SQ-2', ['L1']));
    expect(answerOf(found).labourH).toBe(4.5);
    expect(brokenIn(found)).toEqual(['hoursMissing']);
  });

  it('of a squawk raised again are those said last', () => {
    expect(
      answerOf(workAfter(squawk('SQ-1', ['R2'], 4.5), squawk('SQ-1', ['R2'], 3))).labourH,
    ).toBe(3);
  });

  it('stand together by the panels that they were written for', () => {
    const { byPanel } = answerOf(
      workAfter(
        squawk('SQ-1', ['L1', 'R1'], 2),
        squawk('SQ-2', ['R1', 'L1'], 3),
        squawk('SQ-3', ['R1'], 1),
      ),
    );
    expect(byPanel.map(({ panels, labourH }) => [panels, labourH])).toEqual([
      [['L1', 'R1'], 5],
      [['R1'], 1],
    ]);
  });

  it('are not given where nothing was written, or no hours', () => {
    expect(reasonOf(workAfter())).toBe('nothingWritten');
    expect(reasonOf(workAfter(squawk('SQ-1', ['R2'])))).toBe('noHoursGiven');
    expect(reasonOf(workAfter(squawk('SQ-1', ['R2'], -4)))).toBe('noHoursGiven');
  });

  it('are set against the time flown, lift-off at 600 s to touchdown at 9300 s', () => {
    const { perAirborneHour, perBlockHour } = labour(
      flightOf([...steadyLines(), squawk('SQ-1', ['R2'], 4.5)]),
    );
    expect(answerOf(perAirborneHour).labourPerFlownHour).toBeCloseTo(4.5 / (8700 / 3600), 9);
    // Blocks off at 300 s, on at 9480 s.
    expect(answerOf(perBlockHour).labourPerFlownHour).toBeCloseTo(4.5 / (9180 / 3600), 9);
  });

  it('are not set against a flight without an end', () => {
    const lines = [...steadyLines(), squawk('SQ-1', ['R2'], 4.5)];
    const never = (kind: string): FlightView =>
      flightOf(lines.filter((line) => line.kind !== kind));
    expect(reasonOf(labour(never('touchedDown')).perAirborneHour)).toBe('endNotWritten');
    expect(reasonOf(labour(never('liftedOff')).perAirborneHour)).toBe('startNotWritten');
  });
});

describe('work beside the next flight', () => {
  /** The steady flight so many days later, with one panel of three turbulent on both wings or none. */
  function flown(day: number, isClean: boolean, ...after: readonly Line[]): FlightView {
    const lines = [
      ...steadyLines(),
      say(3300, 'laminarGained', turbulent(isClean ? [] : [1, 2, 3, 4])),
      ...after,
    ];
    const entries = entriesOf(lines);
    const [opened] = entries;
    if (opened === undefined) throw new Error('a flight must be opened');
    const saids = entries.map((entry): Said => ({
      kind: entry.kind,
      body: entry.kind === 'unrecognised' ? {} : entry.body,
      afterMs: entry.wall - opened.wall + day * 86_400_000,
    }));
    return viewOf(chained(saids));
  }

  const first = flown(0, false, squawk('SQ-1', ['L1'], 4), squawk('SQ-2', ['R1'], 1));
  // Numbers of squawks begin anew; the work on the last flight's SQ-2 is booked under this record.
  const second = flown(
    3,
    true,
    squawk('SQ-1', ['R3'], 2),
    work('washed', ['R1'], { squawk: 'SQ-2', labourH: 3 }),
  );

  it('stands one flight late', () => {
    const [one, two] = labourAcross([first, second]);
    expect(one?.next).not.toBeNull();
    // SQ-2 was done after the second flight, so its hours prepare the third.
    expect(answerOf(one?.work ?? missing()).labourH).toBe(4);
    expect(answerOf(two?.work ?? missing()).labourH).toBe(5);
    expect(two?.next).toBeNull();
  });

  it('shows what the next flight made of it', () => {
    const [one] = labourAcross([first, second]);
    const next = one?.next ?? missing();
    expect(answerOf(next.clearAir).byAreaFraction).toBe(1);
    const { kg, fraction } = answerOf(next.netSaving);
    expect(kg / 0.45359237).toBeCloseTo(520, 6);
    expect(fraction).toBeCloseTo(520 / 2400, 9);
  });

  it('does not depend on the order in which the flights are given', () => {
    expect(labourAcross([second, first])).toEqual(labourAcross([first, second]));
  });

  it('does not pair flights of two aircraft', () => {
    const sheet = steadySheet();
    const other = viewOf(
      entriesOf(steadyLines(), { ...sheet, aircraft: { ...sheet.aircraft, mark: 'QL-OTH' } }),
    );
    expect(labourAcross([first, other]).map(({ next }) => next)).toEqual([null, null]);
  });

  it('says why the next flight has nothing to show', () => {
    const bare = viewOf(
      chained([
        {
          kind: 'flightOpened',
          afterMs: 9 * 86_400_000,
          body: {
            nature: 'flight',
            title: 'bare',
            date: '2032-06-11',
            device: 'tablet',
            sheet: steadySheet(),
          },
        },
      ]),
    );
    const next = labourAcross([first, bare])[0]?.next ?? missing();
    expect(reasonOf(next.clearAir)).toBe('notLevel');
    expect(reasonOf(next.netSaving)).toBe('noSuctionSpan');
  });
});

function missing(): never {
  throw new Error('it must be found');
}
