import type { Unit } from '../../src/record/measure.ts';
import type { FlightSheet, Instrument, Quantity } from '../../src/record/sheet.ts';
import { USUAL_TILE_PAGES } from '../../src/record/tiles.ts';
import type { Script, ScriptInstrument } from './script.ts';

type TilePages = FlightSheet['tilePages'];

/** The flight sheet that a crew would have prepared for the scripted flight. */
export function sheetOfScript(
  script: Script,
  tilePages: TilePages = USUAL_TILE_PAGES,
): FlightSheet {
  const { flight, aircraft, condition, tolerances, engineMap, borrowedBaseline } = script;
  const brief = script.entries.find((entry) => entry.kind === 'brief');
  const photo = script.entries.find((entry) => entry.kind === 'photo panel on');
  return {
    id: `sheet-${flight.id}`,
    revision: brief?.cardRevision ?? 'A',
    title: flight.title,
    massUnit: flight.units,
    heightUnit: 'ft',
    field: flight.field,
    localOffsetH: flight.localOffset_h,
    legs: flight.legs,
    people: Object.entries(flight.crew).map(([id, role]) => ({ id, role })),
    aircraft: {
      mark: aircraft.mark,
      callsign: aircraft.callsign,
      type: aircraft.type,
      wingArea: { value: aircraft.wingArea_ft2, unit: 'ft2' },
      engineCount: aircraft.engines,
      suctionDrive: 'ownMeteredFuel',
      machSensitivitySuctionOff: aircraft.machSensitivity_dlnFlow_per_dlnMach.suctionOff,
      machSensitivitySuctionOn: aircraft.machSensitivity_dlnFlow_per_dlnMach.suctionOn,
    },
    ...(engineMap !== null && {
      engineMap: {
        idleFlow: { value: engineMap.idle_lb_per_h, unit: 'lb/h' },
        idleStandardUncertainty: {
          value: script.doubts_1sigma.engineMapIdle_lb_per_h,
          unit: 'lb/h',
        },
        flowPerThrust: { value: engineMap.slope_lb_per_h_per_lbf, unit: 'lb/h/lbf' },
        valid: engineMap.valid,
      },
    }),
    weights: {
      ramp: { value: flight.rampWeight_lb, unit: 'lb' },
      zeroFuel: { value: flight.zeroFuelWeight_lb, unit: 'lb' },
      rampFuel: { value: flight.rampFuel_lb, unit: 'lb' },
      grossWeightStandardUncertainty: { value: script.doubts_1sigma.grossWeight_lb, unit: 'lb' },
    },
    condition: {
      mach: condition.mach,
      pressureAltitude: { value: condition.altitude_ft, unit: 'ft' },
    },
    tolerances: {
      mach: tolerances.mach,
      machRatePerMin: tolerances.machDrift_per_min,
      altitude: { value: tolerances.altitude_ft, unit: 'ft' },
      climb: { value: tolerances.climb_ft_per_min, unit: 'ft/min' },
    },
    machHoldStandardUncertainty: script.doubts_1sigma.machHold,
    timeDoubts: {
      touchS: script.timeDoubt_s['one touch'],
      readingS: script.timeDoubt_s.reading,
      lateS: script.timeDoubt_s.late,
    },
    ...(borrowedBaseline !== undefined && {
      borrowedBaseline: {
        weightElasticity: borrowedBaseline.weightElasticity_dlnFlow_per_dlnWeight,
        standardUncertainty: borrowedBaseline.u_1sigma,
        from: borrowedBaseline.from,
      },
    }),
    ...(brief?.fuelFlowReductionTarget_pct !== undefined && {
      targetReductionFraction: brief.fuelFlowReductionTarget_pct / 100,
    }),
    panels: script.panels.map((panel) => ({
      id: panel.id,
      wing: panel.wing,
      number: panel.number,
      area: { value: panel.area_ft2, unit: 'ft2' },
      meanChord: { value: panel.meanChord_ft, unit: 'ft' },
      spanFromFraction: share(panel.spanFrom_pct),
      spanToFraction: share(panel.spanTo_pct),
      laminarToChordFraction: share(panel.laminarTo_pctChord),
    })),
    probes: script.probes.map((probe) => ({
      id: probe.id,
      wing: probe.wing,
      panel: probe.panel,
      form: 'trailingEdgeTotal',
      area: { value: probe.area_ft2, unit: 'ft2' },
      serviceable: true,
    })),
    laminarBelow: { value: script.laminarBelow_inH2O, unit: 'inH2O' },
    instruments: [
      ...script.instruments.flatMap((row) => instrumentsOf(row, aircraft.engines)),
      remainder,
      ...probeGauges(script),
    ],
    testCards: script.testCards.map(({ expectedFuel, ...card }) => ({
      ...card,
      expectedFuel: { value: expectedFuel, unit: 'lb' },
    })),
    clocks: script.clocks.map((clock) => ({
      id: clock.id,
      owner: clock.owner,
      scale: clock.scale ?? 'unknown',
      resolutionS: clock.resolution_s,
    })),
    limits: {
      ...(brief?.joker_lb !== undefined && { joker: { value: brief.joker_lb, unit: 'lb' } }),
      ...(brief?.bingo_lb !== undefined && { bingo: { value: brief.bingo_lb, unit: 'lb' } }),
      readingEveryS: 300,
      samplerPlannedS: 600,
      coversAfterGearUpS: 60,
      ...(photo?.interval_s !== undefined && { photoFrameEveryS: photo.interval_s }),
    },
    ...(brief?.stopWords !== undefined && { stopWords: brief.stopWords }),
    tilePages,
    ownTiles: [],
  };
}

interface Face {
  readonly quantity: Quantity;
  readonly unit: Unit;
  readonly wholeDigits: number;
  readonly decimals: number;
  readonly signed?: true;
  readonly range?: readonly [number, number];
}

/** How each gauge of the script looks on the panel. Ranges are invented with it. */
const FACES: Readonly<Record<string, Face>> = {
  'fuel flow': {
    quantity: 'fuelFlow',
    unit: 'lb/h',
    wholeDigits: 4,
    decimals: 0,
    range: [400, 1600],
  },
  'suction unit fuel flow': {
    quantity: 'suctionFuelFlow',
    unit: 'lb/h',
    wholeDigits: 3,
    decimals: 0,
    range: [0, 150],
  },
  'fuel used counters': { quantity: 'fuelUsed', unit: 'lb', wholeDigits: 5, decimals: 0 },
  Mach: { quantity: 'mach', unit: '1', wholeDigits: 1, decimals: 3, range: [0.6, 0.8] },
  'pressure altitude': {
    quantity: 'pressureAltitude',
    unit: 'ft',
    wholeDigits: 5,
    decimals: 0,
    range: [30_000, 41_000],
  },
  'static air temperature': {
    quantity: 'staticAirTemp',
    unit: 'degC',
    wholeDigits: 2,
    decimals: 1,
    signed: true,
    range: [-75, -35],
  },
  'Mach drift': {
    quantity: 'machRate',
    unit: '1/min',
    wholeDigits: 1,
    decimals: 4,
    signed: true,
    range: [-0.02, 0.02],
  },
  'pressure altitude rate': {
    quantity: 'altitudeRate',
    unit: 'ft/min',
    wholeDigits: 4,
    decimals: 0,
    signed: true,
    range: [-3000, 3000],
  },
  'fuel remaining by tank gauges': {
    quantity: 'tankFuel',
    unit: 'lb',
    wholeDigits: 5,
    decimals: 0,
  },
};

/** One instrument a gauge; the counters are one row in the script and one gauge for each consumer on the panel. */
function instrumentsOf(row: ScriptInstrument, engineCount: number): readonly Instrument[] {
  const face = FACES[row.quantity];
  if (face === undefined) {
    throw new RangeError(`a gauge of the script must be known, got ${row.quantity}`);
  }
  const gauge: Instrument = {
    id: row.id,
    name: row.engine === undefined ? row.quantity : `${row.quantity}, engine ${row.engine}`,
    quantity: face.quantity,
    ...(row.engine !== undefined && { consumer: row.engine }),
    ...(face.quantity === 'suctionFuelFlow' && { consumer: 'suctionUnit' }),
    unit: face.unit,
    format: {
      wholeDigits: face.wholeDigits,
      decimals: face.decimals,
      signed: face.signed ?? false,
    },
    resolution: row.resolution,
    ...(face.range !== undefined && { rangeLow: face.range[0], rangeHigh: face.range[1] }),
    ...(row.repeatability_1sigma !== undefined && { repeatability: row.repeatability_1sigma }),
    calibration: {
      correction: row.correction,
      ...(row.calibrationResidual_1sigma !== undefined && {
        residualStandardUncertainty: row.calibrationResidual_1sigma,
      }),
      ...(row.calibrationDue !== undefined && { dueOn: row.calibrationDue }),
    },
    serviceable: true,
  };
  if (face.quantity !== 'fuelUsed') {
    return [gauge];
  }
  return [
    ...Array.from({ length: engineCount }, (_, index): Instrument => {
      const engine = index + 1;
      return {
        ...gauge,
        id: `FU${engine}`,
        name: `fuel used, engine ${engine}`,
        consumer: engine,
      };
    }),
    { ...gauge, id: 'FUS', name: 'fuel used, suction unit', consumer: 'suctionUnit' },
  ];
}

const remainder: Instrument = {
  id: 'FREM',
  name: 'fuel remaining by counters',
  quantity: 'fuelRemaining',
  unit: 'lb',
  format: { wholeDigits: 5, decimals: 0, signed: false },
  resolution: 1,
  calibration: { correction: 0 },
  serviceable: true,
};

/** A gauge for each probe of which the script reads a pressure. */
function probeGauges(script: Script): readonly Instrument[] {
  const read = new Set(script.entries.flatMap((entry) => Object.keys(entry.probes_inH2O ?? {})));
  return script.probes
    .filter((probe) => read.has(probe.id))
    .map((probe) => ({
      id: probe.id,
      name: `probe ${probe.id}`,
      quantity: 'probeDeficit',
      probe: probe.id,
      unit: 'inH2O',
      format: { wholeDigits: 2, decimals: 1, signed: false },
      resolution: 0.1,
      calibration: { correction: 0 },
      serviceable: true,
    }));
}

/** 12.3 per cent as 0.123, without the tail of a binary division. */
function share(percent: number): number {
  return Math.round(percent * 1000) / 100_000;
}
