import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../../src/analysis/encounters/evidence.ts';
import { losses, type Loss } from '../../../src/analysis/encounters/losses.ts';
import { panelsFor } from '../../../src/record/blankSheet.ts';
import { startFlight, type FlightView } from '../../../src/record/flight.ts';
import { flightA, viewOfEntries } from '../flights.ts';
import {
  ALL,
  entriesOf,
  flightOf,
  laminarFlight,
  probes,
  say,
  smallSheet,
  turbulent,
  type Line,
} from './smallFlight.ts';

/** The fixed order in which candidates are tried (the debrief question "where, when and why"). */
const ORDER: readonly Evidence['candidate'][] = [
  'moisture',
  'suctionChange',
  'offCondition',
  'wedge',
  'chronic',
  'root',
  'unexplained',
];

function spoken({ evidence }: Loss): readonly string[] {
  return evidence.filter(({ finding }) => finding === 'speaks').map(({ candidate }) => candidate);
}

function lostIn(view: FlightView, earlier: readonly FlightView[] = []): Loss {
  const lost = losses(view, earlier).filter(({ kind, wing }) => kind === 'lost' && wing === 'L');
  const [first, ...others] = lost;
  if (first === undefined || others.length > 0) throw new RangeError('one loss on L is expected');
  return first;
}

const of = (...lines: readonly Line[]): Loss => lostIn(flightOf([...laminarFlight(), ...lines]));
const lostAt1000 = say(1000, 'laminarLost', turbulent([5, 6, 7], ['L']));

describe('losses of flight A', () => {
  const found = losses(viewOfEntries(flightA.entries));
  const at = (utc: string, wing: 'L' | 'R'): Loss => {
    const wantedMs = Date.parse(utc);
    const near = found.find(
      (loss) => loss.wing === wing && Math.abs(loss.seen.at - wantedMs) < 2000,
    );
    if (near === undefined) throw new RangeError(`a loss at ${utc} must be found`);
    return near;
  };

  it('tries every candidate on every loss, in the fixed order', () => {
    expect(found.length).toBeGreaterThan(10);
    for (const { evidence } of found) {
      expect(evidence.map(({ candidate }) => candidate)).toEqual(ORDER);
    }
  });

  it.each([
    ['2032-06-02T23:11:14Z', 'L'],
    ['2032-06-02T23:11:22Z', 'R'],
    ['2032-06-03T00:04:14Z', 'L'],
    ['2032-06-03T00:24:53Z', 'R'],
  ] as const)('lets moisture alone speak for the loss at %s on %s', (utc, wing) => {
    expect(spoken(at(utc, wing))).toEqual(['moisture']);
  });

  it('finds the neighbours behind the cover that hung as a wedge from suction on', () => {
    const wedge = found.find(({ probes: [first] }) => first === 'R14');
    expect(wedge).toMatchObject({
      kind: 'neverLaminar',
      probes: ['R14', 'R15', 'R16'],
      panels: ['R4'],
    });
    expect(wedge === undefined ? [] : spoken(wedge)).toContain('wedge');
  });

  it('lets the root speak for the innermost probes that never came in', () => {
    const never = found.filter(({ kind }) => kind === 'neverLaminar');
    const byRoot = never.filter((loss) => spoken(loss).includes('root'));
    expect(byRoot.flatMap((loss) => loss.probes)).toEqual(['L01', 'R01']);
  });

  it('lets the valve speak for what was lost by command', () => {
    const commanded = at('2032-06-02T23:46:50Z', 'R');
    expect(commanded.byCommand).toBe(true);
    expect(spoken(commanded)).toContain('suctionChange');
  });

  it('lets less suction speak for what a reading found lost a while after it', () => {
    const read = at('2032-06-02T23:07:40Z', 'L');
    expect(read).toMatchObject({ inReading: true, probes: ['L22'] });
    expect(spoken(read)).toEqual(['suctionChange']);
  });
});

describe('evidence for a loss', () => {
  it('is unexplained when nothing speaks', () => {
    const loss = of(lostAt1000);
    expect(spoken(loss)).toEqual(['unexplained']);
    expect(loss).toMatchObject({ probes: probes('L', 5, 6, 7), panels: ['L2'], byCommand: false });
  });

  it('counts moisture that closed less than 300 s before', () => {
    const closedAt = (closedS: number): Loss =>
      of(
        say(600, 'moistureEntered', { encounter: 'M1' }),
        say(closedS, 'moistureExited', { encounter: 'M1' }),
        lostAt1000,
      );
    expect(spoken(closedAt(700))).toEqual(['unexplained']);
    const [moisture] = closedAt(701).evidence;
    expect(moisture).toMatchObject({
      finding: 'speaks',
      facts: { label: 'M1', sinceEntryS: 400, sinceExitS: 299 },
    });
    expect(moisture?.entries.length).toBe(2);
  });

  it('counts a suction change on that wing within 60 s', () => {
    const changedAt = (afterS: number, wing: string): Loss =>
      of(say(afterS, 'suctionChanged', { wing, setting: 'less' }), lostAt1000);
    expect(spoken(changedAt(939, 'L'))).toEqual(['unexplained']);
    expect(spoken(changedAt(940, 'R'))).toEqual(['unexplained']);
    expect(changedAt(940, 'both').evidence[1]).toMatchObject({
      finding: 'speaks',
      facts: { beforeS: 60, what: 'changed', setting: 'less' },
    });
  });

  it('holds the nearest air data against the tolerances, and knows when there are none', () => {
    const machRead = (afterS: number, value: number): Loss =>
      of(
        say(afterS, 'airDataRead', { readings: [{ instrument: 'MACH', value, unit: '1' }] }),
        lostAt1000,
      );
    expect(of(lostAt1000).evidence[2]?.finding).toBe('unknown');
    expect(machRead(690, 0.72).evidence[2]?.finding).toBe('unknown');
    // The card is at 0.710 and allows 0.005 either side.
    expect(machRead(900, 0.715).evidence[2]?.finding).toBe('silent');
    expect(machRead(900, 0.716).evidence[2]).toMatchObject({
      finding: 'speaks',
      facts: { looks: [{ field: 'mach', departure: expect.closeTo(0.006, 9), tolerance: 0.005 }] },
    });
  });

  it('sees a wedge where neighbours never came in, and none in one probe alone', () => {
    const never = (numbers: readonly number[]): Loss =>
      lostIn(
        flightOf([
          say(200, 'suctionTurnedOn', { wing: 'both' }),
          say(300, 'laminarGained', turbulent(numbers)),
          say(1000, 'laminarLost', turbulent([...numbers, 8], ['L'])),
        ]),
      );
    expect(spoken(never([6, 7]))).toEqual(['wedge']);
    expect(spoken(never([7]))).toEqual(['unexplained']);
    // Seven of twelve are no wedge.
    expect(spoken(never([2, 3, 4, 5, 6, 7]))).toEqual(['unexplained']);
  });

  it('lets the root speak when the loss runs from it and stops short of the tip', () => {
    expect(spoken(of(say(1000, 'laminarLost', turbulent([1, 2], ['L']))))).toEqual(['root']);
    expect(spoken(of(say(1000, 'laminarLost', turbulent([1, 2, 9], ['L']))))).toEqual([
      'unexplained',
    ]);
    expect(spoken(of(say(1000, 'laminarLost', turbulent(ALL, ['L']))))).toEqual(['unexplained']);
  });

  it('asks earlier flights about the same probe where they are given', () => {
    const flight = (numbers: readonly number[]): FlightView =>
      flightOf([
        ...laminarFlight(),
        say(400, 'probesRead', turbulent(numbers)),
        say(500, 'testPointStarted', { point: 'TP02', run: 1 }),
        say(900, 'testPointEnded', { point: 'TP02', run: 1 }),
      ]);
    const now = flightOf([...laminarFlight(), lostAt1000]);
    expect(lostIn(now).evidence[4]?.finding).toBe('unknown');
    expect(lostIn(now, [flight([])]).evidence[4]?.finding).toBe('silent');
    expect(lostIn(now, [flight([6]), flight([])]).evidence[4]).toMatchObject({
      finding: 'speaks',
      facts: { probes: [{ probe: 'L06', turbulentFlights: 1, eligibleFlights: 2 }] },
    });
  });

  it('sets what people decided beside the candidates', () => {
    const lines = [...laminarFlight(), lostAt1000];
    const lost = entriesOf(lines).find(({ kind }) => kind === 'laminarLost');
    if (lost === undefined) throw new RangeError('a loss must be written');
    const assigned = (cause: string, afterS: number): Line =>
      say(afterS, 'causeAssigned', { target: lost.id, cause, reason: 'seen on the ground' });
    const loss = lostIn(
      startFlight().add(entriesOf([...lines, assigned('insect', 5000), assigned('step', 6000)])),
    );
    expect(loss.causes.map(({ cause, author }) => [cause, author])).toEqual([
      ['insect', 'S1'],
      ['step', 'S1'],
    ]);
    expect(spoken(loss)).toEqual(['unexplained']);
  });

  it('works on panels where the aircraft has no probes, and on twelve panels a wing', () => {
    const panels = panelsFor({
      aWing: 12,
      area: 10,
      areaUnit: 'ft2',
      spanFromFraction: 0.1,
      spanToFraction: 0.9,
    });
    const sheet = { ...smallSheet, probes: [], panels };
    const ids = panels.filter(({ wing }) => wing === 'L').map(({ id }) => id);
    const entries = entriesOf(
      [
        say(200, 'suctionTurnedOn', { wing: 'both' }),
        say(300, 'laminarGained', { panels: ids }),
        say(1000, 'laminarLost', { panels: ['L1', 'L2'] }),
      ],
      sheet,
    );
    const loss = lostIn(startFlight().add(entries));
    expect(loss).toMatchObject({
      panels: ['L1', 'L2'],
      probes: [],
      from: { as: 'panels', laminar: 12 },
      to: { as: 'panels', laminar: 10 },
    });
    expect(spoken(loss)).toEqual(['root']);
  });
});
