import { describe, expect, it } from 'vitest';
import {
  chronicPanels,
  type ChronicPanels,
} from '../../../src/analysis/encounters/chronicPanels.ts';
import type { FlightView } from '../../../src/record/flight.ts';
import { flightA, viewOfEntries } from '../flights.ts';
import { answerOf, reasonOf } from './reading.ts';
import {
  flightOf,
  laminarFlight,
  run,
  say,
  smallSheet,
  turbulent,
  withUnserviceable,
  type Line,
} from './smallFlight.ts';

describe('chronic panels', () => {
  const flight = (numbers: readonly number[], ...more: readonly Line[]): FlightView =>
    flightOf([
      ...laminarFlight(),
      say(400, 'probesRead', turbulent(numbers)),
      ...run(500, 900),
      ...more,
    ]);
  const squawk = (panels: readonly string[], labourH: number): Line =>
    say(9000, 'squawkRaised', { squawk: 'SQ-1', panels, words: 'rough', labourH });

  function probeIn(result: ChronicPanels, probe: string): ChronicPanels['probes'][number] {
    const found = result.probes.find((one) => one.probe === probe);
    if (found === undefined) throw new RangeError(`${probe} must be found`);
    return found;
  }

  it('counts turbulent flights over eligible ones, and shows n', () => {
    const { record } = probeIn(chronicPanels([flight([5]), flight([5]), flight([])]), 'L05');
    expect(answerOf(record)).toEqual({
      turbulentFlights: 2,
      eligibleFlights: 3,
      turbulentFraction: 2 / 3,
    });
  });

  it('does not call a probe turbulent that was intermittent all along', () => {
    const intermittent = (wing: 'L' | 'R'): object => ({
      of: 12,
      turbulentProbes: [],
      intermittentProbes: [`${wing}05`],
    });
    const view = flightOf([
      ...laminarFlight(),
      say(400, 'probesRead', { wings: { L: intermittent('L'), R: intermittent('R') } }),
      ...run(500, 900),
    ]);
    const { record } = probeIn(chronicPanels([view]), 'L05');
    expect(answerOf(record)).toMatchObject({ turbulentFlights: 0, eligibleFlights: 1 });
  });

  it.each([
    ['coverUnknown', laminarFlight().filter(({ kind }) => kind !== 'coversReleased'), smallSheet],
    [
      'coverOn',
      laminarFlight().map((line) =>
        line.kind === 'coversReleased'
          ? say(60, 'coversReleased', { wing: 'both', hung: ['L2'] })
          : line,
      ),
      smallSheet,
    ],
    ['unserviceable', laminarFlight(), withUnserviceable('L05')],
    [
      'noNominalClearRun',
      laminarFlight().map((line) =>
        line.kind === 'suctionTurnedOn' ? say(200, 'probesRead', turbulent([])) : line,
      ),
      { ...smallSheet, testCards: [] },
    ],
  ] as const)('leaves a flight out where %s', (because, lines, sheet) => {
    const { record, leftOut } = probeIn(
      chronicPanels([flightOf([...lines, ...run(500, 900)], sheet)]),
      'L05',
    );
    expect(reasonOf(record)).toBe('noEligibleFlight');
    expect(leftOut).toEqual([{ because, flights: 1 }]);
  });

  it('leaves out flights of another aircraft than the newest one', () => {
    // The demonstration flight was opened an hour earlier, by another aircraft with more panels.
    const result = chronicPanels([flight([5]), viewOfEntries(flightA.entries)]);
    expect(result.panels.length).toBe(6);
    const { record, leftOut } = probeIn(result, 'L05');
    expect(answerOf(record).eligibleFlights).toBe(1);
    expect(leftOut).toEqual([{ because: 'otherAircraft', flights: 1 }]);
  });

  it('ranks by area and rate for each hour of work', () => {
    const { panels, labourElsewhere } = chronicPanels([
      flight(
        [1, 2, 5, 9],
        squawk(['L1', 'L2'], 6),
        say(9100, 'squawkRaised', {
          squawk: 'SQ-2',
          panels: ['hangar'],
          words: 'tow bar',
          labourH: 1,
        }),
      ),
    ]);
    const ranked = panels.filter(({ rank }) => rank.kind === 'answer');
    // 7.5 square feet a probe, two on L1 and one on L2, 3 h each.
    const SQUARE_FOOT_M2 = 0.3048 ** 2;
    expect(ranked.map(({ panel }) => panel)).toEqual(['L1', 'L2']);
    expect(ranked.map(({ rank }) => answerOf(rank).areaM2PerH)).toEqual([
      expect.closeTo(5 * SQUARE_FOOT_M2, 9),
      expect.closeTo(2.5 * SQUARE_FOOT_M2, 9),
    ]);
    // Turbulent without stated hours comes next, in the order of area: R1 before the others.
    expect(panels.slice(2, 4).map(({ panel, rank }) => [panel, reasonOf(rank)])).toEqual([
      ['R1', 'noLabourStated'],
      ['L3', 'noLabourStated'],
    ]);
    expect(
      panels.flatMap(({ rank }) => (rank.kind === 'noAnswer' ? rank.because : [])),
    ).not.toContain('neverTurbulent');
    expect(labourElsewhere).toMatchObject([{ name: 'hangar', labourH: 1 }]);
  });

  it('takes the hours that were worked for those that were expected', () => {
    const { panels } = chronicPanels([
      flight(
        [1],
        squawk(['L1'], 6),
        say(9200, 'maintenanceDone', {
          squawk: 'SQ-1',
          panels: ['L1'],
          action: 'filled',
          labourH: 2,
        }),
        say(9300, 'maintenanceDone', {
          squawk: 'SQ-1',
          panels: ['L1'],
          action: 'sanded',
          labourH: 1,
        }),
      ),
    ]);
    const own = panels.find(({ panel }) => panel === 'L1');
    expect(own === undefined ? NaN : answerOf(own.labour).labourH).toBe(3);
  });

  it('has nothing to say without a flight', () => {
    expect(chronicPanels([])).toEqual({ probes: [], panels: [], labourElsewhere: [] });
  });
});
