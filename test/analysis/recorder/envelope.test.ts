import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { envelopes } from '../../../src/analysis/recorder/envelope.ts';

describe('a trace drawn with as many points as pixels', () => {
  it('has the least and the greatest value of every part, gaps and all', () => {
    const value = fc.oneof(
      fc.float({ noNaN: true, noDefaultInfinity: true }),
      fc.constant(Number.NaN),
    );
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 1, maxLength: 500 }),
        fc.integer({ min: -50, max: 400 }),
        fc.integer({ min: 1, max: 600 }),
        fc.integer({ min: 1, max: 20 }),
        (values, from, length, parts) => {
          const timesMs = Float64Array.from(values, (_, row) => row);
          const drawn = envelopes(timesMs, Float32Array.from(values))(from, from + length, parts);
          for (let part = 0; part < parts; part += 1) {
            const inside = values.filter(
              (one, row) =>
                row >= from + (part * length) / parts &&
                row < from + ((part + 1) * length) / parts &&
                !Number.isNaN(one),
            );
            expect(drawn.low[part]).toBe(inside.length === 0 ? Number.NaN : Math.min(...inside));
            expect(drawn.high[part]).toBe(inside.length === 0 ? Number.NaN : Math.max(...inside));
          }
        },
      ),
    );
  });
});
