import { beforeAll, describe, expect, it } from 'vitest';
import { FEWEST_FLIGHTS, type Tally } from './classes.ts';
import { FAULTS } from './faults.ts';
import { controlFailed, controls, simulated, type Control } from './simulation.ts';
import { controlTableOf, tableOf } from './table.ts';

/*
 * The short form of `npm run simulate`: 500 flights whose truth is known, and as many again with bad readings in them.
 * Seeded, so it says the same every time; what it may miss by chance is in the doubt of each row.
 */
const SEED = 20_320_602;
const FLIGHTS = 500;
const CONTROL_FLIGHTS = FEWEST_FLIGHTS;
/** No test is judged by its time; a slow machine must not fail one. */
const PATIENCE_MS = 600_000;

describe('95 % intervals over flights with known truth', () => {
  let rows: readonly Tally[] = [];
  beforeAll(() => {
    rows = simulated(FLIGHTS, SEED);
  }, PATIENCE_MS);

  it('hold it in 93 to 97 % of each class, as far as so many flights can tell', () => {
    const failed = rows.filter(({ verdict }) => verdict === 'tooLow' || verdict === 'tooHigh');
    expect(tableOf(failed)).toBe(tableOf([]));
  });

  it.each(['fuel', 'drag'])('hold the %s reduction in 93 to 97 %, chance or not', (result) => {
    const [all] = rowsOf(rows, result, 'all');
    expect(all?.count).toBeGreaterThan(1000);
    expect(all?.coverage).toBeGreaterThanOrEqual(0.93);
    expect(all?.coverage).toBeLessThanOrEqual(0.97);
  });

  it('are as wide as the errors, neither twice nor half', () => {
    const whole = rows.filter(({ name, declared }) => name === 'all' && declared === true);
    expect(whole.map(({ result }) => result)).toHaveLength(12);
    for (const { result, spreadOfErrorOverU } of whole) {
      expect([result, Math.abs(spreadOfErrorOverU - 1) < 0.1]).toEqual([result, true]);
    }
  });

  it.each([
    '3 readings',
    '4 to 5 readings',
    '6 to 8 readings',
    '9 to 12 readings',
    'fit, 5 to 6 baseline readings',
    'fit, 7 to 9 baseline readings',
    'fit, 10 to 12 baseline readings',
    'pair, borrowed',
  ])('are asked in the class of %s', (name) => {
    const [declared] = rowsOf(rows, 'fuel', name);
    expect(declared?.flights).toBeGreaterThanOrEqual(FEWEST_FLIGHTS);
  });
});

describe('bad readings among good ones', () => {
  let flown: readonly Control[] = [];
  beforeAll(() => {
    flown = controls(CONTROL_FLIGHTS, SEED);
  }, PATIENCE_MS);

  it('are flown for every gate in question', () => {
    expect(flown.map(({ fault }) => fault)).toEqual(FAULTS);
  });

  it('are left out by the gates, all of them', () => {
    const letIn = flown.filter((control) => control.letIn > 0);
    expect(controlTableOf(letIn)).toBe(controlTableOf([]));
  });

  it('leave the coverage as it was', () => {
    const verdicts = flown.map(({ fault, asItIs }) => [fault, asItIs.verdict]);
    for (const [fault, verdict] of verdicts) {
      expect([fault, verdict === 'holds' || verdict === 'withinDoubt']).toEqual([fault, true]);
    }
  });

  it('are found by the coverage where their gate is turned off', () => {
    const verdicts = flown.map(({ fault, turnedOff }) => [fault, turnedOff.verdict]);
    expect(verdicts).toEqual(FAULTS.map((fault) => [fault, 'tooLow']));
  });

  it('fail the long form too, if they come in or go unnoticed', () => {
    const [control] = flown;
    if (control === undefined) throw new RangeError('there must be a control');
    expect(flown.filter(controlFailed)).toEqual([]);
    expect(controlFailed({ ...control, letIn: 0.01 })).toBe(true);
    expect(controlFailed({ ...control, turnedOff: control.asItIs })).toBe(true);
    expect(controlFailed({ ...control, asItIs: control.turnedOff })).toBe(true);
  });
});

/** Rows of a class, of declared repeatability before undeclared. */
function rowsOf(rows: readonly Tally[], result: string, name: string): readonly Tally[] {
  return rows.filter((row) => row.result === result && row.name === name);
}
