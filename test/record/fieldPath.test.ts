import { describe, expect, it } from 'vitest';
import { changedField, fieldAt } from '../../src/record/fieldPath.ts';

const body = {
  look: 'haze',
  readings: [
    { instrument: 'FF2', value: 910, unit: 'lb/h' },
    { instrument: 'P.1', value: 7, unit: 'inH2O' },
    { instrument: 'FF2', value: 900, unit: 'lb/h' },
  ],
  wings: { L: { of: 24, turbulentProbes: ['L01', 'L18'] } },
  shown: [{ clock: 'panel clock', shown: 1 }],
};

describe('a path into a body', () => {
  it.each([
    ['look', 'haze'],
    ['readings.FF2.value', 900],
    ['readings.P.1.value', 7],
    ['readings.P.1', body.readings[1]],
    ['wings.L.turbulentProbes', ['L01', 'L18']],
    ['wings.L.turbulentProbes.1', 'L18'],
    ['shown.0.shown', 1],
    ['wings.R.of', null],
    ['readings.FF1.value', null],
    ['toString', null],
  ])('%s leads to what stands there', (path, value) => {
    expect(fieldAt(body, path)).toEqual(value);
  });

  it.each([
    ['look', 'cirrus', { ...body, look: 'cirrus' }],
    ['cover', 'full', { ...body, cover: 'full' }],
    ['wings.R.of', 24, { ...body, wings: { ...body.wings, R: { of: 24 } } }],
    ['shown.0.shown', 2, { ...body, shown: [{ clock: 'panel clock', shown: 2 }] }],
    ['shown.0', null, { ...body, shown: [] }],
  ])('%s can be set', (path, value, expected) => {
    expect(changedField(body, path, value)).toEqual({ ok: true, value: expected });
  });

  it('takes a field out when it is set to null', () => {
    const { look: _look, ...rest } = body;
    expect(changedField(body, 'look', null)).toEqual({ ok: true, value: rest });
  });

  it('amends the newest row of an instrument, removes all of them, and appends one that is not there', () => {
    const rows = (path: string, value: unknown): unknown => {
      const changed = changedField(body, path, value);
      return changed.ok ? fieldAt(changed.value, 'readings') : changed.error;
    };
    const [first, probe] = body.readings;
    expect(rows('readings.FF2.value', 810)).toEqual([
      first,
      probe,
      { instrument: 'FF2', value: 810, unit: 'lb/h' },
    ]);
    expect(rows('readings.FF2', null)).toEqual([probe]);
    expect(rows('readings.FF1', { value: 5, unit: 'lb/h' })).toEqual([
      ...body.readings,
      { instrument: 'FF1', value: 5, unit: 'lb/h' },
    ]);
    expect(rows('readings.FF1.blank', 'notRead')).toEqual([
      ...body.readings,
      { instrument: 'FF1', blank: 'notRead' },
    ]);
  });

  it('begins a list of readings where there was none', () => {
    expect(changedField({}, 'readings.FF1.value', 5)).toEqual({
      ok: true,
      value: { readings: [{ instrument: 'FF1', value: 5 }] },
    });
  });

  it.each([
    '',
    '__proto__.x',
    'wings.constructor',
    'look.deeper',
    'shown.9',
    'shown.x',
    'prototype',
  ])('"%s" cannot be set', (path) => {
    expect(changedField(body, path, 1)).toEqual({ ok: false, error: 'noSuchPlace' });
  });

  it('leaves the body as it was', () => {
    const before = structuredClone(body);
    changedField(body, 'readings.FF2.value', 810);
    changedField(body, 'wings.L.of', 1);
    expect(body).toEqual(before);
  });
});
