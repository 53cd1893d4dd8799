import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as airspeed from '../../src/aero/airspeed.ts';
import { flightCondition, type TemperatureReading } from '../../src/aero/flightCondition.ts';
import { given, valueOf } from './referenceRow.ts';

const anyMach = fc.double({ min: 0.05, max: 0.99, noNaN: true });
const anyPressure = fc.double({ min: 5000, max: 101_325, noNaN: true });

describe('airspeeds', () => {
  it('lead back from calibrated airspeed to the same Mach number', () => {
    fc.assert(
      fc.property(anyMach, anyPressure, (mach, pressurePa) => {
        const calibratedMPerS = valueOf(airspeed.calibratedFromMach({ mach, pressurePa }));
        const back = valueOf(airspeed.machFromCalibrated({ calibratedMPerS, pressurePa }));
        expect(Math.abs(back - mach)).toBeLessThan(1e-10);
      }),
    );
  });

  it('are one speed at sea level on a standard day', () => {
    fc.assert(
      fc.property(anyMach, (mach) => {
        const at = given(
          flightCondition({ mach, pressureAltitudeM: 0, temperature: { kind: 'standard' } }),
        );
        expect(at.calibratedAirspeedMPerS).toBeCloseTo(at.trueAirspeedMPerS, 8);
        expect(at.equivalentAirspeedMPerS).toBeCloseTo(at.trueAirspeedMPerS, 8);
      }),
    );
  });

  it('put impact pressure above dynamic pressure', () => {
    fc.assert(
      fc.property(anyMach, anyPressure, (mach, pressurePa) => {
        expect(airspeed.impactPressurePa({ mach, pressurePa })).toBeGreaterThan(
          airspeed.dynamicPressurePa({ mach, pressurePa }),
        );
      }),
    );
  });

  it('lead back from total to static temperature and from true airspeed to Mach', () => {
    fc.assert(
      fc.property(anyMach, fc.double({ min: 0, max: 1, noNaN: true }), (mach, recoveryFactor) => {
        const probe = { mach, recoveryFactor };
        const totalTemperatureK = airspeed.totalTemperatureK({ staticTemperatureK: 220, ...probe });
        expect(airspeed.staticTemperatureK({ totalTemperatureK, ...probe })).toBeCloseTo(220, 9);
        const trueMPerS = airspeed.trueFromMach({ mach, temperatureK: 220 });
        expect(airspeed.machFromTrue({ trueMPerS, temperatureK: 220 })).toBeCloseTo(mach, 12);
      }),
    );
  });

  it('stop at Mach 1, where the shock relation would begin', () => {
    const supersonic = { kind: 'unavailable', because: 'supersonic' };
    expect(airspeed.machFromImpactPressure({ impactPressurePa: 90, pressurePa: 100 })).toEqual(
      supersonic,
    );
    // 300 kt at 60 000 ft pressure.
    expect(airspeed.machFromCalibrated({ calibratedMPerS: 154.3, pressurePa: 7172 })).toEqual(
      supersonic,
    );
    expect(airspeed.machFromCalibrated({ calibratedMPerS: 341, pressurePa: 101_325 })).toEqual(
      supersonic,
    );
    expect(() => airspeed.impactPressurePa({ mach: 1.2, pressurePa: 20_000 })).toThrow(RangeError);
  });

  it.each([-1, Number.NaN])('refuse a Mach number of %d', (mach) => {
    expect(() => airspeed.dynamicPressurePa({ mach, pressurePa: 20_000 })).toThrow(RangeError);
    expect(() => airspeed.impactPressurePa({ mach, pressurePa: 20_000 })).toThrow(RangeError);
    expect(() => airspeed.trueFromMach({ mach, temperatureK: 220 })).toThrow(RangeError);
  });

  it('stop at the published limit of the subsonic formula, 0.892929158', () => {
    const at = (impactPressurePa: number) =>
      airspeed.machFromImpactPressure({ impactPressurePa, pressurePa: 1 }).kind;
    expect(at(0.892929)).toBe('ready');
    expect(at(0.89293)).toBe('unavailable');
    expect(() => airspeed.impactPressurePa({ mach: 1.000001, pressurePa: 1 })).toThrow(RangeError);
  });

  it('refuse a recovery factor above one', () => {
    const probe = { mach: 0.7, recoveryFactor: 1.000001 };
    expect(() => airspeed.totalTemperatureK({ staticTemperatureK: 220, ...probe })).toThrow(
      RangeError,
    );
  });
});

describe('a flight condition', () => {
  const standard: TemperatureReading = { kind: 'standard' };

  it('is the same from the static and from the total temperature of one air', () => {
    const mach = 0.72;
    const pressureAltitudeM = 11_277.6;
    const recoveryFactor = 0.98;
    const totalK = airspeed.totalTemperatureK({ staticTemperatureK: 216.65, mach, recoveryFactor });
    const fromTotal = given(
      flightCondition({
        mach,
        pressureAltitudeM,
        temperature: { kind: 'total', kelvin: totalK, recoveryFactor },
      }),
    );
    const fromStatic = given(flightCondition({ mach, pressureAltitudeM, temperature: standard }));
    expect(fromTotal.trueAirspeedMPerS).toBeCloseTo(fromStatic.trueAirspeedMPerS, 9);
  });

  it.each([
    ['machNotSubsonic', { mach: 7.2, pressureAltitudeM: 11_000, temperature: standard }],
    ['machNotSubsonic', { mach: 1, pressureAltitudeM: 11_000, temperature: standard }],
    ['machNotSubsonic', { mach: 0, pressureAltitudeM: 11_000, temperature: standard }],
    ['altitudeOutsideRange', { mach: 0.72, pressureAltitudeM: 112_776, temperature: standard }],
    [
      'temperatureNotPhysical',
      { mach: 0.72, pressureAltitudeM: 11_000, temperature: { kind: 'static', kelvin: -292 } },
    ],
    [
      'temperatureNotPhysical',
      {
        mach: 0.72,
        pressureAltitudeM: 11_000,
        temperature: { kind: 'total', kelvin: 0, recoveryFactor: 1 },
      },
    ],
  ] as const)('gives %s for a slip of the keys', (because, keyed) => {
    expect(flightCondition(keyed)).toEqual({ kind: 'unavailable', because });
  });

  it('gives a reason where dense air makes a subsonic Mach number a supersonic CAS', () => {
    expect(
      flightCondition({ mach: 0.999, pressureAltitudeM: -300, temperature: standard }),
    ).toEqual({ kind: 'unavailable', because: 'machNotSubsonic' });
  });
});
