import * as v from 'valibot';
import type { Body } from '../../src/record/entry.ts';
import { bodySchemas } from '../../src/record/kinds.ts';
import type { Measure } from '../../src/record/measure.ts';
import type { FlownStep } from '../flights/scriptSteps.ts';
import type { Scribe } from './scribe.ts';

/** Enough page time before a form is written to fill it. */
const FORM_MS = 40_000;

/** From the start screen to the day list. */
export async function beginSetUp(scribe: Scribe): Promise<void> {
  await scribe.tap('start.setup');
  await scribe.tablet.shown('days.new');
}

export async function openFlight(
  scribe: Scribe,
  flight: { readonly title: string; readonly date: string; readonly device: string },
): Promise<void> {
  await scribe.tap('sheet.toOpen');
  await scribe.tap('open.nature=flight');
  await scribe.put('open.title', flight.title);
  await scribe.put('open.date', flight.date);
  await scribe.put('open.device', flight.device);
  await scribe.tap('open.person=S1');
  await scribe.tap('open.go');
  await scribe.tablet.shown('brief.tab=hack');
}

/** Enters on Brief what is written before engine start, each form at its own time. */
export async function enterOnBrief(scribe: Scribe, step: FlownStep): Promise<void> {
  const body: unknown = JSON.parse(JSON.stringify(step.body));
  switch (step.kind) {
    case 'briefHeld':
      return enterBrief(scribe, v.parse(bodySchemas.briefHeld, body), step.writtenMs);
    case 'calibrationChecked':
      return enterCalibration(
        scribe,
        v.parse(bodySchemas.calibrationChecked, body),
        step.writtenMs,
      );
    case 'preflightDone':
      return enterPreflight(scribe, v.parse(bodySchemas.preflightDone, body), step.writtenMs);
    case 'timeHackTaken':
      return enterHack(scribe, v.parse(bodySchemas.timeHackTaken, body), step.writtenMs);
    default:
      throw new Error(`nobody enters ${step.kind} on Brief`);
  }
}

/** Brief held: what was said of cards, fuels, target, stop words and weather. */
async function enterBrief(scribe: Scribe, body: Body<'briefHeld'>, atMs: number): Promise<void> {
  await toForm(scribe, 'brief', atMs);
  await putText(scribe, 'brief.cardRevision', body.cardRevision);
  await putMeasure(scribe, 'brief.joker', body.joker);
  await putMeasure(scribe, 'brief.bingo', body.bingo);
  if (body.targetReductionFraction !== undefined) {
    await scribe.put(
      'brief.target',
      String(Number((body.targetReductionFraction * 100).toPrecision(12))),
    );
  }
  await putText(scribe, 'brief.stopWords', body.stopWords);
  await putText(scribe, 'brief.weather', body.weather);
  await scribe.tapAt('brief.write', atMs);
}

async function enterCalibration(
  scribe: Scribe,
  body: Body<'calibrationChecked'>,
  atMs: number,
): Promise<void> {
  await toForm(scribe, 'calibration', atMs);
  for (const { instrument, correction } of body.corrections) {
    await scribe.put(`calibration.${instrument}`, String(correction));
  }
  if (body.inDate !== undefined) {
    await tick(scribe, 'calibration.inDate', body.inDate);
  }
  await putText(scribe, 'calibration.probes', body.probes);
  await scribe.tapAt('calibration.write', atMs);
}

async function enterPreflight(
  scribe: Scribe,
  body: Body<'preflightDone'>,
  atMs: number,
): Promise<void> {
  await toForm(scribe, 'preflight', atMs);
  await putText(scribe, 'preflight.coversFitted', body.coversFitted?.toString());
  await putText(scribe, 'preflight.coversOf', body.coversOf?.toString());
  await putMeasure(scribe, 'preflight.rampWeight', body.rampWeight);
  await putMeasure(scribe, 'preflight.fuel', body.fuel);
  await putMeasure(scribe, 'preflight.fuelDensity', body.fuelDensity);
  await putMeasure(scribe, 'preflight.fuelTemperature', body.fuelTemperature);
  await putText(scribe, 'preflight.samplersLoaded', body.samplersLoaded?.join(', '));
  await scribe.tapAt('preflight.write', atMs);
}

/** The touch is at the callout; what the other clocks showed is typed after it. */
async function enterHack(scribe: Scribe, body: Body<'timeHackTaken'>, atMs: number): Promise<void> {
  scribe.waitUntil(atMs - 10_000);
  await scribe.tap('brief.tab=hack');
  await scribe.put('hack.master', clockText(body.master));
  await scribe.tapAt('hack.touch', atMs);
  for (const { clock, shown } of body.shown) {
    await scribe.put(`hack.shown=${clock}`, clockText(shown));
  }
  await putText(scribe, 'hack.doubt', body.doubtS?.toString());
  await putText(scribe, 'hack.method', body.method);
  await scribe.tap('hack.write');
}

/** HH:MM:SS of a UTC instant. */
export function clockText(ms: number): string {
  return new Date(ms).toISOString().slice(11, 19);
}

async function toForm(
  scribe: Scribe,
  form: 'brief' | 'calibration' | 'preflight',
  atMs: number,
): Promise<void> {
  scribe.waitUntil(atMs - FORM_MS);
  await scribe.tap('brief.tab=forms');
  await scribe.tap(`forms.tab=${form}`);
}

async function tick(scribe: Scribe, act: string, wanted: boolean): Promise<void> {
  await scribe.tablet.shown(act);
  if ((await scribe.tablet.page.locator(`[data-act="${act}"]`).isChecked()) !== wanted) {
    await scribe.tap(act);
  }
}

async function putText(scribe: Scribe, act: string, text: string | undefined): Promise<void> {
  if (text !== undefined) {
    await scribe.put(act, text);
  }
}

async function putMeasure(scribe: Scribe, act: string, measure: Measure | undefined) {
  if (measure !== undefined) {
    await scribe.put(act, String(measure.value));
    await scribe.tap(`${act}.unit=${measure.unit}`);
  }
}
