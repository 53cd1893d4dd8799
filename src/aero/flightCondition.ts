import {
  calibratedFromMach,
  dynamicPressurePa,
  equivalentFromMach,
  impactPressurePa,
  staticTemperatureK,
} from './airspeed.ts';
import { airState, type AirState, type NoAir } from './atmosphere.ts';
import { requireFinite, unavailable, type Unavailable } from './outcome.ts';

/** What the thermometer gave. A total temperature needs the recovery factor of its own probe. */
export type TemperatureReading =
  | { readonly kind: 'static'; readonly kelvin: number }
  | { readonly kind: 'total'; readonly kelvin: number; readonly recoveryFactor: number }
  | { readonly kind: 'standard' };

/** Speed and air at one moment, all from Mach, pressure altitude and a temperature. */
export interface FlightCondition {
  readonly kind: 'condition';
  readonly mach: number;
  readonly air: AirState;
  readonly trueAirspeedMPerS: number;
  readonly equivalentAirspeedMPerS: number;
  readonly calibratedAirspeedMPerS: number;
  /** q = ½ρV². */
  readonly dynamicPressurePa: number;
  /** qc, what the pitot shows above static. */
  readonly impactPressurePa: number;
  readonly totalPressurePa: number;
}

/**
 * Everything the readings of an air data box imply.
 *
 * @returns a reason for a Mach number outside 0 to 1, an altitude outside −1000 to 65 000 ft, or a
 *   temperature at or below absolute zero
 * @throws RangeError when a number is not finite or the recovery factor is outside 0 to 1
 */
export function flightCondition({
  mach,
  pressureAltitudeM,
  temperature,
}: {
  readonly mach: number;
  readonly pressureAltitudeM: number;
  readonly temperature: TemperatureReading;
}): FlightCondition | NoAir | Unavailable<'machNotSubsonic'> {
  requireFinite('Mach number', mach);
  if (!(mach > 0 && mach < 1)) return unavailable('machNotSubsonic');
  const air = airAt(mach, pressureAltitudeM, temperature);
  if (air.kind === 'unavailable') return air;
  const speeds = { mach, pressurePa: air.pressurePa };
  const impactPa = impactPressurePa(speeds);
  const calibrated = calibratedFromMach(speeds);
  // Only in air denser than sea level can a subsonic Mach number be a supersonic calibrated airspeed.
  if (calibrated.kind === 'unavailable') return unavailable('machNotSubsonic');
  return {
    kind: 'condition',
    mach,
    air,
    trueAirspeedMPerS: mach * air.speedOfSoundMPerS,
    equivalentAirspeedMPerS: equivalentFromMach(speeds),
    calibratedAirspeedMPerS: calibrated.value,
    dynamicPressurePa: dynamicPressurePa(speeds),
    impactPressurePa: impactPa,
    totalPressurePa: air.pressurePa + impactPa,
  };
}

function airAt(mach: number, altitudeM: number, temperature: TemperatureReading): AirState | NoAir {
  if (temperature.kind === 'standard') return airState({ pressureAltitudeM: altitudeM });
  requireFinite('temperature', temperature.kelvin);
  if (temperature.kelvin <= 0) return unavailable('temperatureNotPhysical');
  const kelvin =
    temperature.kind === 'static'
      ? temperature.kelvin
      : staticTemperatureK({
          totalTemperatureK: temperature.kelvin,
          mach,
          recoveryFactor: temperature.recoveryFactor,
        });
  return airState({ pressureAltitudeM: altitudeM, staticTemperatureK: kelvin });
}
