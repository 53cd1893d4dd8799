import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as engineMap from '../../src/aero/engineMap.ts';
import { fuelReductionFraction, grossAndNet, rangeGainFraction } from '../../src/aero/savings.ts';
import { valueOf } from './referenceRow.ts';

describe('an excess force without an engine map', () => {
  it('is bounded by lift over drag', () => {
    // A hundredth of the weight, at L/D 18, is 18 % of the drag and so of the flow.
    expect(
      engineMap.energyHalfRangeKgPerS({
        excessForceN: -1000,
        weightN: 100_000,
        fuelFlowKgPerS: 0.5,
        liftToDragAtMost: 18,
      }),
    ).toBeCloseTo(0.09, 15);
  });
});

describe('a slope of specific consumption', () => {
  it('changes nothing at zero', () => {
    const same = valueOf(
      engineMap.dragReductionFromSlope({ fuelReductionFraction: 0.08, slope: 0 }),
    );
    expect(same.dragReductionFraction).toBeCloseTo(0.08, 15);
    expect(same.perFuelReduction).toBeCloseTo(1, 15);
    expect(same.perSlope).toBeCloseTo(0.92 * Math.log(0.92), 15);
    const steep = valueOf(
      engineMap.dragReductionFromSlope({ fuelReductionFraction: 0.19, slope: -0.5 }),
    );
    // 1 − 0.81²; and (0.81² ln 0.81)/0.25.
    expect(steep.dragReductionFraction).toBeCloseTo(0.3439, 14);
    expect(steep.perSlope).toBeCloseTo(4 * 0.6561 * Math.log(0.81), 14);
  });

  it('states how the result moves with either input', () => {
    const anyReduction = fc.double({ min: -0.3, max: 0.6, noNaN: true });
    const anySlope = fc.double({ min: -0.5, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(anyReduction, anySlope, (fuelReductionFraction, slope) => {
        const of = (r: number, s: number) =>
          valueOf(engineMap.dragReductionFromSlope({ fuelReductionFraction: r, slope: s }));
        const step = 1e-6;
        const { perFuelReduction, perSlope } = of(fuelReductionFraction, slope);
        const up = (r: number, s: number) =>
          of(fuelReductionFraction + r, slope + s).dragReductionFraction;
        expect(perFuelReduction).toBeCloseTo((up(step, 0) - up(-step, 0)) / (2 * step), 6);
        expect(perSlope).toBeCloseTo((up(0, step) - up(0, -step)) / (2 * step), 6);
      }),
    );
  });

  it('is refused where less thrust would burn no less fuel', () => {
    expect(engineMap.dragReductionFromSlope({ fuelReductionFraction: 0.1, slope: -1 })).toEqual({
      kind: 'unavailable',
      because: 'slopeNotUsable',
    });
    expect(() => engineMap.dragReductionFromSlope({ fuelReductionFraction: 1, slope: 0 })).toThrow(
      RangeError,
    );
  });
});

describe('savings', () => {
  const flows = { mainFlowKgPerS: 0.36, baselineFlowKgPerS: 0.4 };

  it('of bleed-driven suction are net already, and gross only with the bleed slope', () => {
    const unknown = grossAndNet({ ...flows, drive: { kind: 'bleed' } });
    expect(unknown.gross).toEqual({ kind: 'unavailable', because: 'bleedSlopeUnknown' });
    expect(unknown.net.fraction).toBeCloseTo(0.1, 14);
    const known = grossAndNet({ ...flows, drive: { kind: 'bleed', bleedPenaltyKgPerS: 0.01 } });
    expect(valueOf(known.gross).fraction).toBeCloseTo(0.125, 14);
    expect(known.net).toEqual(unknown.net);
  });

  it('of a separate plant never lose its fuel between gross and net', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.2, noNaN: true }), (plantFlowKgPerS) => {
        const { gross, net } = grossAndNet({
          ...flows,
          drive: { kind: 'separatePlant', plantFlowKgPerS },
        });
        expect(valueOf(gross).flowKgPerS - net.flowKgPerS).toBeCloseTo(plantFlowKgPerS, 14);
      }),
    );
  });

  it('may be negative', () => {
    const more = { fuelFlowKgPerS: 0.44, baselineFuelFlowKgPerS: 0.4 };
    expect(fuelReductionFraction(more)).toBeCloseTo(-0.1, 14);
  });

  it('stretch the range by more than the drag falls', () => {
    // 10 % less drag is 11.1 % more range, 20 % is 25 %.
    expect(rangeGainFraction(0.1)).toBeCloseTo(1 / 9, 14);
    expect(rangeGainFraction(0.2)).toBeCloseTo(0.25, 14);
    expect(() => rangeGainFraction(1)).toThrow(RangeError);
  });
});
