import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mapElsewhere, mapOfEngines } from '../../src/aero/engines.ts';
import {
  dragReductionOnMap,
  fuelFlowOfThrust,
  slopeAtFuelFlow,
  thrustOfFuelFlow,
  thrustTable,
  type ThrustLine,
  type ThrustMap,
  type ThrustRow,
} from '../../src/aero/thrustMap.ts';
import { itemAt, valueOf } from './referenceRow.ts';

const line: ThrustLine = { kind: 'line', idleKgPerS: 0.02, slopeKgPerSPerN: 2e-5 };

/** Invented: slopes of 1e-5, 2e-5 and 4e-5 kg/s per N. */
const ROWS: readonly ThrustRow[] = [
  { thrustN: 5000, fuelFlowKgPerS: 0.15 },
  { thrustN: 10_000, fuelFlowKgPerS: 0.2 },
  { thrustN: 15_000, fuelFlowKgPerS: 0.3 },
  { thrustN: 20_000, fuelFlowKgPerS: 0.5 },
];
const table = valueOf(thrustTable(ROWS));
const outside = { kind: 'unavailable', because: 'outsideMap' };

/** Rising rows, often steep beside flat. */
const anyTable = fc
  .array(
    fc.tuple(
      fc.double({ min: 200, max: 8000, noNaN: true }),
      fc.double({ min: 0.001, max: 0.2, noNaN: true }),
    ),
    { minLength: 2, maxLength: 8 },
  )
  .map((steps) => {
    let last: ThrustRow = { thrustN: 0, fuelFlowKgPerS: 0.01 };
    return valueOf(
      thrustTable(
        steps.map(([thrust, flow]) => {
          last = { thrustN: last.thrustN + thrust, fuelFlowKgPerS: last.fuelFlowKgPerS + flow };
          return last;
        }),
      ),
    );
  });
const anyMap: fc.Arbitrary<ThrustMap> = fc.oneof(anyTable, fc.constant(line));
/** Seldom at an end: rounding may fall a hair outside there. */
const anyShare = fc.integer({ min: 1, max: 9999 }).map((parts) => parts / 10_000);

function flowInside(map: ThrustMap, share: number): number {
  if (map.kind === 'line') return map.idleKgPerS + 0.5 * share + 1e-6;
  const flows = map.rows.map((row) => row.fuelFlowKgPerS);
  const [low, high] = [itemAt(flows, 0), itemAt(flows, flows.length - 1)];
  return Math.min(high, low + (high - low) * share);
}

describe('a map of fuel flow against thrust', () => {
  it('leads from flow to thrust and back', () => {
    fc.assert(
      fc.property(anyMap, anyShare, (map, share) => {
        const flow = flowInside(map, share);
        const thrustN = valueOf(thrustOfFuelFlow(map, flow));
        expect(Math.abs(valueOf(fuelFlowOfThrust(map, thrustN)) - flow)).toBeLessThan(
          1e-12 * (1 + flow),
        );
      }),
    );
  });

  it('reads a table by straight lines between its rows', () => {
    expect(valueOf(thrustOfFuelFlow(table, 0.2))).toBe(10_000);
    expect(valueOf(thrustOfFuelFlow(table, 0.25))).toBeCloseTo(12_500, 9);
    expect(valueOf(fuelFlowOfThrust(table, 17_500))).toBeCloseTo(0.4, 14);
    expect(valueOf(slopeAtFuelFlow(table, 0.16))).toBeCloseTo(1e-5, 18);
    expect(valueOf(slopeAtFuelFlow(table, 0.25))).toBeCloseTo(2e-5, 18);
    // At a row the line above it; at the last the only one there is.
    expect(valueOf(slopeAtFuelFlow(table, 0.3))).toBeCloseTo(4e-5, 18);
    expect(valueOf(slopeAtFuelFlow(table, 0.5))).toBeCloseTo(4e-5, 18);
  });

  it('reads a line as its formula says', () => {
    expect(valueOf(thrustOfFuelFlow(line, 0.42))).toBeCloseTo(20_000, 9);
    expect(valueOf(fuelFlowOfThrust(line, 20_000))).toBeCloseTo(0.42, 14);
    expect(valueOf(slopeAtFuelFlow(line, 0.42))).toBe(2e-5);
  });

  it('says nothing beyond its ends', () => {
    for (const flow of [0.1499, 0.5001]) {
      expect(thrustOfFuelFlow(table, flow)).toEqual(outside);
      expect(slopeAtFuelFlow(table, flow)).toEqual(outside);
    }
    for (const thrustN of [4999, 20_001]) expect(fuelFlowOfThrust(table, thrustN)).toEqual(outside);
    expect(thrustOfFuelFlow(line, 0.0199)).toEqual(outside);
    expect(fuelFlowOfThrust(line, -1)).toEqual(outside);
  });

  it('does not depend on the order of its rows', () => {
    expect(valueOf(thrustTable(ROWS.toReversed()))).toEqual(table);
  });

  it.each([
    ['tooFewRows', ROWS.slice(0, 1)],
    ['tooFewRows', []],
    ['notRising', [...ROWS, { thrustN: 25_000, fuelFlowKgPerS: 0.5 }]],
    ['notRising', [...ROWS, { thrustN: 12_000, fuelFlowKgPerS: 0.35 }]],
    ['notRising', [...ROWS, { thrustN: 10_000, fuelFlowKgPerS: 0.21 }]],
    ['rowNotPhysical', [...ROWS, { thrustN: -1, fuelFlowKgPerS: 0.1 }]],
    ['rowNotPhysical', [...ROWS, { thrustN: 2000, fuelFlowKgPerS: -0.1 }]],
    ['rowNotPhysical', [...ROWS, { thrustN: 25_000, fuelFlowKgPerS: Number.NaN }]],
  ])('is refused as %s', (because, rows) => {
    expect(thrustTable(rows)).toEqual({ kind: 'unavailable', because });
  });

  it('refuses a flow, a thrust or a line that is none', () => {
    expect(() => thrustOfFuelFlow(table, 0)).toThrow(RangeError);
    expect(() => fuelFlowOfThrust(table, Number.NaN)).toThrow(RangeError);
    expect(() => thrustOfFuelFlow({ ...line, slopeKgPerSPerN: 0 }, 0.3)).toThrow(RangeError);
    expect(() => fuelFlowOfThrust({ ...line, idleKgPerS: -0.1 }, 1)).toThrow(RangeError);
    expect(() => mapOfEngines([line, { ...line, slopeKgPerSPerN: -1 }])).toThrow(RangeError);
  });
});

describe('a drag reduction read off a map', () => {
  it('compares the thrusts', () => {
    // 0.25 kg/s is 12 500 N and 0.4 kg/s is 17 500 N.
    const found = valueOf(
      dragReductionOnMap({ map: table, fuelFlowKgPerS: 0.25, baselineFuelFlowKgPerS: 0.4 }),
    );
    expect(found.dragReductionFraction).toBeCloseTo(1 - 12_500 / 17_500, 12);
    // −1/(2e-5 · 17 500) and 12 500/17 500/(4e-5 · 17 500).
    expect(found.perFuelFlow).toBeCloseTo(-1 / 0.35, 10);
    expect(found.perBaselineFuelFlow).toBeCloseTo(5 / 7 / 0.7, 10);
    const more = { fuelFlowKgPerS: 0.4, baselineFuelFlowKgPerS: 0.25 };
    expect(valueOf(dragReductionOnMap({ map: table, ...more })).dragReductionFraction).toBeCloseTo(
      1 - 17_500 / 12_500,
      12,
    );
  });

  it('of a line is (Fb − F)/(Fb − c0), whatever the slope', () => {
    fc.assert(
      fc.property(
        anyShare,
        anyShare,
        fc.double({ min: 1e-6, max: 1e-3, noNaN: true }),
        (a, b, slope) => {
          const map = { ...line, slopeKgPerSPerN: slope };
          const [flow, base] = [flowInside(map, a), flowInside(map, b)];
          const found = valueOf(
            dragReductionOnMap({ map, fuelFlowKgPerS: flow, baselineFuelFlowKgPerS: base }),
          );
          const above = base - line.idleKgPerS;
          const expected = (base - flow) / above;
          const scale = 1 + Math.abs(expected);
          expect(Math.abs(found.dragReductionFraction - expected)).toBeLessThan(1e-9 * scale);
          // The doubt of idle moves it by itself over the flow above idle.
          expect(Math.abs(found.perMapFlow * above - expected)).toBeLessThan(1e-9 * scale);
          expect(found.perRowFlow).toEqual([]);
        },
      ),
    );
  });

  it('states how it moves with either flow, with each row and with all of them', () => {
    fc.assert(
      fc.property(anyTable, anyShare, anyShare, (map, a, b) => {
        const flows = [flowInside(map, a), flowInside(map, b)] as const;
        const step = 1e-9;
        // Away from the rows, where the slope is one number.
        fc.pre(
          map.rows.every((row) => flows.every((f) => Math.abs(f - row.fuelFlowKgPerS) > 1e-6)),
        );
        const at = (of: ThrustMap, flow: number, base: number) =>
          valueOf(
            dragReductionOnMap({ map: of, fuelFlowKgPerS: flow, baselineFuelFlowKgPerS: base }),
          );
        const found = at(map, ...flows);
        const moved = (of: (sign: number) => number): number => (of(1) - of(-1)) / (2 * step);
        const alike = (stated: number, seen: number): void => {
          expect(Math.abs(stated - seen)).toBeLessThan(1e-4 * (1 + Math.abs(stated)));
        };
        const [flow, base] = flows;
        alike(
          found.perFuelFlow,
          moved((sign) => at(map, flow + sign * step, base).dragReductionFraction),
        );
        alike(
          found.perBaselineFuelFlow,
          moved((sign) => at(map, flow, base + sign * step).dragReductionFraction),
        );
        for (const [row, stated] of found.perRowFlow.entries()) {
          const lifted = (sign: number) => ({
            ...map,
            rows: map.rows.map((each, k) =>
              k === row ? { ...each, fuelFlowKgPerS: each.fuelFlowKgPerS + sign * step } : each,
            ),
          });
          alike(
            stated,
            moved((sign) => at(lifted(sign), flow, base).dragReductionFraction),
          );
        }
        const whole = found.perRowFlow.reduce((total, each) => total + each, 0);
        expect(Math.abs(whole - found.perMapFlow)).toBeLessThan(
          1e-9 * (1 + Math.abs(found.perFuelFlow) + Math.abs(found.perBaselineFuelFlow)),
        );
      }),
    );
  });

  it('is not given beyond the map or from a baseline without thrust', () => {
    const of = (fuelFlowKgPerS: number, baselineFuelFlowKgPerS: number, map: ThrustMap = table) =>
      dragReductionOnMap({ map, fuelFlowKgPerS, baselineFuelFlowKgPerS });
    const noBaseline = { kind: 'unavailable', because: 'baselineOutsideMap' };
    expect(of(0.14, 0.3)).toEqual(outside);
    expect(of(0.3, 0.51)).toEqual(noBaseline);
    expect(of(0.02, 0.02, line)).toEqual(noBaseline);
    const fromIdle = valueOf(thrustTable([{ thrustN: 0, fuelFlowKgPerS: 0.05 }, ...ROWS]));
    expect(of(0.06, 0.05, fromIdle)).toEqual(noBaseline);
  });
});

describe('the map of an aircraft from its engines', () => {
  it('of lines is a line through the sums', () => {
    const other: ThrustLine = { kind: 'line', idleKgPerS: 0.03, slopeKgPerSPerN: 3e-5 };
    const both = valueOf(mapOfEngines([line, other]));
    expect(both.kind).toBe('line');
    // 10 000 N from each: 0.22 and 0.33 kg/s.
    expect(valueOf(fuelFlowOfThrust(both, 20_000))).toBeCloseTo(0.55, 14);
    expect(valueOf(thrustOfFuelFlow(both, 0.55))).toBeCloseTo(20_000, 8);
  });

  it('of one engine is that engine', () => {
    expect(valueOf(mapOfEngines([line]))).toEqual(line);
    expect(valueOf(mapOfEngines([table]))).toEqual(table);
  });

  it('adds the flows of all engines at equal thrust', () => {
    fc.assert(
      fc.property(fc.array(anyMap, { minLength: 1, maxLength: 4 }), anyShare, (engines, share) => {
        const whole = mapOfEngines(engines);
        fc.pre(whole.kind === 'ready');
        const map = valueOf(whole);
        const thrusts = map.kind === 'table' ? map.rows.map((row) => row.thrustN) : [0, 50_000];
        const [low, high] = [Math.min(...thrusts), Math.max(...thrusts)];
        const thrustN = low + (high - low) * share;
        const each = thrustN / engines.length;
        const sum = engines.reduce((total, of) => total + valueOf(fuelFlowOfThrust(of, each)), 0);
        expect(valueOf(fuelFlowOfThrust(map, thrustN))).toBeCloseTo(sum, 12);
      }),
    );
  });

  it('answers only for thrusts that every engine knows', () => {
    const higher = valueOf(
      thrustTable([
        { thrustN: 8000, fuelFlowKgPerS: 0.18 },
        { thrustN: 22_000, fuelFlowKgPerS: 0.52 },
      ]),
    );
    const both = valueOf(mapOfEngines([table, higher]));
    expect(both.kind === 'table' && both.rows.map((row) => row.thrustN)).toEqual([
      16_000, 20_000, 30_000, 40_000,
    ]);
    const far = valueOf(
      thrustTable([
        { thrustN: 20_000, fuelFlowKgPerS: 0.5 },
        { thrustN: 30_000, fuelFlowKgPerS: 0.8 },
      ]),
    );
    expect(mapOfEngines([table, far])).toEqual({ kind: 'unavailable', because: 'noCommonThrust' });
    expect(mapOfEngines([])).toEqual({ kind: 'unavailable', because: 'noEngine' });
  });
});

describe('a map at another condition', () => {
  it('scales thrust by pressure and flow by the root of temperature as well', () => {
    const ratios = { pressureRatio: 0.9, temperatureRatio: 1.21 };
    for (const map of [table, line]) {
      const there = mapElsewhere({ map, ...ratios });
      expect(valueOf(thrustOfFuelFlow(there, 0.25 * 0.9 * 1.1))).toBeCloseTo(
        0.9 * valueOf(thrustOfFuelFlow(map, 0.25)),
        8,
      );
      expect(valueOf(slopeAtFuelFlow(there, 0.25 * 0.9 * 1.1))).toBeCloseTo(
        1.1 * valueOf(slopeAtFuelFlow(map, 0.25)),
        15,
      );
    }
    expect(() => mapElsewhere({ map: line, pressureRatio: 0, temperatureRatio: 1 })).toThrow(
      RangeError,
    );
  });

  it('gives the same drag reduction for flows referred to it', () => {
    fc.assert(
      fc.property(anyMap, anyShare, anyShare, (map, a, b) => {
        const ratios = { pressureRatio: 0.95, temperatureRatio: 1.04 };
        const factor = 0.95 * Math.sqrt(1.04);
        const [flow, base] = [a, b].map((s) => flowInside(map, s));
        const of = (at: ThrustMap, scale: number) =>
          dragReductionOnMap({
            map: at,
            fuelFlowKgPerS: (flow ?? 0) * scale,
            baselineFuelFlowKgPerS: (base ?? 0) * scale,
          });
        const here = valueOf(of(map, 1)).dragReductionFraction;
        const there = valueOf(of(mapElsewhere({ map, ...ratios }), factor)).dragReductionFraction;
        expect(Math.abs(there - here)).toBeLessThan(1e-8 * (1 + Math.abs(here)));
      }),
    );
  });
});
