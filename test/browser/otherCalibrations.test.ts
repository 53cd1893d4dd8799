import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { scriptA } from '../flights/flightA.ts';
import { withOtherGauges } from '../flights/otherGauges.ts';
import { readingsOf } from '../flights/scriptReadings.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import type { GlanceNumbers } from '../flights/secondMethod.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { agreesWithSecondMethod, runOf } from './againstSecondMethod.ts';
import { pointsShown, type ShownPoint } from './debriefShown.ts';
import { debriefScript, flyScript } from './flownFlightA.ts';
import { Journey } from './journey.ts';
import { typeCalibrations } from './sheetDriver.ts';

const FLYING_MS = 900_000;
/** Exact by definition: NIST Special Publication 811, appendix B. */
const IMPERIAL = { massKg: 0.45359237, heightM: 0.3048, climbMPerS: 0.3048 / 60 };
const GAUGES = [
  { id: 'FF1', correction: 15, repeatability: 4, residual: 8 },
  { id: 'FF2', correction: -35, repeatability: 7, residual: 5 },
] as const;

const script = withOtherGauges(scriptA, GAUGES, 20_320_602);
const sheet = sheetOfScript(script);
/** Which readings of a run count does not hang on the gauges of flow: drift, climb and condition are the same flight's. */
const flown = oracle.points.filter(({ status }) => status === 'valid');

let journey: Journey;
let points: readonly ShownPoint[] = [];

beforeAll(async () => {
  journey = await Journey.begin();
  const scribe = await flyScript(journey, script, sheet, {
    changeSheet: (brief) =>
      typeCalibrations(
        brief,
        sheet.instruments.filter(({ id }) => GAUGES.some((gauge) => gauge.id === id)),
      ),
    afterLine: async () => undefined,
  });
  await debriefScript(scribe, script, sheet, ({ kind }) => kind === 'entryAmended');
  points = await pointsShown(scribe);
}, FLYING_MS);

afterAll(async () => {
  await journey.end();
});

describe('flight A with other gauges and other scatter, entered by touch', () => {
  it.each(flown)(
    'gives $testPoint as the second method does',
    ({ testPoint, run, readingsUsed }) => {
      const shown = points.find((each) => each.point === testPoint && each.run === run);
      agreesWithSecondMethod(shown, sheet, asRead(testPoint, readingsUsed), [
        asRead('TP01', [21, 23, 24]),
        asRead('TP09', [127, 128, 129]),
      ]);
    },
  );

  it('is another flight than flight A', () => {
    const differs = flown.filter(({ testPoint, run, fuelReduction_pct: was }) => {
      const shown = points.find((each) => each.point === testPoint && each.run === run);
      return Math.abs((shown?.fuel?.pct ?? was) - was) > 0.1;
    });
    expect(flown.length).toBe(6);
    expect(differs.length).toBeGreaterThan(2);
  });
});

/** The readings of these lines as they stand after the script's own amendments. */
function asRead(point: string, lines: readonly number[]): readonly GlanceNumbers[] {
  return runOf(
    point,
    lines.map((n) => {
      const line = script.entries.find((entry) => entry.n === n);
      const amended = script.entries.find(
        (entry) => entry.kind === 'amendment' && entry.amends?.n === n,
      );
      return readingsOf(line ?? { n, recorder: '', utc: '', kind: '' }).map((row) => {
        const engine = /^FF(\d)$/.exec(row.instrument)?.[1];
        const change = amended?.changes?.find(({ field }) => field.endsWith(`.${engine}`));
        return change === undefined
          ? row
          : { instrument: row.instrument, value: Number(change.new) };
      });
    }),
    IMPERIAL,
  );
}
