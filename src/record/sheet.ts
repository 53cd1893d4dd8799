import * as v from 'valibot';
import type { Immutable } from './brand.ts';
import { count, finite, idSchema as id, measureSchema, name, unitSchema } from './measure.ts';
import {
  aircraftSchema,
  engineMapSchema,
  engineTableSchema,
  stabilitySchema,
} from './sheetAircraft.ts';

/**
 * The flight sheet: everything about the aircraft, its instruments and its cards that a flight is judged by.
 * It opens the record as an entry, so each schema here is both the type and the check at the door.
 * A measure keeps the unit in which the crew wrote it; conversion happens on use, never on storage.
 */

export const WINGS = ['L', 'R'] as const;
export const wingSchema = v.picklist(WINGS);
export type Wing = v.InferOutput<typeof wingSchema>;

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
  aircraft: aircraftSchema,
  engineMap: v.exactOptional(engineMapSchema),
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
  /** Pages of one role in all phases, in place of the usual ones: what a second recorder's tablet shows. */
  rolePages: v.exactOptional(v.array(v.object({ role: name, tiles: v.array(v.nullable(id)) }))),
  /** Whether a tablet may keep the position that its own receiver gives; absent means no. */
  positionAllowed: v.exactOptional(v.boolean()),
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
