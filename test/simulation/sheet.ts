import type { Unit } from '../../src/record/measure.ts';
import type { FlightSheet, Instrument, Quantity } from '../../src/record/sheet.ts';
import { USUAL_TILE_PAGES } from '../../src/record/tiles.ts';
import { AIR_GAUGES, KG_PER_UNIT, type Drawn, type FlowGauge } from './draw.ts';
import { GRAVITY_M_PER_S2 } from './nature.ts';

interface Tolerances {
  readonly mach: number;
  readonly machPerMin: number;
  readonly altitudeFt: number;
  readonly climbFtPerMin: number;
}

/** Limits on every card. */
export const TOLERANCES: Tolerances = {
  mach: 0.005,
  machPerMin: 0.001,
  altitudeFt: 100,
  climbFtPerMin: 50,
};

/** The flight sheet that a crew would have prepared for a drawn flight. */
export function sheetOf(drawn: Drawn, tolerances: Tolerances): FlightSheet {
  const { unit, says, aircraft } = drawn;
  const mass = (kg: number) => ({ value: kg / KG_PER_UNIT[unit], unit });
  const flow = (kgPerS: number) =>
    ({
      value: (kgPerS * 3600) / KG_PER_UNIT[unit],
      unit: unit === 'lb' ? 'lb/h' : 'kg/h',
    }) as const;
  return {
    id: 'simulated',
    revision: 'A',
    title: 'known truth',
    massUnit: unit,
    heightUnit: 'ft',
    legs: [],
    people: [],
    aircraft: {
      mark: 'QL-SIM',
      wingArea: { value: 600, unit: 'ft2' },
      engineCount: drawn.engineShares.length,
      suctionDrive: 'ownMeteredFuel',
      machSensitivitySuctionOff: aircraft.machPower.turbulent,
      machSensitivitySuctionOn: aircraft.machPower.laminar,
    },
    engineMap: {
      idleFlow: flow(says.idleKgPerS),
      idleStandardUncertainty: flow(says.idleDoubtKgPerS),
      flowPerThrust:
        unit === 'lb'
          ? { value: says.kgPerSPerN * 3600 * GRAVITY_M_PER_S2, unit: 'lb/h/lbf' }
          : { value: says.kgPerSPerN * 3600, unit: 'kg/h/N' },
    },
    weights: {
      ramp: mass(says.rampKg),
      grossWeightStandardUncertainty: mass(says.weightDoubtKg),
    },
    condition: {
      mach: aircraft.mach,
      pressureAltitude: { value: drawn.cardAltitudeFt, unit: 'ft' },
    },
    tolerances: {
      mach: tolerances.mach,
      machRatePerMin: tolerances.machPerMin,
      altitude: { value: tolerances.altitudeFt, unit: 'ft' },
      climb: { value: tolerances.climbFtPerMin, unit: 'ft/min' },
    },
    machHoldStandardUncertainty: says.machHold,
    timeDoubts: { touchS: 2, readingS: 5, lateS: 20 },
    borrowedBaseline: {
      weightElasticity: says.elasticity,
      standardUncertainty: says.elasticityDoubt,
      from: 'earlier flights',
    },
    panels: [],
    probes: [],
    instruments: instrumentsOf(drawn),
    testCards: drawn.runs.map(({ point, suction }, order) => ({
      id: point,
      title: suction === 'off' ? 'baseline' : 'suction',
      setting: suction,
      suction,
      order,
      priority: 1,
      minimumReadings: 3,
    })),
    clocks: [],
    limits: { readingEveryS: 300, samplerPlannedS: 600, coversAfterGearUpS: 60 },
    tilePages: USUAL_TILE_PAGES,
    ownTiles: [],
  };
}

function instrumentsOf({
  unit,
  gauges,
  unitGauge,
  says,
  engineShares,
}: Drawn): readonly Instrument[] {
  const flowUnit = unit === 'lb' ? 'lb/h' : 'kg/h';
  const flowGauge = (gauge: FlowGauge): Pick<Instrument, 'resolution' | 'calibration'> => ({
    resolution: gauge.step,
    calibration: {
      correction: gauge.correction,
      residualStandardUncertainty: gauge.residual,
    },
    ...(says.repeatability && { repeatability: gauge.scatter }),
  });
  return [
    ...gauges.map((gauge, index) => ({
      ...face(`FF${index + 1}`, 'fuelFlow', flowUnit),
      consumer: index + 1,
      ...flowGauge(gauge),
    })),
    {
      ...face('SU', 'suctionFuelFlow', flowUnit),
      consumer: 'suctionUnit',
      ...flowGauge(unitGauge),
    },
    ...engineShares.map((_, index) => ({
      ...face(`FU${index + 1}`, 'fuelUsed', unit),
      consumer: index + 1,
      resolution: 1,
    })),
    { ...face('FUS', 'fuelUsed', unit), consumer: 'suctionUnit', resolution: 1 },
    airGauge('MACH', 'mach', '1', AIR_GAUGES.mach),
    airGauge('ALT', 'pressureAltitude', 'ft', AIR_GAUGES.altitudeFt),
    airGauge('SAT', 'staticAirTemp', 'degC', AIR_GAUGES.temperatureC),
    airGauge('MDRIFT', 'machRate', '1/min', AIR_GAUGES.machPerMin),
    airGauge('CLIMB', 'altitudeRate', 'ft/min', AIR_GAUGES.climbFtPerMin),
  ];
}

function airGauge(
  id: string,
  quantity: Quantity,
  unit: Unit,
  gauge: { readonly step: number; readonly scatter: number; readonly residual?: number },
): Instrument {
  return {
    ...face(id, quantity, unit),
    resolution: gauge.step,
    repeatability: gauge.scatter,
    calibration: {
      correction: 0,
      ...(gauge.residual !== undefined && { residualStandardUncertainty: gauge.residual }),
    },
  };
}

function face(id: string, quantity: Quantity, unit: Unit): Instrument {
  return {
    id,
    name: id,
    quantity,
    unit,
    format: { wholeDigits: 7, decimals: 4, signed: true },
    resolution: 0,
    calibration: { correction: 0 },
    serviceable: true,
  };
}
