import { describe, expect, it } from 'vitest';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { scriptA } from '../flights/flightA.ts';
import { glanceNumbers } from '../flights/glanceNumbers.ts';
import { readingsOf } from '../flights/scriptReadings.ts';
import { secondMethod, type GlanceNumbers } from '../flights/secondMethod.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';

const IMPERIAL = { massKg: 0.45359237, heightM: 0.3048, climbMPerS: 0.3048 / 60 };
const sheet = sheetOfScript(scriptA);

/** The readings of a run that the worked results use, with amendments of two single digits honoured by hand. */
function run(point: string, lines: readonly number[]): readonly GlanceNumbers[] {
  const glances: GlanceNumbers[] = [];
  for (const n of lines) {
    const line = scriptA.entries.find((entry) => entry.n === n);
    if (line === undefined) {
      throw new RangeError(`line ${n} is not in the script`);
    }
    const read = readingsOf(line).map((row) =>
      n === 51 && row.instrument === 'FF2' ? { instrument: 'FF2', value: 810 } : row,
    );
    glances.push({ point, run: 1, ...glanceNumbers(read, IMPERIAL, glances.at(-1)) });
  }
  return glances;
}

describe('the second method', () => {
  const rows = oracle.points.filter((row) => row.status === 'valid');
  const off = [run('TP01', [21, 23, 24]), run('TP09', [127, 128, 129])] as const;

  it.each(rows)('agrees with the worked results at $testPoint', (row) => {
    const result = secondMethod(sheet, run(row.testPoint, row.readingsUsed), off);
    const { reductions_pct: within } = oracle.compareWithin;
    expect(Math.abs(result.fuelFraction * 100 - row.fuelReduction_pct)).toBeLessThan(within);
    expect(Math.abs(result.dragFraction * 100 - row.dragReduction_pct)).toBeLessThan(within);
    expect(Math.abs((result.standardUncertainty * 100) / row.u_1sigma_pct - 1)).toBeLessThan(
      oracle.compareWithin.uncertainties_relative,
    );
  });

  it('has six finished points to agree on', () => {
    expect(rows.length).toBe(6);
  });
});
