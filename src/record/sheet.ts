import * as v from 'valibot';
import type { Immutable } from './brand.ts';

/**
 * The flight sheet: everything about the aircraft, its instruments and its cards that a flight is judged by.
 * It opens the record as an entry, so each schema here is both the type and the check at the door.
 * A measure keeps the unit in which the crew wrote it; conversion happens on use, never on storage.
 */

export const WINGS = ['L', 'R'] as const;
export const wingSchema = v.picklist(WINGS);
export type Wing = v.InferOutput<typeof wingSchema>;

/** Units that a gauge or a form may show. Inches of water name their convention. */
export const UNITS = [
  'lb/h',
  'kg/h',
  'lb',
  'kg',
  'ft',
  'm',
  'ft2',
  'm2',
  'ft/min',
  'm/s',
  'kt',
  'degC',
  'K',
  '1',
  '1/min',
  'inH2O',
  'inH2O@39.2F',
  'inH2O@60F',
  'inH2O@20C',
  'mbar',
  'lbf',
  'N',
  'lb/h/lbf',
  'kg/h/N',
  's',
  'lb/USgal',
  'kg/l',
  'USgal',
  'l',
] as const;
export const unitSchema = v.picklist(UNITS);
export type Unit = v.InferOutput<typeof unitSchema>;

const finite = v.pipe(v.number(), v.finite());
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const name = v.pipe(v.string(), v.maxLength(200));
/** A name that becomes a key in lookups by name, so it must not be the one key that is none. */
export const idSchema = v.pipe(
  v.string(),
  v.minLength(1),
  v.maxLength(40),
  v.check((text) => text !== '__proto__'),
);
const id = idSchema;

export const measureSchema = v.object({ value: finite, unit: unitSchema });
export type Measure = Immutable<v.InferOutput<typeof measureSchema>>;

export const QUANTITIES = [
  'fuelFlow',
  'suctionFuelFlow',
  'fuelUsed',
  'fuelRemaining',
  'tankFuel',
  'mach',
  'pressureAltitude',
  'staticAirTemp',
  'totalAirTemp',
  'machRate',
  'altitudeRate',
  'probeDeficit',
] as const;
export const quantitySchema = v.picklist(QUANTITIES);
export type Quantity = v.InferOutput<typeof quantitySchema>;

/** Which consumer a fuel instrument belongs to: an engine by number, or the suction unit. */
export const consumerSchema = v.union([
  v.pipe(v.number(), v.integer(), v.minValue(1)),
  v.literal('suctionUnit'),
]);
export type Consumer = v.InferOutput<typeof consumerSchema>;

/** As found on the bench: at this reading add this correction; straight lines between. */
export const calibrationPointsSchema = v.array(v.object({ reading: finite, correction: finite }));

const calibrationSchema = v.object({
  /** Added to the reading, in the instrument's unit; used where `points` has fewer than two rows. */
  correction: finite,
  points: v.exactOptional(calibrationPointsSchema),
  /** What stays in doubt after correcting, one standard uncertainty, shared by all readings of the flight. */
  residualStandardUncertainty: v.exactOptional(finite),
  /** What comes anew with each reading beside its scatter (hysteresis, a warm gauge), one standard uncertainty. */
  independentStandardUncertainty: v.exactOptional(finite),
  calibratedOn: v.exactOptional(v.string()),
  dueOn: v.exactOptional(v.string()),
});
export type Calibration = Immutable<v.InferOutput<typeof calibrationSchema>>;

export const instrumentSchema = v.object({
  id,
  name,
  quantity: quantitySchema,
  consumer: v.exactOptional(consumerSchema),
  probe: v.exactOptional(id),
  unit: unitSchema,
  /** Boxes on the pad: digits before and after the printed point, and whether a sign key is offered. */
  format: v.object({
    wholeDigits: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(7)),
    decimals: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(4)),
    signed: v.boolean(),
  }),
  /** Smallest step that the display shows, in its unit. */
  resolution: v.pipe(v.number(), v.finite(), v.minValue(0)),
  rangeLow: v.exactOptional(finite),
  rangeHigh: v.exactOptional(finite),
  /** Scatter of repeated readings, one standard uncertainty; blank when nobody declared it. */
  repeatability: v.exactOptional(finite),
  calibration: calibrationSchema,
  serviceable: v.boolean(),
});
export type Instrument = Immutable<v.InferOutput<typeof instrumentSchema>>;

export const panelSchema = v.object({
  id,
  wing: wingSchema,
  number: count,
  area: measureSchema,
  meanChord: v.exactOptional(measureSchema),
  spanFromFraction: v.exactOptional(finite),
  spanToFraction: v.exactOptional(finite),
  laminarToChordFraction: v.exactOptional(finite),
});
export type Panel = Immutable<v.InferOutput<typeof panelSchema>>;

export const probeSchema = v.object({
  id,
  wing: wingSchema,
  panel: id,
  form: v.picklist(['trailingEdgeTotal', 'rake']),
  area: measureSchema,
  serviceable: v.boolean(),
});
export type Probe = Immutable<v.InferOutput<typeof probeSchema>>;

export const testCardSchema = v.object({
  id,
  title: name,
  setting: name,
  suction: v.picklist(['on', 'off']),
  order: count,
  priority: count,
  expectedFuel: v.exactOptional(measureSchema),
  minimumReadings: count,
  minimumSteadyS: v.exactOptional(count),
});
export type TestCard = Immutable<v.InferOutput<typeof testCardSchema>>;

const personSchema = v.object({ id, role: name, name: v.exactOptional(name) });

const clockSchema = v.object({
  id,
  owner: name,
  scale: v.picklist(['UTC', 'GPS', 'unknown']),
  resolutionS: finite,
});

const engineTableSchema = v.object({
  /** By number; absent: all engines together. */
  engine: v.exactOptional(v.pipe(v.number(), v.integer(), v.minValue(1))),
  rows: v.pipe(v.array(v.object({ thrust: measureSchema, flow: measureSchema })), v.minLength(2)),
  /** Of the table as a whole, one standard uncertainty: it shifts all rows alike. */
  flowStandardUncertainty: v.exactOptional(measureSchema),
  valid: v.exactOptional(name),
});
export type EngineTable = Immutable<v.InferOutput<typeof engineTableSchema>>;

/** Limits over a sliding window; what is left out follows from the tolerances of the card. */
const stabilitySchema = v.object({
  windowS: v.exactOptional(finite),
  /** Greatest less least inside the window. */
  machRange: v.exactOptional(finite),
  altitudeRange: v.exactOptional(measureSchema),
  temperatureRange: v.exactOptional(measureSchema),
  /** Share of the mean flow. */
  flowRangeFraction: v.exactOptional(finite),
  /** Slopes below which nothing needs correcting. */
  climb: v.exactOptional(measureSchema),
  machRatePerMin: v.exactOptional(finite),
});

const bleedSchema = v.object({
  /** Share of the fuel flow that one per cent of core bleed costs: 0.012 is 1.2 %. */
  flowFractionPerPercent: finite,
  /** Per cent of the core flow that the suction takes. */
  percentTaken: finite,
  /** Of the product of the two, one standard uncertainty: a share of the fuel flow. */
  standardUncertainty: finite,
  from: name,
});

/**
 * Share of the whole drag that the treated strips of wing, full chord and turbulent, carry as friction and form drag.
 * It belongs to one aircraft: there is no default.
 */
const treatedDragShareSchema = v.object({
  fraction: finite,
  standardUncertainty: v.exactOptional(finite),
  from: name,
});

export const SUCTION_DRIVES = ['ownMeteredFuel', 'bleed', 'shaft'] as const;

export const flightSheetSchema = v.object({
  id,
  revision: name,
  title: name,
  /** Units that totals and new fields are shown in; each instrument keeps its own. */
  massUnit: v.picklist(['lb', 'kg']),
  heightUnit: v.picklist(['ft', 'm']),
  field: v.exactOptional(name),
  localOffsetH: v.exactOptional(finite),
  legs: v.array(name),
  people: v.array(personSchema),
  aircraft: v.object({
    mark: name,
    callsign: v.exactOptional(name),
    type: v.exactOptional(name),
    wingArea: measureSchema,
    engineCount: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(8)),
    suctionDrive: v.picklist(SUCTION_DRIVES),
    /** What bleed for the suction costs; only where `suctionDrive` is bleed. Without it gross saving cannot be told. */
    bleed: v.exactOptional(bleedSchema),
    treatedDragShare: v.exactOptional(treatedDragShareSchema),
    /** d ln(fuel flow) / d ln(Mach) at the card, suction off and on. */
    machSensitivitySuctionOff: v.exactOptional(finite),
    machSensitivitySuctionOn: v.exactOptional(finite),
    /** Greatest lift to drag ratio that the crew will vouch for; bounds the energy term where no engine map is given. */
    liftToDragAtMost: v.exactOptional(finite),
    /** CD = zeroLiftDrag + liftFactor CL², suction off: lets the baseline say how consumption goes with thrust. */
    polar: v.exactOptional(
      v.object({
        zeroLiftDrag: finite,
        liftFactor: finite,
        /** Of the share of drag that comes with lift, as a share of it. */
        liftShareStandardUncertainty: v.exactOptional(finite),
        from: name,
      }),
    ),
  }),
  /** Total flow = (idle + slope x thrust) x sqrt(T / Tstd); absent when there is no map. */
  engineMap: v.exactOptional(
    v.object({
      idleFlow: measureSchema,
      idleStandardUncertainty: v.exactOptional(measureSchema),
      flowPerThrust: measureSchema,
      valid: v.exactOptional(name),
    }),
  ),
  /** Flow against thrust off the engine deck, at the card on a standard day; comes before `engineMap`. */
  engineTables: v.exactOptional(v.array(engineTableSchema)),
  /** d ln(specific consumption) / d ln(thrust) about the card; serves where there is neither map nor table. */
  tsfcSlope: v.exactOptional(v.object({ slope: finite, standardUncertainty: finite, from: name })),
  weights: v.object({
    ramp: v.exactOptional(measureSchema),
    zeroFuel: v.exactOptional(measureSchema),
    rampFuel: v.exactOptional(measureSchema),
    grossWeightStandardUncertainty: v.exactOptional(measureSchema),
  }),
  condition: v.object({ mach: finite, pressureAltitude: measureSchema }),
  tolerances: v.object({
    mach: finite,
    machRatePerMin: finite,
    altitude: measureSchema,
    climb: measureSchema,
  }),
  machHoldStandardUncertainty: v.exactOptional(finite),
  stability: v.exactOptional(stabilitySchema),
  timeDoubts: v.object({ touchS: finite, readingS: finite, lateS: finite }),
  /** What earlier flights taught about the suction-off flow; always labelled borrowed. */
  borrowedBaseline: v.exactOptional(
    v.object({ weightElasticity: finite, standardUncertainty: finite, from: name }),
  ),
  /** Fuel-flow reduction hoped for, as a share: 0.29 is 29 %. */
  targetReductionFraction: v.exactOptional(finite),
  panels: v.array(panelSchema),
  probes: v.array(probeSchema),
  laminarBelow: v.exactOptional(measureSchema),
  instruments: v.array(instrumentSchema),
  testCards: v.array(testCardSchema),
  clocks: v.array(clockSchema),
  limits: v.object({
    joker: v.exactOptional(measureSchema),
    bingo: v.exactOptional(measureSchema),
    readingEveryS: finite,
    samplerPlannedS: finite,
    coversAfterGearUpS: finite,
    photoFrameEveryS: v.exactOptional(finite),
    /** When the reminder strip speaks and when it is silent; what is absent keeps its usual value. */
    reminders: v.exactOptional(
      v.object({
        readingOverdueS: v.exactOptional(finite),
        /** An interval is long once it has lasted so many times what such intervals usually last. */
        usualLengths: v.exactOptional(finite),
        coversRepeatS: v.exactOptional(finite),
        coversAtMost: v.exactOptional(count),
        samplerRepeatS: v.exactOptional(finite),
        samplerAtMost: v.exactOptional(count),
        intervalRepeatS: v.exactOptional(finite),
        intervalAtMost: v.exactOptional(count),
        afterTouchS: v.exactOptional(finite),
        apartS: v.exactOptional(finite),
        quietAfterGearUpS: v.exactOptional(finite),
        quietForS: v.exactOptional(finite),
      }),
    ),
  }),
  stopWords: v.exactOptional(name),
  /** Tiles by phase of flight, twelve places each; a place may be empty. Names are tile ids of the vocabulary. */
  tilePages: v.object({
    ground: v.array(v.nullable(id)),
    climb: v.array(v.nullable(id)),
    cruise: v.array(v.nullable(id)),
    descent: v.array(v.nullable(id)),
  }),
  /** The crew's own events beside the built-in vocabulary. */
  ownTiles: v.array(
    v.object({ id, label: name, form: v.picklist(['instant', 'interval', 'state']) }),
  ),
});
export type FlightSheet = Immutable<v.InferOutput<typeof flightSheetSchema>>;
export type FlightPhase = keyof FlightSheet['tilePages'];
export const FLIGHT_PHASES = [
  'ground',
  'climb',
  'cruise',
  'descent',
] as const satisfies readonly FlightPhase[];
