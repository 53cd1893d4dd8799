import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as v from 'valibot';
import { readTimeline } from '../../src/file/readTimeline.ts';
import { epochMs } from '../../src/record/brand.ts';
import { startFlight, type FlightView } from '../../src/record/flight.ts';
import { bodySchemas } from '../../src/record/kinds.ts';
import { metricFlight } from '../flights/metricFlight.ts';
import type { FlownStep } from '../flights/scriptSteps.ts';
import type { GlanceNumbers } from '../flights/secondMethod.ts';
import { agreesWithSecondMethod, runOf } from './againstSecondMethod.ts';
import { beginSetUp, enterOnBrief, openFlight } from './briefDriver.ts';
import { pointsShown, savedFile, type ShownPoint } from './debriefShown.ts';
import { FlyDriver } from './flyDriver.ts';
import { Journey } from './journey.ts';
import { missingFacts } from './sameFacts.ts';
import { typeSheet } from './sheetDriver.ts';

const FLYING_MS = 900_000;
const HOUR_MS = 3_600_000;
const METRIC = { massKg: 1, heightM: 1, climbMPerS: 1 };
const READINGS_A_RUN = 3;

const { sheet, steps: generated } = metricFlight(7);
/** The tablet's clock is right, so its time is the time of the event. */
const steps = generated.map(({ kind, body, utcMs }, line): FlownStep => {
  const at = epochMs(utcMs);
  return { kind, body, line, atMs: at, writtenMs: at };
});

let journey: Journey;
let points: readonly ShownPoint[] = [];
let view: FlightView;

beforeAll(async () => {
  journey = await Journey.begin();
  const firstMs = steps[0]?.atMs ?? 0;
  const scribe = await journey.newScribe(firstMs - HOUR_MS);
  await beginSetUp(scribe);
  await typeSheet(scribe, sheet);
  const date = new Date(firstMs).toISOString().slice(0, 10);
  await openFlight(scribe, { title: sheet.title, date, device: 'scribe tablet' });
  const [onGround, inAir] = [steps.slice(0, 1), steps.slice(1)];
  for (const step of onGround) {
    await enterOnBrief(scribe, step);
  }
  await scribe.tap('nav.fly');
  const fly = new FlyDriver(scribe, sheet);
  for (const step of inAir) {
    await fly.enter([step]);
  }
  await fly.endFlight((steps.at(-1)?.atMs ?? 0) + 60_000);
  points = await pointsShown(scribe);
  const { text } = await savedFile(scribe);
  const read = readTimeline(text, text.length);
  view = startFlight().add(read.kind === 'read' ? read.entries : []);
}, FLYING_MS);

afterAll(async () => {
  await journey.end();
});

describe('a four-engine metric flight, set up by touch from a blank flight sheet', () => {
  it('has each entry with the same facts', () => {
    expect(missingFacts(view, steps)).toEqual([]);
  });

  it('keeps the flight sheet that was typed', () => {
    const { panels, probes, aircraft, engineMap, weights, condition, tolerances } = sheet;
    const { borrowedBaseline, testCards, legs, massUnit, heightUnit } = sheet;
    const stands = view.state.sheet;
    expect(stands).toMatchObject({ panels, probes, aircraft, engineMap, weights, condition });
    expect(stands).toMatchObject({ tolerances, borrowedBaseline, testCards, legs });
    expect(stands).toMatchObject({ massUnit, heightUnit });
    // The tablet's own clock is on every flight sheet.
    expect(view.state.sheet?.clocks[0]).toEqual(sheet.clocks[0]);
    for (const instrument of sheet.instruments) {
      expect(view.state.sheet?.instruments).toContainEqual(instrument);
    }
  });

  it.each(['B1', 'B2'])('gives point %s as the second method does', (point) => {
    const shown = points.find((each) => each.point === point);
    agreesWithSecondMethod(shown, sheet, read(point), [read('A1'), read('A2')]);
  });
});

/** The readings of a point as they were generated. */
function read(point: string): readonly GlanceNumbers[] {
  const from = steps.findIndex(
    ({ kind, body }) => kind === 'testPointStarted' && 'point' in body && body.point === point,
  );
  const looks = steps.slice(from).filter(({ kind }) => kind === 'fuelRead');
  return runOf(
    point,
    looks.slice(0, READINGS_A_RUN).map(({ body }) => rowsOf(body)),
    METRIC,
  );
}

function rowsOf(body: object) {
  const { readings = [] } = v.parse(bodySchemas.fuelRead, body);
  return readings.flatMap((row) => ('value' in row ? [row] : []));
}
