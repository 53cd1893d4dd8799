import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readTimeline } from '../../src/file/readTimeline.ts';
import { startFlight, type FlightView } from '../../src/record/flight.ts';
import { scriptA } from '../flights/flightA.ts';
import { stepsOfScript } from '../flights/scriptSteps.ts';
import live from '../flights/scripts/flight-a-live.json' with { type: 'json' };
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { pointsShown, savedFile, toDebriefOf, type ShownPoint } from './debriefShown.ts';
import { debriefScript, flyScript } from './flownFlightA.ts';
import { Journey } from './journey.ts';
import { liveShown, type LiveShown } from './liveShown.ts';
import { missingFacts } from './sameFacts.ts';
import { takeInFile } from './takeInFile.ts';

/*
 * The whole of flight A by touch. Expected: its own worked results (flight-a-oracle.json, flight-a-live.json), each
 * with how closely another program should agree; a shown figure is rounded to its last digit besides.
 */
const LIVE_WITHIN = live.compareWithin;
const ORACLE_WITHIN = oracle.compareWithin;
const INTERVAL_WITHIN_PCT = 0.2;
const ROUNDING_PCT = 0.05;
const FLYING_MS = 900_000;

const FUEL_READINGS = live.readings.map(({ n }) => n);
const steps = stepsOfScript(scriptA);

let journey: Journey;
const liveAt = new Map<number, LiveShown>();
let points: readonly ShownPoint[] = [];
let file = { name: '', text: '' };
let view: FlightView;
let afterReload: readonly ShownPoint[] = [];
let elsewhere: readonly ShownPoint[] = [];
let fileElsewhere = { name: '', text: '' };

beforeAll(async () => {
  journey = await Journey.begin();
  const sheet = sheetOfScript(scriptA);
  const scribe = await flyScript(journey, scriptA, sheet, {
    changeSheet: async () => undefined,
    afterLine: async (fly, line) => {
      if (FUEL_READINGS.includes(line)) {
        liveAt.set(line, await liveShown(fly));
      }
    },
  });
  await debriefScript(scribe, scriptA, sheet, () => true);
  points = await pointsShown(scribe);
  file = await savedFile(scribe);
  const read = readTimeline(file.text, file.text.length);
  view = startFlight().add(read.kind === 'read' ? read.entries : []);

  await scribe.tablet.page.reload();
  await toDebriefOf(scribe, scriptA.flight.title);
  afterReload = await pointsShown(scribe);

  const other = await journey.newScribe(scribe.nowMs);
  await takeInFile(other, file);
  await toDebriefOf(other, scriptA.flight.title);
  elsewhere = await pointsShown(other);
  fileElsewhere = await savedFile(other);
}, FLYING_MS);

afterAll(async () => {
  await journey.end();
});

describe('flight A, entered by touch through the built app', () => {
  it('has for each of the 152 lines its entry with the same facts', () => {
    expect(new Set(steps.map(({ line }) => line)).size).toBe(152);
    expect(missingFacts(view, steps)).toEqual([]);
  });

  it('finds no clock stepped and no touch unsure', () => {
    const notes = view.standing.flatMap(({ entry }) =>
      entry.kind === 'deviceNoted' && /step/i.test(entry.body.what) ? [entry.body] : [],
    );
    expect(notes).toEqual([]);
    expect(view.standing.filter(({ standing }) => standing === 'unconfirmed')).toEqual([]);
  });

  it('reads fuel 31 times', () => {
    expect(liveAt.size).toBe(31);
  });

  it.each(live.readings)('shows at fuel reading $n what may be shown then', (row) => {
    const shown = liveAt.get(row.n);
    const allowed = Object.keys(row.alsoAllowed ?? {});
    expect([row.state, ...allowed]).toContain(shown?.state);
    if (shown?.state === row.state && row.because[0] !== undefined) {
      expect(shown.because[0]).toBe(row.because[0]);
    }
    if (row.fuelReduction_pct !== null) {
      const within =
        row.state === 'struck' ? LIVE_WITHIN.struckReadings_pct : LIVE_WITHIN.reductions_pct;
      expect(Math.abs((shown?.pct ?? NaN) - row.fuelReduction_pct)).toBeLessThan(within);
      const half = ((row.interval95_pct?.[1] ?? NaN) - (row.interval95_pct?.[0] ?? NaN)) / 2;
      expect(Math.abs((shown?.halfPct ?? NaN) - half)).toBeLessThan(
        LIVE_WITHIN.uncertainties_relative * half + ROUNDING_PCT,
      );
    }
  });

  it.each(oracle.points)('shows $testPoint run $run as it was worked out', (row) => {
    const shown = points.find(({ point, run }) => point === row.testPoint && run === row.run);
    agree(shown?.fuel, row.fuelReduction_pct, row.interval95_pct);
    agree(shown?.drag, row.dragReduction_pct, row.dragReduction_interval95_pct);
    expect(shown?.words.includes('indicative')).toBe(row.status !== 'valid');
  });

  it('shows the same after a reload', () => {
    expect(afterReload).toEqual(points);
  });

  it('shows the same on another tablet that opens the file, and gives the same file', () => {
    expect(elsewhere).toEqual(points);
    expect(fileElsewhere).toEqual(file);
  });
});

function agree(shown: ShownPoint['fuel'] | undefined, pct: number, interval: readonly number[]) {
  expect(Math.abs((shown?.pct ?? NaN) - pct)).toBeLessThan(ORACLE_WITHIN.reductions_pct);
  const { pct: middle, halfPct } = shown ?? { pct: NaN, halfPct: NaN };
  const [low = NaN, high = NaN] = interval;
  expect(Math.abs(middle - halfPct - low)).toBeLessThan(INTERVAL_WITHIN_PCT);
  expect(Math.abs(middle + halfPct - high)).toBeLessThan(INTERVAL_WITHIN_PCT);
}
