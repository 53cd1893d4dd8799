import { expect } from 'vitest';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { glanceNumbers } from '../flights/glanceNumbers.ts';
import { secondMethod, type GlanceNumbers } from '../flights/secondMethod.ts';
import type { ShownPoint } from './debriefShown.ts';

const REDUCTIONS_WITHIN_PCT = 0.1;
const INTERVALS_WITHIN_PCT = 0.2;
/** A large-sample interval: the shown one has its own coverage factor, which differs by less than the tolerance. */
const FACTOR_95 = 1.96;

type Units = Parameters<typeof glanceNumbers>[1];
type Rows = Parameters<typeof glanceNumbers>[0];

/** Readings of a run as numbers for the second method; a reading with no air data takes that of the one before. */
export function runOf(
  point: string,
  looks: readonly Rows[],
  units: Units,
): readonly GlanceNumbers[] {
  const glances: GlanceNumbers[] = [];
  for (const rows of looks) {
    glances.push({ point, run: 1, ...glanceNumbers(rows, units, glances.at(-1)) });
  }
  return glances;
}

/** The shown figures of a point against the same readings worked out a second time. */
export function agreesWithSecondMethod(
  shown: ShownPoint | undefined,
  sheet: FlightSheet,
  on: readonly GlanceNumbers[],
  off: readonly [readonly GlanceNumbers[], readonly GlanceNumbers[]],
): void {
  const result = secondMethod(sheet, on, off);
  const { pct: fuelPct, halfPct } = shown?.fuel ?? { pct: NaN, halfPct: NaN };
  expect(Math.abs(fuelPct - 100 * result.fuelFraction)).toBeLessThan(REDUCTIONS_WITHIN_PCT);
  expect(Math.abs((shown?.drag?.pct ?? NaN) - 100 * result.dragFraction)).toBeLessThan(
    REDUCTIONS_WITHIN_PCT,
  );
  expect(Math.abs(halfPct - 100 * FACTOR_95 * result.standardUncertainty)).toBeLessThan(
    INTERVALS_WITHIN_PCT,
  );
}
