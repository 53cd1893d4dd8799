import { densityKgPerM3, dynamicViscosityPaS, speedOfSoundMPerS } from './atmosphere.ts';
import { requireNotNegative, requirePositive } from './outcome.ts';

interface Air {
  readonly mach: number;
  readonly pressurePa: number;
  readonly temperatureK: number;
}

/**
 * Unit Reynolds number ρV/μ.
 *
 * @returns per metre (per foot is 3.28 times less: say which on screen)
 * @throws RangeError for a negative Mach number, or a pressure or temperature not above zero
 * @see U.S. Standard Atmosphere, 1976, for ρ, a and μ. Check values: test/reference/reynolds.json
 */
export function unitReynoldsPerM({ mach, pressurePa, temperatureK }: Air): number {
  requireNotNegative('Mach number', mach);
  const densityTimesSpeed =
    densityKgPerM3({ pressurePa, temperatureK }) * mach * speedOfSoundMPerS(temperatureK);
  return densityTimesSpeed / dynamicViscosityPaS(temperatureK);
}

/** Reynolds number on the streamwise chord. @throws RangeError as above, or for a chord not above zero */
export function chordReynolds({ chordM, ...air }: Air & { readonly chordM: number }): number {
  requirePositive('chord', chordM);
  return unitReynoldsPerM(air) * chordM;
}
