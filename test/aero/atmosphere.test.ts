import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airState,
  BOTTOM_M,
  geometricAltitudeM,
  geopotentialAltitudeM,
  HIGHEST_PRESSURE_ALTITUDE_M,
  LOWEST_PRESSURE_ALTITUDE_M,
  pressureAltitudeM,
  pressureFallPerM,
  standardPressurePa,
  standardTemperatureK,
  TOP_M,
} from '../../src/aero/atmosphere.ts';
import { given } from './referenceRow.ts';

const anyHeight = fc.double({ min: BOTTOM_M, max: TOP_M, noNaN: true });
const anyFlightHeight = fc.double({
  min: LOWEST_PRESSURE_ALTITUDE_M,
  max: HIGHEST_PRESSURE_ALTITUDE_M,
  noNaN: true,
});

describe('the standard atmosphere', () => {
  it('gives back the height whose pressure it gave', () => {
    fc.assert(
      fc.property(anyHeight, (heightM) => {
        expect(Math.abs(pressureAltitudeM(standardPressurePa(heightM)) - heightM)).toBeLessThan(
          1e-6,
        );
      }),
    );
  });

  it('gives back the geometric height', () => {
    fc.assert(
      fc.property(anyHeight, (heightM) => {
        const back = geopotentialAltitudeM(geometricAltitudeM(heightM));
        expect(Math.abs(back - heightM)).toBeLessThan(1e-8);
      }),
    );
  });

  it.each([11_000, 20_000])('is continuous at the layer boundary of %d m', (boundaryM) => {
    expect(standardTemperatureK(boundaryM)).toBeCloseTo(standardTemperatureK(boundaryM + 1e-9), 9);
    const ratio = standardPressurePa(boundaryM + 1e-9) / standardPressurePa(boundaryM);
    expect(ratio).toBeCloseTo(1, 10);
  });

  it('loses pressure with height', () => {
    fc.assert(
      fc.property(anyHeight, anyHeight, (a, b) => {
        fc.pre(Math.abs(a - b) > 1e-3);
        expect(standardPressurePa(Math.max(a, b))).toBeLessThan(standardPressurePa(Math.min(a, b)));
      }),
    );
  });

  it('falls by the gradient it states', () => {
    fc.assert(
      fc.property(fc.double({ min: -4000, max: 31_000, noNaN: true }), (heightM) => {
        fc.pre([11_000, 20_000].every((boundaryM) => Math.abs(boundaryM - heightM) > 1));
        const up = Math.log(standardPressurePa(heightM + 0.5));
        const down = Math.log(standardPressurePa(heightM - 0.5));
        expect(down - up).toBeCloseTo(pressureFallPerM(heightM), 9);
      }),
    );
  });

  it.each([BOTTOM_M - 1, TOP_M + 1, Number.NaN])('does not extrapolate to %d m', (heightM) => {
    expect(() => standardPressurePa(heightM)).toThrow(RangeError);
    expect(() => standardTemperatureK(heightM)).toThrow(RangeError);
  });

  it.each([0, 800, 178_000, Number.NaN])('has no height for %d Pa', (pressurePa) => {
    expect(() => pressureAltitudeM(pressurePa)).toThrow(RangeError);
  });
});

describe('the air flown in', () => {
  it('keeps its ratios together on any day', () => {
    fc.assert(
      fc.property(
        anyFlightHeight,
        fc.double({ min: 180, max: 330, noNaN: true }),
        (heightM, kelvin) => {
          const air = given(airState({ pressureAltitudeM: heightM, staticTemperatureK: kelvin }));
          expect(air.densityRatio * air.temperatureRatio).toBeCloseTo(air.pressureRatio, 12);
          expect(air.densityKgPerM3).toBeCloseTo(1.225 * air.densityRatio, 5);
          expect(air.temperatureSuspect).toBe(Math.abs(kelvin - air.standardTemperatureK) > 35);
        },
      ),
    );
  });

  it('takes pressure from the altimeter alone', () => {
    const cold = given(airState({ pressureAltitudeM: 11_000, staticTemperatureK: 200 }));
    const warm = given(airState({ pressureAltitudeM: 11_000, staticTemperatureK: 230 }));
    expect(cold.pressurePa).toBe(warm.pressurePa);
  });

  it.each([-305, 19_813])('gives a reason at %d m', (heightM) => {
    expect(airState({ pressureAltitudeM: heightM })).toEqual({
      kind: 'unavailable',
      because: 'altitudeOutsideRange',
    });
  });

  it('gives a reason for a temperature below absolute zero', () => {
    expect(airState({ pressureAltitudeM: 0, staticTemperatureK: -3 })).toEqual({
      kind: 'unavailable',
      because: 'temperatureNotPhysical',
    });
  });

  it('refuses what is no number', () => {
    expect(() => airState({ pressureAltitudeM: Number.NaN })).toThrow(RangeError);
    expect(() => airState({ pressureAltitudeM: 0, staticTemperatureK: Number.NaN })).toThrow(
      RangeError,
    );
  });
});
