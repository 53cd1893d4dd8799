import { describe, expect, it } from 'vitest';
import { startFlight, viewOf } from '../../src/record/flight.ts';
import { itemAt, items } from '../../src/record/trail.ts';
import { scriptA } from '../flights/flightA.ts';
import { entriesUntil, flightOfScript, idOfLine } from '../flights/scriptToEntries.ts';

const flight = flightOfScript(scriptA);
const view = viewOf(flight.entries);
const { state } = view;
const glances = [...items(state.glances)];
const glanceOf = (n: number) =>
  glances.find((glance) => glance.by.includes(idOfLine(flight.idOf, n)));
const iso = (at: number | null | undefined) =>
  at === null || at === undefined ? at : new Date(at).toISOString().slice(11, 19);

describe('the scripted flight, whole', () => {
  it('has nine points in ten runs, the fourth interrupted and flown again, the sixth terminated', () => {
    expect([...items(state.runs)].map((run) => [run.point, run.run, run.state])).toEqual([
      ['TP01', 1, 'complete'],
      ['TP02', 1, 'complete'],
      ['TP03', 1, 'complete'],
      ['TP04', 1, 'interrupted'],
      ['TP04', 2, 'complete'],
      ['TP05', 1, 'complete'],
      ['TP06', 1, 'terminated'],
      ['TP07', 1, 'complete'],
      ['TP08', 1, 'complete'],
      ['TP09', 1, 'complete'],
    ]);
    expect(state.openRun).toBeNull();
  });

  it('gives each run its fuel glances', () => {
    expect([...items(state.runs)].map((run) => run.fuelGlances.length)).toEqual([
      3, 4, 3, 1, 3, 4, 1, 3, 3, 3,
    ]);
  });

  it('shows the amended flows as they are corrected and keeps them as they were read', () => {
    expect(glanceOf(51)?.readings['FF2']).toMatchObject({ value: 810 });
    expect(glanceOf(106)?.readings['FF1']).toMatchObject({ value: 830 });
    expect(glanceOf(106)?.readings['FF2']).toMatchObject({ value: 780 });
    const swapped = view.byId(idOfLine(flight.idOf, 106));
    expect(swapped?.amendedBy).toEqual([idOfLine(flight.idOf, 147)]);
    const original = swapped?.entry;
    expect(original?.kind === 'fuelRead' && original.body.readings?.[0]).toMatchObject({
      value: 780,
    });
  });

  it('leaves the wrong button out: the first moisture lasts until its true exit', () => {
    const moisture = [...items(state.intervals)].filter(({ kind }) => kind === 'moisture');
    expect(
      moisture.map(({ label, opened, closed }) => [label, iso(opened.at), iso(closed?.at)]),
    ).toEqual([
      ['M1', '23:10:42', '23:16:20'],
      ['M2', '00:03:30', '00:07:45'],
      ['M3', '00:24:30', '00:29:25'],
    ]);
    expect(view.byId(idOfLine(flight.idOf, 60))?.standing).toBe('withdrawn');
  });

  it('puts the late moisture entry where it happened, so the glance inside knows of it', () => {
    expect(view.byId(idOfLine(flight.idOf, 101))?.late).toBe(true);
    expect(iso(glanceOf(98)?.circumstances.moistureSince)).toBe('00:03:30');
    const then = viewOf(entriesUntil(flight, 98));
    expect(itemAt(then.state.glances, -1)?.circumstances.moistureSince).toBeNull();
  });

  it('has the last air data of the run for a glance that read none', () => {
    const borrowed = glanceOf(51)?.circumstances.airDataOfRun ?? -1;
    expect(itemAt(state.glances, borrowed)?.by).toEqual([idOfLine(flight.idOf, 50)]);
    expect(glanceOf(50)?.circumstances.airDataOfRun).toBeNull();
  });

  it('knows what upset the aircraft before the second point and when it had settled', () => {
    expect(iso(glanceOf(35)?.circumstances.lastUpsetAt)).toBe('22:33:45');
    expect(iso(glanceOf(39)?.circumstances.lastUpsetAt)).toBe('22:38:20');
    expect(iso(glanceOf(39)?.circumstances.conditionReachedAt)).toBe('22:41:10');
  });

  it('reads the wings panel by panel', () => {
    expect(state.panels['L1']?.state).toBe('turbulent');
    const gained = viewOf(entriesUntil(flight, 33)).state;
    expect(gained.panels['L1']).toMatchObject({ state: 'intermittent', from: 'probes' });
    expect(gained.panels['L2']).toMatchObject({ state: 'laminar', from: 'probes' });
    expect(gained.panels['R4']).toMatchObject({ state: 'intermittent' });
    const turbulent = Object.entries(gained.probes).filter(([, now]) => now.state === 'turbulent');
    expect(turbulent.map(([probe]) => probe)).toEqual(['L01', 'L18', 'R01', 'R14', 'R15', 'R16']);
  });

  it('ends with both hacks, the counters at shutdown, clear covers and suction off', () => {
    expect(state.hacks.map((hack) => hack.shown.map(({ clock }) => clock))).toEqual([
      ['tablet', 'panel clock'],
      ['tablet', 'panel clock'],
    ]);
    expect(Object.values(state.covers)).toEqual(Array.from({ length: 12 }, () => 'clear'));
    expect(state.counters['1']?.reading).toMatchObject({ value: 3545 });
    expect(state.counters['suctionUnit']?.reading).toMatchObject({ value: 207 });
    expect(state.suction.L.on).toBeNull();
    expect(state.samples.length).toBe(4);
    expect([...items(state.samples)].every((sample) => sample.closed !== null)).toBe(true);
  });

  it('asks only about the moisture exit before its late entry was written', () => {
    expect([...items(state.doubts)]).toEqual([]);
    const then = viewOf(entriesUntil(flight, 100)).state;
    expect([...items(then.doubts)].map((doubt) => [doubt.rule, doubt.subject])).toEqual([
      ['intervalNotOpen', 'moisture M2'],
    ]);
  });

  it('is the same touch by touch as all at once', () => {
    const growing = startFlight();
    for (const entry of flight.entries) {
      growing.add([entry]);
    }
    expect(growing.view().state).toEqual(state);
    expect(growing.view().standing).toEqual(view.standing);
  });
});
