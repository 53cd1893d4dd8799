import * as airspeed from '../../../src/aero/airspeed.ts';
import { pressureAltitudeM, standardPressurePa } from '../../../src/aero/atmosphere.ts';
import { flightCondition, type FlightCondition } from '../../../src/aero/flightCondition.ts';
import { chordReynolds, unitReynoldsPerM } from '../../../src/aero/reynolds.ts';
import { given, valueOf, type Answers, type RowReader } from '../referenceRow.ts';

const { impactPressurePa, impactPressurePaOfCalibrated, totalTemperatureK } = airspeed;

/** Mach and pressure altitude on a standard day, or with the temperature the row gives. */
export function conditionOf(row: RowReader): FlightCondition {
  return given(
    flightCondition({
      mach: row.si('M'),
      pressureAltitudeM: row.si('Hp'),
      temperature: row.has('SAT')
        ? { kind: 'static', kelvin: row.si('SAT') }
        : { kind: 'standard' },
    }),
  );
}

function totalPressureRatio(mach: number): number {
  return 1 + impactPressurePa({ mach, pressurePa: 1 });
}

function totalTemperatureRatio(mach: number): number {
  return totalTemperatureK({ staticTemperatureK: 1, mach, recoveryFactor: 1 });
}

/** Where a calibrated airspeed and a Mach number are the same speed. */
function crossoverM(row: RowReader): number {
  const impactPa = impactPressurePaOfCalibrated(row.si('CAS'));
  return pressureAltitudeM(impactPa / impactPressurePa({ mach: row.si('M'), pressurePa: 1 }));
}

function reynoldsOf(row: RowReader): number {
  const { mach, air } = conditionOf(row);
  const { pressurePa, temperatureK } = air;
  return chordReynolds({ mach, pressurePa, temperatureK, chordM: row.si('chord') });
}

function unitReynoldsAt(mach: number, altitudeM: number): number {
  const at = given(
    flightCondition({ mach, pressureAltitudeM: altitudeM, temperature: { kind: 'standard' } }),
  );
  const { pressurePa, temperatureK } = at.air;
  return unitReynoldsPerM({ mach, pressurePa, temperatureK });
}

/** Altitude by halving; the Reynolds number falls all the way up. */
function altitudeOfReynolds(row: RowReader): number {
  const wanted = row.raw('Re') / row.si('chord');
  let low = 0;
  let high = 19_000;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (unitReynoldsAt(row.si('M'), middle) > wanted) low = middle;
    else high = middle;
  }
  return low;
}

export const airspeedAnswers: Answers = {
  'altitude where a CAS and a Mach number coincide': (row) => row.out(crossoverM(row)),
  'p/pt': (row) => 1 / totalPressureRatio(row.raw('M')),
  'T/Tt': (row) => 1 / totalTemperatureRatio(row.raw('M')),
  'q/pt': (row) =>
    airspeed.dynamicPressurePa({ mach: row.raw('M'), pressurePa: 1 }) /
    totalPressureRatio(row.raw('M')),
  'rho/rhot': (row) => totalTemperatureRatio(row.raw('M')) / totalPressureRatio(row.raw('M')),
  'qc/p at Mach 1 (upper limit of the subsonic formula)': (row) =>
    impactPressurePa({ mach: row.raw('M'), pressurePa: 1 }),
  'impact pressure of a calibrated airspeed, inches of water at 20 degC': (row) =>
    row.out(impactPressurePaOfCalibrated(row.si('CAS'))),
  'impact pressure of a calibrated airspeed': (row) =>
    row.out(impactPressurePaOfCalibrated(row.si('CAS'))),
  'EAS from CAS': (row) => {
    const pressurePa = row.si('p');
    const calibratedMPerS = row.si('CAS');
    const mach = valueOf(airspeed.machFromCalibrated({ calibratedMPerS, pressurePa }));
    return row.out(airspeed.equivalentFromMach({ mach, pressurePa }));
  },
  'CAS from TAS': (row) =>
    row.out(
      valueOf(
        airspeed.calibratedFromMach({
          mach: row.si('TAS') / row.si('a'),
          pressurePa: row.si('p'),
        }),
      ),
    ),
  'true airspeed, standard day': (row) => row.out(conditionOf(row).trueAirspeedMPerS),
  'dynamic pressure 0.7 p M^2': (row) => row.out(conditionOf(row).dynamicPressurePa),
  'impact pressure': (row) => row.out(conditionOf(row).impactPressurePa),
  'calibrated airspeed, standard or any day': (row) =>
    row.out(conditionOf(row).calibratedAirspeedMPerS),
  'equivalent airspeed': (row) => row.out(conditionOf(row).equivalentAirspeedMPerS),
  'Mach number from CAS and pressure altitude': (row) =>
    valueOf(
      airspeed.machFromCalibrated({
        calibratedMPerS: row.si('CAS'),
        pressurePa: standardPressurePa(row.si('Hp')),
      }),
    ),
  'pressure altitude where 300 kt CAS is Mach 0.75': (row) => row.out(crossoverM(row)),
  'indicated total temperature': (row) =>
    row.out(
      totalTemperatureK({
        staticTemperatureK: row.si('SAT'),
        mach: row.raw('M'),
        recoveryFactor: row.raw('recovery_factor'),
      }),
    ),
};

export const reynoldsAnswers: Answers = {
  'unit Reynolds number, standard day': (row) =>
    row.out(unitReynoldsAt(row.raw('M'), row.si('Hp'))),
  'chord Reynolds number': reynoldsOf,
  'chord Reynolds number, non-standard temperature': reynoldsOf,
  'pressure altitude where a 17 ft chord has Reynolds number 45 million': (row) =>
    row.out(altitudeOfReynolds(row)),
  'unit Reynolds number per ft at Mach 1, sea level, standard day': (row) =>
    row.out(unitReynoldsPerM({ mach: 1, pressurePa: 101_325, temperatureK: 288.15 })),
};
