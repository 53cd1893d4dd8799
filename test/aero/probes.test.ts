import { describe, expect, it } from 'vitest';
import { judgeProbe, type LaminarLimit } from '../../src/aero/probes.ts';

const stream = { dynamicPressurePa: 7000, impactPressurePa: 8000 };
const byPressure: LaminarLimit = { kind: 'pressure', limitPa: 500, deadBandPa: 50 };
const byShare: LaminarLimit = { kind: 'fractionOfDynamic', limit: 0.07, deadBand: 0.01 };

describe('a trailing-edge probe', () => {
  it.each([
    [0, 'laminar'],
    [449, 'laminar'],
    [450, 'intermittent'],
    [549, 'intermittent'],
    [550, 'turbulent'],
    [8000, 'turbulent'],
  ])('with a deficit of %d Pa is %s', (deficitPa, kind) => {
    const verdict = judgeProbe({ deficitPa, stream, gaugeErrorPa: 25, laminarBelow: byPressure });
    expect(verdict).toEqual({
      kind,
      fractionOfDynamic: deficitPa / 7000,
      fractionOfImpact: deficitPa / 8000,
    });
  });

  it.each([
    [419, 'laminar'],
    [421, 'intermittent'],
    [559, 'intermittent'],
    [561, 'turbulent'],
  ])('judged by its share of q, with %d Pa is %s', (deficitPa, kind) => {
    const verdict = judgeProbe({ deficitPa, stream, gaugeErrorPa: 25, laminarBelow: byShare });
    expect(verdict.kind).toBe(kind);
  });

  it('without a dead band is laminar below the limit only', () => {
    const sharp: LaminarLimit = { kind: 'pressure', limitPa: 500, deadBandPa: 0 };
    const at = (deficitPa: number) =>
      judgeProbe({ deficitPa, stream, gaugeErrorPa: 0, laminarBelow: sharp }).kind;
    expect(at(499.9)).toBe('laminar');
    expect(at(500)).toBe('turbulent');
  });

  it('is suspect where no layer can put it', () => {
    const of = (deficitPa: number) =>
      judgeProbe({ deficitPa, stream, gaugeErrorPa: 25, laminarBelow: byPressure });
    expect(of(-26)).toMatchObject({ kind: 'suspect', because: 'leakOrOffset' });
    expect(of(-25)).toMatchObject({ kind: 'laminar' });
    expect(of(8000)).toMatchObject({ kind: 'turbulent' });
    expect(of(8000.1)).toMatchObject({ kind: 'suspect', because: 'blocked' });
  });

  it('without air data is judged by pressure, and not by a share of q', () => {
    const reading = { deficitPa: 300, stream: undefined, gaugeErrorPa: 25 };
    expect(judgeProbe({ ...reading, laminarBelow: byPressure })).toEqual({ kind: 'laminar' });
    expect(judgeProbe({ ...reading, laminarBelow: byShare })).toEqual({
      kind: 'unavailable',
      because: 'noDynamicPressure',
    });
  });

  it('refuses what is no number', () => {
    const reading = { deficitPa: Number.NaN, stream, gaugeErrorPa: 25, laminarBelow: byPressure };
    expect(() => judgeProbe(reading)).toThrow(RangeError);
  });
});
