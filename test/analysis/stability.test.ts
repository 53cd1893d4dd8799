import { describe, expect, it } from 'vitest';
import { stabilityAt, stabilityOf } from '../../src/analysis/stability.ts';
import type { Steadiness, StabilityAnswer } from '../../src/analysis/steadiness.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import { startFlight } from '../../src/record/flight.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { flightA, glanceOfLine, sealed, sheetA, viewOfEntries } from './flights.ts';
import { CRUISE, runOfLooks, type Look } from './steadyRun.ts';

/*
 * Window 180 s unless the flight sheet says otherwise; Mach within twice 0.005, height within 100 ft, air within 1 K,
 * flow within 3 %; nothing to correct up to 14 ft/min and 0.36 kt/min.
 */

const AT_S = [0, 60, 120, 180];

/** Looks a minute apart, each field as the function of minutes says. */
function looks(change: (minutes: number) => Partial<Look> = () => ({})): readonly Look[] {
  return AT_S.map((afterS) => ({ afterS, ...CRUISE, ...change(afterS / 60) }));
}

/** The window that ends at the last look; the counters before the run are a look of their own. */
function lastOf(of: readonly Look[], sheet: FlightSheet = sheetA): StabilityAnswer {
  return stabilityAt(viewOfEntries(sealed(runOfLooks(of, sheet))), of.length);
}

function valueOf(answer: StabilityAnswer): Steadiness {
  if (answer.kind === 'noAnswer') throw new RangeError(answer.because);
  return answer.value;
}

function because(answer: StabilityAnswer): string {
  return answer.kind === 'noAnswer' ? answer.because : answer.value.kind;
}

describe('steadiness over the window before a reading', () => {
  it.each([
    ['nothing moves', () => ({}), 'stable', []],
    // 10 ft/min is below 14.
    ['height creeps', (m: number) => ({ heightFt: 37_000 + 10 * m }), 'stable', []],
    ['height climbs', (m: number) => ({ heightFt: 37_000 + 30 * m }), 'correctable', ['climb']],
    // 0.0015 of Mach a minute is 0.86 kt/min at 574 kt of sound.
    ['speed grows', (m: number) => ({ mach: 0.718 + 0.0015 * m }), 'correctable', ['acceleration']],
    [
      'height leaves the band',
      (m: number) => ({ heightFt: 37_000 + 36 * m }),
      'unstable',
      ['altitudeRange', 'climb'],
    ],
    [
      'one flow is off',
      (m: number) => ({ flowLbPerH: m === 1 ? 890 : 860 }),
      'unstable',
      ['fuelFlowRange'],
    ],
    [
      'air warms',
      (m: number) => ({ airC: m === 2 ? -55 : -56.5 }),
      'unstable',
      ['temperatureRange'],
    ],
  ] as const)('%s', (_, change, verdict, failing) => {
    const value = valueOf(lastOf(looks(change)));
    expect(value.kind).toBe(verdict);
    expect(value.failing).toEqual(failing);
  });

  it('measures what it judges', () => {
    const value = valueOf(lastOf(looks((m) => ({ heightFt: 37_000 + 30 * m }))));
    expect(value.altitudeRangeM).toBeCloseTo(90 * 0.3048, 9);
    // 30 ft/min in standard air: 216.65 K at -56.5 degrees is the standard day.
    expect(value.climbMPerS).toBeCloseTo((30 * 0.3048) / 60, 9);
    expect(value.machRange).toBe(0);
  });

  it('names the looks that it rests on', () => {
    const answer = lastOf(looks());
    expect(answer.kind === 'answer' && answer.how.entries.length).toBe(4);
  });

  it('forgets what lies before the window', () => {
    const early: Look = { afterS: 0, ...CRUISE, heightFt: 36_000 };
    const later = [60, 120, 180, 241].map((afterS): Look => ({ afterS, ...CRUISE }));
    expect(because(lastOf([early, ...later]))).toBe('stable');
  });

  it('goes by the limits of the flight sheet', () => {
    const sheet: FlightSheet = {
      ...sheetA,
      stability: {
        windowS: 300,
        altitudeRange: { value: 20, unit: 'ft' },
        climb: { value: 5, unit: 'ft/min' },
      },
    };
    const creeping = looks((m) => ({ heightFt: 37_000 + 10 * m }));
    const value = valueOf(lastOf(creeping, sheet));
    expect(value.failing).toEqual(['altitudeRange', 'climb']);
    expect(value.limits.windowS).toBe(300);
  });
});

describe('no verdict, and why', () => {
  it('two looks are too few', () => {
    expect(because(lastOf(looks().slice(0, 2)))).toBe('tooFewLooks');
  });

  it('so is an instrument that was read twice', () => {
    const of = looks().map(({ airC, ...look }) =>
      look.afterS < 120 ? look : { ...look, ...(airC !== undefined && { airC }) },
    );
    expect(because(lastOf(of))).toBe('tooFewLooks');
  });

  it('looks within a quarter of the window cover too little of it', () => {
    const close = [0, 20, 40].map((afterS): Look => ({ afterS, ...CRUISE }));
    expect(because(lastOf(close))).toBe('windowTooShort');
  });

  it('a digit too many is no air that was flown in', () => {
    expect(because(lastOf(looks((m) => ({ mach: m === 1 ? 7.2 : 0.72 }))))).toBe('looksImpossible');
  });

  it('no sheet, no reading, no run', () => {
    const view = viewOfEntries(flightA.entries);
    expect(because(stabilityAt(startFlight().view(), 0))).toBe('noFlightSheet');
    expect(because(stabilityAt(view, 100_000))).toBe('noReading');
    expect(because(stabilityOf(view, 100_000))).toBe('noReading');
    const { ramp: _, ...weights } = sheetA.weights;
    expect(because(lastOf(looks(), { ...sheetA, weights }))).toBe('noWeight');
  });
});

describe('steadiness of a run', () => {
  it('is that of its worst window', () => {
    const of = [0, 60, 120, 180, 240, 300].map((afterS): Look => ({
      afterS,
      ...CRUISE,
      heightFt: afterS === 300 ? 37_050 : 37_000,
    }));
    const view = viewOfEntries(sealed(runOfLooks(of)));
    const answer = valueOf(stabilityOf(view, 0));
    expect(answer.kind).toBe('correctable');
    expect(answer.glance).toBe(6);
    expect(pointResults(view)[0]?.stability).toEqual(stabilityOf(view, 0));
  });

  it('cannot be told from the three readings of a run of flight A, minutes apart', () => {
    const view = viewOfEntries(flightA.entries);
    expect(because(stabilityAt(view, glanceOfLine(view, 42)))).toBe('tooFewLooks');
    const results = pointResults(view);
    expect(results.length).toBe(10);
    expect(results.map(({ stability }) => because(stability))).toContain('tooFewLooks');
  });

  it('can be told over a longer window', () => {
    const sheet: FlightSheet = { ...sheetA, stability: { windowS: 900 } };
    const of = [0, 240, 480, 720].map((afterS): Look => ({ afterS, ...CRUISE }));
    const view = viewOfEntries(sealed(runOfLooks(of, sheet)));
    expect(valueOf(stabilityOf(view, 0)).kind).toBe('stable');
  });
});
