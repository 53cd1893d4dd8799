import type { FlightSheet } from '../../src/record/sheet.ts';
import type { Script } from '../flights/script.ts';
import { byLine, stepsOfScript, type FlownStep } from '../flights/scriptSteps.ts';
import { beginSetUp, enterOnBrief, openFlight } from './briefDriver.ts';
import { DebriefDriver } from './debriefDriver.ts';
import { FlyDriver } from './flyDriver.ts';
import type { Journey } from './journey.ts';
import type { Scribe } from './scribe.ts';
import { addProbe, copySheet } from './sheetDriver.ts';

/** Lines that are written on Brief, on Fly, and the rest on Debrief. */
const LAST_ON_BRIEF = 4;
const LAST_ON_FLY = 138;
const MINUTE_MS = 60_000;

/**
 * The scripted flight on a tablet that knows nothing: a copy of the demo's flight sheet is changed and opened as a
 * flight, then every line is entered where a scribe would enter it, until the flight is ended and Debrief stands open.
 */
export async function flyScript(
  journey: Journey,
  script: Script,
  sheet: FlightSheet,
  given: {
    readonly changeSheet: (scribe: Scribe) => Promise<void>;
    readonly afterLine: (scribe: Scribe, line: number) => Promise<void>;
  },
): Promise<Scribe> {
  const lines = byLine(stepsOfScript(script));
  const [firstStep] = lines[0] ?? [];
  const scribe = await journey.newScribe((firstStep?.writtenMs ?? 0) - 25 * MINUTE_MS);
  await beginSetUp(scribe);
  await copySheet(scribe);
  // The script reads a rake that the demo's flight sheet does not name.
  await addProbe(scribe, { id: 'LA', wing: 'L', panel: 'L2', form: 'rake' });
  await given.changeSheet(scribe);
  const { title, date } = script.flight;
  await openFlight(scribe, { title, date, device: 'scribe tablet' });
  for (const step of lines.flat().filter(({ line }) => line <= LAST_ON_BRIEF)) {
    await enterOnBrief(scribe, step);
  }
  await scribe.tap('nav.fly');
  const fly = new FlyDriver(scribe, sheet);
  let endMs = scribe.nowMs;
  for (const steps of lines) {
    const [step] = steps;
    if (step !== undefined && step.line > LAST_ON_BRIEF && step.line <= LAST_ON_FLY) {
      await named(step.line, () => fly.enter(steps));
      await given.afterLine(scribe, step.line);
      endMs = step.writtenMs + 5 * MINUTE_MS;
    }
  }
  await fly.endFlight(endMs);
  return scribe;
}

/** Enters on Debrief the lines that the script has for after the flight. */
export async function debriefScript(
  scribe: Scribe,
  script: Script,
  sheet: FlightSheet,
  isWanted: (step: FlownStep) => boolean,
): Promise<void> {
  const utcOfLine = (line: number): number =>
    Date.parse(script.entries.find(({ n }) => n === line)?.utc ?? '');
  const debrief = new DebriefDriver(scribe, sheet, utcOfLine);
  for (const step of stepsOfScript(script)) {
    if (step.line > LAST_ON_FLY && isWanted(step)) {
      await named(step.line, () => debrief.enter(step));
    }
  }
}

async function named(line: number, enter: () => Promise<void>): Promise<void> {
  try {
    await enter();
  } catch (cause) {
    throw new Error(`line ${line} could not be entered`, { cause });
  }
}
