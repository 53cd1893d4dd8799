import { describe, expect, it } from 'vitest';
import {
  panelAreaOnPlan,
  planAreaM2,
  withPlanAreas,
  wingPlanM,
} from '../../src/record/wingPlan.ts';
import type { FlightSheet, Panel } from '../../src/record/sheet.ts';
import { soundSheet } from './soundSheet.ts';

const m = (value: number) => ({ value, unit: 'm' }) as const;
/** Root 4 m, tip 2 m, half span 10 m: 30 m² a half; the chord halfway is 3 m. */
const PLAN = { semiSpan: m(10), rootChord: m(4), tipChord: m(2) };
const onPlan = (limits: Partial<Panel>, unit: 'm2' | 'ft2' = 'm2'): FlightSheet => {
  const sheet = soundSheet();
  const panels = sheet.panels.map((panel) => ({
    ...panel,
    area: { value: 1, unit },
    ...limits,
  }));
  return { ...sheet, aircraft: { ...sheet.aircraft, planform: PLAN }, panels };
};
function areaOf(sheet: FlightSheet): number | undefined {
  const [panel] = sheet.panels;
  return panel === undefined ? undefined : panelAreaOnPlan(sheet, panel)?.value;
}

describe('a wing straight from root to tip', () => {
  it('has the area of its two trapezoids', () => {
    const metres = wingPlanM(PLAN);
    expect(metres === null ? null : planAreaM2(metres)).toBe(60);
  });

  it.each([
    // 0 to 10 m of span at a mean chord of 3 m, all of the chord.
    [0, 1, 0, 1, 30],
    // 4 m to 6 m of span, mean chord 3 m, a tenth of it: 2 × 3 × 0.1.
    [0.4, 0.6, 0.05, 0.15, 0.6],
    // 0 to 2 m, mean chord 3.8 m, a fifth of it: 2 × 3.8 × 0.2.
    [0, 0.2, 0, 0.2, 1.52],
  ])('gives span %d to %d, chord %d to %d an area', (spanFrom, spanTo, chordFrom, chordTo, m2) => {
    const sheet = onPlan({
      spanFromFraction: spanFrom,
      spanToFraction: spanTo,
      chordFromFraction: chordFrom,
      chordToFraction: chordTo,
    });
    expect(areaOf(sheet)).toBeCloseTo(m2, 9);
  });

  it('answers in the unit of the panel: 1 ft² is 0.09290304 m²', () => {
    const limits = { spanFromFraction: 0.4, spanToFraction: 0.6, chordFromFraction: 0 };
    expect(areaOf(onPlan({ ...limits, chordToFraction: 0.5 }, 'ft2'))).toBeCloseTo(
      3 / 0.09290304,
      3,
    );
  });

  it('leaves an area alone where a limit is missing', () => {
    const sheet = onPlan({ spanFromFraction: 0.4, spanToFraction: 0.6 });
    expect(areaOf(sheet)).toBeUndefined();
    expect(withPlanAreas(sheet)).toEqual(sheet);
  });
});
