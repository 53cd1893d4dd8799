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

/** From the bench: at this reading add this correction; straight lines between. */
export const calibrationPointsSchema = v.array(v.object({ reading: finite, correction: finite }));

const calibrationSchema = v.object({
  /** Added to the reading, in the instrument's unit; used where `points` has fewer than two rows. */
  correction: finite,
  points: v.exactOptional(calibrationPointsSchema),
  /**
   * As left, where the bench adjusted the instrument after `points` were found: what it flies with from then on. Without
   * it the instrument was left as found.
   */
  asLeft: v.exactOptional(calibrationPointsSchema),
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
  /** Fastest change that can be real, in its unit a minute: a rise beyond it is asked about. */
  plausibleRatePerMin: v.exactOptional(finite),
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
  /** Where the suction skin lies on the chord: 0 is the leading edge. */
  chordFromFraction: v.exactOptional(finite),
  chordToFraction: v.exactOptional(finite),
  laminarToChordFraction: v.exactOptional(finite),
  /** In words: what the skin is, which regions suction is set by, which cover lies over it. */
  skin: v.exactOptional(name),
  suctionRegions: v.exactOptional(name),
  coverSegment: v.exactOptional(name),
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
  revision: v.exactOptional(name),
  objective: v.exactOptional(name),
  /** In words, as briefed: what may not be exceeded, and what ends the point. */
  limits: v.exactOptional(name),
  stopCriteria: v.exactOptional(name),
});
export type TestCard = Immutable<v.InferOutput<typeof testCardSchema>>;

/** A moment, a span, on or off; a number read off something, and a thing taken with an id of its own. */
export const OWN_TILE_FORMS = ['instant', 'interval', 'state', 'reading', 'sample'] as const;
export type OwnTileForm = (typeof OWN_TILE_FORMS)[number];

const personSchema = v.object({ id, role: name, name: v.exactOptional(name) });

const clockSchema = v.object({
  id,
  owner: name,
  scale: v.picklist(['UTC', 'GPS', 'unknown']),
  resolutionS: finite,
});

const sheetRevisionSchema = v.object({
  revision: name,
  signedBy: name,
  /** UTC date, YYYY-MM-DD. */
  signedOn: name,
  /** What changed since the revision before, a sentence each. */
  changes: v.array(v.pipe(v.string(), v.maxLength(2000))),
});

const archivedPointSchema = v.object({
  id,
  /** Title, date or number of the flight, as people call it. */
  flight: name,
  /** Of the aircraft that day: what hung on it, what was smooth. */
  configuration: name,
  mach: finite,
  /** Weight over pressure ratio, as the mass that weighs so much. */
  weightOverDelta: measureSchema,
  /** Flow of all engines over pressure ratio and root of temperature ratio. */
  referredFlow: measureSchema,
  /** Of that flow, one standard uncertainty. */
  standardUncertainty: v.exactOptional(measureSchema),
  readings: count,
  source: v.picklist(['timeline', 'typed']),
});
export type ArchivedPoint = Immutable<v.InferOutput<typeof archivedPointSchema>>;

export const flightSheetSchema = v.object({
  id,
  revision: name,
  /** The revisions before this one and this one, oldest first, each as it was signed. */
  revisions: v.exactOptional(v.array(sheetRevisionSchema)),
  /** The sheet that the next revision is held against, as JSON; kept on the shelf and left behind when a flight opens. */
  basis: v.exactOptional(v.object({ revision: name, text: v.string() })),
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
  /** Suction-off points of earlier flights; what was borrowed from them says so. */
  baselineArchive: v.exactOptional(v.array(archivedPointSchema)),
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
  ownTiles: v.array(v.object({ id, label: name, form: v.picklist(OWN_TILE_FORMS) })),
  /** The crew's own words on built-in tiles; what is recorded keeps its kind. */
  tileWords: v.exactOptional(v.array(v.object({ tile: id, label: name }))),
});
export type FlightSheet = Immutable<v.InferOutput<typeof flightSheetSchema>>;
export type FlightPhase = keyof FlightSheet['tilePages'];
export const FLIGHT_PHASES = [
  'ground',
  'climb',
  'cruise',
  'descent',
] as const satisfies readonly FlightPhase[];
