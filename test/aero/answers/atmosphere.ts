import * as atmosphere from '../../../src/aero/atmosphere.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../../../src/aero/units.ts';
import { given, type Answers, type RowReader } from '../referenceRow.ts';

const {
  airState,
  densityKgPerM3,
  dynamicViscosityPaS,
  geopotentialAltitudeM,
  speedOfSoundMPerS,
  standardPressurePa,
  standardTemperatureK,
  SEA_LEVEL_PRESSURE_PA,
  SEA_LEVEL_TEMPERATURE_K,
  SPECIFIC_GAS_CONSTANT_J_PER_KG_K,
  TROPOSPHERE_LAPSE_K_PER_M,
} = atmosphere;

const seaLevel = given(airState({ pressureAltitudeM: 0 }));

function heightM(row: RowReader): number {
  return row.has('Z_geometric')
    ? geopotentialAltitudeM(row.si('Z_geometric'))
    : row.si('H_geopotential');
}

function standardDensity(geopotentialM: number): number {
  return densityKgPerM3({
    pressurePa: standardPressurePa(geopotentialM),
    temperatureK: standardTemperatureK(geopotentialM),
  });
}

function dayAt(row: RowReader): atmosphere.AirState {
  const pressureAltitudeM = row.si('Hp');
  return given(
    row.has('SAT')
      ? airState({ pressureAltitudeM, staticTemperatureK: row.si('SAT') })
      : airState({ pressureAltitudeM }),
  );
}

export const atmosphereAnswers: Answers = {
  'standard gravity': (row) => row.out(STANDARD_GRAVITY_M_PER_S2),
  'gas constant used by the 1976 standard': (row) => row.out(atmosphere.GAS_CONSTANT_J_PER_KMOL_K),
  'sea-level mean molar mass': (row) => row.out(atmosphere.MOLAR_MASS_KG_PER_KMOL),
  'sea-level temperature': (row) => row.out(SEA_LEVEL_TEMPERATURE_K),
  'sea-level pressure': (row) => row.out(SEA_LEVEL_PRESSURE_PA),
  'effective earth radius for geopotential conversion': (row) => row.out(atmosphere.EARTH_RADIUS_M),
  'ratio of specific heats': () => atmosphere.HEAT_CAPACITY_RATIO,
  'Sutherland coefficient': (row) => row.out(atmosphere.SUTHERLAND_COEFFICIENT),
  'Sutherland temperature': (row) => row.out(atmosphere.SUTHERLAND_TEMPERATURE_K),
  'sea-level density': (row) => row.out(seaLevel.densityKgPerM3),
  'sea-level speed of sound': (row) => row.out(seaLevel.speedOfSoundMPerS),
  'sea-level speed of sound in knots': (row) => row.out(seaLevel.speedOfSoundMPerS),
  'sea-level dynamic viscosity': (row) => row.out(seaLevel.dynamicViscosityPaS),
  pressure: (row) => row.out(standardPressurePa(heightM(row))),
  density: (row) => row.out(standardDensity(heightM(row))),
  'speed of sound': (row) => row.out(speedOfSoundMPerS(standardTemperatureK(heightM(row)))),
  'dynamic viscosity (Sutherland)': (row) =>
    row.out(dynamicViscosityPaS(standardTemperatureK(heightM(row)))),
  temperature: (row) => row.out(standardTemperatureK(heightM(row))),
  'geopotential altitude from geometric altitude': (row) => row.out(heightM(row)),
  'pressure at the 20 km layer base': (row) => row.out(standardPressurePa(heightM(row))),
  'density ratio at the tropopause': (row) =>
    given(airState({ pressureAltitudeM: heightM(row) })).densityRatio,
  'pressure at the tropopause': (row) => row.out(standardPressurePa(heightM(row))),
  'L/T0 per foot': (row) => row.out(-TROPOSPHERE_LAPSE_K_PER_M / SEA_LEVEL_TEMPERATURE_K),
  'tropospheric pressure exponent g0/(R L)': () =>
    -STANDARD_GRAVITY_M_PER_S2 / (SPECIFIC_GAS_CONSTANT_J_PER_KG_K * TROPOSPHERE_LAPSE_K_PER_M),
  'stratospheric exponent g0/(R T)': (row) =>
    row.out(atmosphere.pressureFallPerM(atmosphere.TROPOPAUSE_M)),
  'pressure at pressure altitude': (row) => row.out(dayAt(row).pressurePa),
  'standard temperature at pressure altitude': (row) => row.out(dayAt(row).standardTemperatureK),
  'pressure ratio': (row) => dayAt(row).pressureRatio,
  'dynamic viscosity, standard day': (row) => row.out(dayAt(row).dynamicViscosityPaS),
  'pressure altitude from static pressure': (row) =>
    row.out(atmosphere.pressureAltitudeM(row.si('p'))),
  'density at pressure altitude, non-standard temperature': (row) =>
    row.out(dayAt(row).densityKgPerM3),
  'speed of sound, non-standard temperature': (row) => row.out(dayAt(row).speedOfSoundMPerS),
};
