import { describe, expect, it } from 'vitest';
import { airspeedAnswers, reynoldsAnswers } from './answers/airspeed.ts';
import { atmosphereAnswers } from './answers/atmosphere.ts';
import { frictionAnswers, probeAnswers } from './answers/friction.ts';
import { fuelFlowAnswers } from './answers/fuelFlow.ts';
import { baselineAnswers, regressionAnswers } from './answers/regression.ts';
import { stabilityAnswers } from './answers/stability.ts';
import { statisticsAnswers } from './answers/statistics.ts';
import { calendarAnswers, clockAnswers } from './answers/time.ts';
import { uncertaintyAnswers } from './answers/uncertainty.ts';
import { unitAnswers } from './answers/units.ts';
import { REFERENCE_TABLES, RowReader, type Answers, type ReferenceRow } from './referenceRow.ts';

const ANSWERS: ReadonlyMap<string, Answers> = new Map([
  ['airspeed', airspeedAnswers],
  ['atmosphere', atmosphereAnswers],
  ['baseline', baselineAnswers],
  ['calendar', calendarAnswers],
  ['clocks', clockAnswers],
  ['friction', frictionAnswers],
  ['fuelFlow', fuelFlowAnswers],
  ['probes', probeAnswers],
  ['regression', regressionAnswers],
  ['reynolds', reynoldsAnswers],
  ['stability', stabilityAnswers],
  ['statistics', statisticsAnswers],
  ['uncertainty', uncertaintyAnswers],
  ['units', unitAnswers],
]);

const NOT_COMPUTED = 'notComputed';
const allRows = [...REFERENCE_TABLES.values()].flat();
const byId = new Map(allRows.map((row) => [row.id, row]));

function withinTolerance(row: ReferenceRow, found: number, expected: number): boolean {
  const { type, value } = row.tolerance;
  const allowed = type === 'rel' ? value * Math.abs(expected) : value;
  // An exact row still passes through binary fractions on the way to its unit.
  return Math.abs(found - expected) <= allowed + 4 * Number.EPSILON * Math.abs(expected);
}

describe('the tables of check values', () => {
  it('are the ones the answers know, none missing and none unread', () => {
    expect([...REFERENCE_TABLES.keys()].toSorted()).toEqual(
      [...ANSWERS.keys(), NOT_COMPUTED].toSorted(),
    );
  });

  it('hold 306 rows with an id of their own, a source, a tolerance and an expected value', () => {
    expect(allRows).toHaveLength(306);
    expect(byId.size).toBe(306);
    for (const row of allRows) {
      expect(row.source, row.id).not.toBe('');
      expect(['abs', 'rel'], row.id).toContain(row.tolerance.type);
      expect(row.tolerance.value, row.id).toBeGreaterThanOrEqual(0);
      expect(['number', 'string'], row.id).toContain(typeof row.expected);
    }
  });

  it('say of each value that is only quoted why nothing computes it', () => {
    const quoted = REFERENCE_TABLES.get(NOT_COMPUTED) ?? [];
    expect(quoted).toHaveLength(11);
    for (const row of quoted) {
      expect(row.notComputedBecause ?? '', row.id).not.toBe('');
      expect(row.quantity, row.id).toMatch(/^reference fact: /);
    }
  });
});

describe.each([...ANSWERS])('published values of %s', (table, answers) => {
  const rows = REFERENCE_TABLES.get(table) ?? [];

  it('are there', () => {
    expect(rows).not.toHaveLength(0);
  });

  it.each(rows.map((row) => [row.id, row] as const))('%s agrees', (_, row) => {
    const answer = answers[row.id] ?? answers[row.quantity];
    if (answer === undefined) throw new TypeError(`nothing answers ${row.id}: ${row.quantity}`);
    const found = answer(new RowReader(row, byId));
    if (typeof row.expected === 'string' || typeof found === 'string') {
      expect(found).toBe(row.expected);
      return;
    }
    expect(
      withinTolerance(row, found, row.expected),
      `${row.quantity}: expected ${row.expected} ${row.unit}, found ${found}`,
    ).toBe(true);
  });

  it('use every answer', () => {
    const asked = new Set(rows.flatMap((row) => [row.id, row.quantity]));
    expect(Object.keys(answers).filter((name) => !asked.has(name))).toEqual([]);
  });
});
