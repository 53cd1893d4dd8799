import { epochMs } from '../../src/record/brand.ts';
import type { Entry } from '../../src/record/entry.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { chainOf } from '../file/smallFlight.ts';
import { scriptA } from '../flights/flightA.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';

const MINUTE_MS = 60_000;

/**
 * A short flight in cruise, ten minutes before `nowMs`: suction on, a point, a recorder and a sampler running, one fuel
 * reading, the clock compared, and covers that nobody released.
 */
export function inCruise(
  nowMs: number,
  sheet: FlightSheet = sheetOfScript(scriptA),
): readonly Entry[] {
  return chainOf(
    [
      {
        kind: 'flightOpened',
        body: {
          nature: 'flight',
          title: 'In cruise',
          date: new Date(nowMs).toISOString().slice(0, 10),
          device: 'test tablet',
          sheet,
        },
      },
      {
        kind: 'timeHackTaken',
        body: {
          hack: 1,
          masterClock: 'A',
          master: epochMs(Math.floor(nowMs / MINUTE_MS) * MINUTE_MS - 10 * MINUTE_MS),
          shown: [],
          method: 'read aloud, all clocks at once',
        },
      },
      { kind: 'recorderSwitched', body: { on: true } },
      { kind: 'liftedOff', body: {} },
      { kind: 'gearMoved', body: { to: 'up' } },
      { kind: 'phaseChosen', body: { phase: 'cruise' } },
      { kind: 'suctionTurnedOn', body: { wing: 'both' } },
      { kind: 'conditionReached', body: {} },
      { kind: 'testPointStarted', body: { point: 'TP02', run: 1 } },
      { kind: 'samplerOpened', body: { sample: 'S-01' } },
      {
        kind: 'fuelRead',
        body: {
          readings: [
            { instrument: 'FF1', value: 840, unit: 'lb/h' },
            { instrument: 'FF2', value: 790, unit: 'lb/h' },
          ],
        },
      },
    ],
    { startMs: epochMs(nowMs - 10 * MINUTE_MS) },
  );
}
