import { describe, expect, it } from 'vitest';
import { epochMs, recorderId } from '../../src/record/brand.ts';
import { clockFits, masterTimeOf } from '../../src/analysis/clocks.ts';
import { startOfFold } from '../../src/record/fold/fold.ts';
import { viewOf } from '../../src/record/flight.ts';
import { scriptA } from '../flights/flightA.ts';
import { flightOfScript, idOfLine } from '../flights/scriptToEntries.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { chained, REC_A, REC_B, START_MS } from '../record/writing.ts';

/** Clocks of the scripted flight as its answer sheet gives them: test/flights/scripts/flight-a-oracle.json, `clocks`. */
describe('clocks of the scripted flight', () => {
  const flight = flightOfScript(scriptA);
  const view = viewOf(flight.entries);
  const fits = clockFits(view.state);
  const [tablet, panel] = fits;

  it('uses the mean offset of the tablet, whose rate is not resolved', () => {
    expect(tablet).toMatchObject({ clock: 'tablet', offsetsS: [0.6, 1.1], use: 'offset' });
    expect(tablet?.middle?.offsetS).toBeCloseTo(0.85, 6);
    expect(tablet?.middle?.standardUncertaintyS).toBeCloseTo(0.21, 2);
    expect(tablet?.rate?.sPerH).toBeCloseTo(0.135, 3);
    expect(tablet?.rate?.standardUncertaintySPerH).toBeCloseTo(0.115, 3);
    expect(tablet?.rate?.resolved).toBe(false);
  });

  it('uses offset and rate of the panel clock', () => {
    expect(panel).toMatchObject({ clock: 'panel clock', offsetsS: [-4, -9], use: 'offsetAndRate' });
    expect(panel?.middle?.offsetS).toBeCloseTo(-6.5, 6);
    expect(panel?.middle?.standardUncertaintyS).toBeCloseTo(0.29, 2);
    expect(panel?.rate?.sPerH).toBeCloseTo(-1.351, 3);
    expect(panel?.rate?.standardUncertaintySPerH).toBeCloseTo(0.159, 3);
  });

  it('moves a time to the aircraft time base by the mean offset, for display', () => {
    const touchdown = view.byId(idOfLine(flight.idOf, 134));
    const at = touchdown?.at ?? epochMs(0);
    const rec = touchdown?.entry.rec ?? recorderId(REC_A);
    expect(at - masterTimeOf(fits, rec, at)).toBe(850);
  });
});

describe('clocks without a hack', () => {
  it('are listed with the flight sheet and used for nothing', () => {
    const opening = flightOfScript(scriptA).entries.slice(0, 1);
    const fits = clockFits(viewOf(opening).state);
    expect(fits.map((fit) => [fit.clock, fit.use, fit.middle])).toEqual([
      ['master', 'none', null],
      ['tablet', 'none', null],
      ['panel clock', 'none', null],
    ]);
    expect(masterTimeOf(fits, recorderId(REC_A), epochMs(START_MS))).toBe(START_MS);
  });

  it('are none in an empty flight', () => {
    expect(clockFits(startOfFold().state)).toEqual([]);
  });
});

describe('two tablets', () => {
  const hack = (afterMs: number, masterAfterMs: number) => ({
    kind: 'timeHackTaken',
    afterMs,
    body: { hack: 1, masterClock: 'master', master: START_MS + masterAfterMs, shown: [] },
  });
  // The first tablet is 2 s ahead of the master, the second 5 s behind it.
  const opening = {
    kind: 'flightOpened',
    afterMs: 0,
    body: {
      nature: 'practice',
      title: 'Two tablets',
      date: '2032-06-02',
      device: 'first',
      sheet: sheetOfScript(scriptA),
    },
  };
  const first = chained([
    opening,
    hack(62_000, 60_000),
    { kind: 'liftedOff', afterMs: 122_000, body: {} },
  ]);
  const second = chained(
    [hack(55_000, 60_000), { kind: 'gearMoved', afterMs: 114_000, body: { to: 'up' } }],
    { rec: REC_B },
  );
  const view = viewOf([...first, ...second]);

  it('stand on one timeline by their offsets: 119 s on the master comes before 120 s', () => {
    const kinds = view.standing.slice(1).map(({ entry, at }) => [entry.kind, at - START_MS]);
    expect(kinds).toEqual([
      ['timeHackTaken', 62_000],
      ['timeHackTaken', 62_000],
      ['gearMoved', 121_000],
      ['liftedOff', 122_000],
    ]);
  });

  it('keep the own time of the moved one, and both come to the master', () => {
    expect(view.standing.slice(1).map(({ ownAt }) => ownAt - START_MS)).toEqual([
      55_000, 62_000, 114_000, 122_000,
    ]);
    const fits = clockFits(view.state).filter((fit) => fit.clock === 'tablet');
    expect(Object.fromEntries(fits.map((fit) => [fit.rec, fit.offsetsS]))).toEqual({
      [REC_A]: [2],
      [REC_B]: [-5],
    });
    expect(
      view.standing.slice(1).map(({ entry, at }) => masterTimeOf(fits, entry.rec, at) - START_MS),
    ).toEqual([60_000, 60_000, 119_000, 120_000]);
  });

  it('stay apart when the other took no hack', () => {
    const apart = viewOf([...first, ...second.slice(1)]);
    expect(apart.standing.slice(1).map(({ at }) => at - START_MS)).toEqual([
      62_000, 114_000, 122_000,
    ]);
  });
});
