import * as v from 'valibot';
import {
  count,
  day,
  entryIdSchema,
  event,
  finite,
  instantSchema,
  name,
  words,
} from './bodyParts.ts';
import { idSchema as id, measureSchema } from './measure.ts';
import { calibrationPointsSchema } from './sheet.ts';

/** Kinds of entries that are written beside the aircraft; `kinds.ts` puts them among the rest. */

const notNegative = v.pipe(finite, v.minValue(0));

export const beforeFlight = {
  timeHackTaken: event({
    hack: count,
    masterClock: id,
    /** What the master showed at the callout. `at` or the touch is the tablet's own time of it. */
    master: instantSchema,
    /** What every other clock showed, read at the callout. */
    shown: v.array(v.object({ clock: id, shown: instantSchema })),
    method: v.exactOptional(words),
  }),
  briefHeld: event({
    cardRevision: v.exactOptional(name),
    joker: v.exactOptional(measureSchema),
    bingo: v.exactOptional(measureSchema),
    targetReductionFraction: v.exactOptional(finite),
    stopWords: v.exactOptional(name),
    weather: v.exactOptional(words),
  }),
  calibrationChecked: event({
    corrections: v.array(v.object({ instrument: id, correction: finite })),
    inDate: v.exactOptional(v.boolean()),
    probes: v.exactOptional(words),
  }),
  /**
   * A certificate of one instrument, before or after the flight. What it leaves out stays as it was: a correction alone
   * replaces a table, doubts alone leave both. Numbers are in the instrument's unit.
   */
  instrumentCalibrated: event({
    instrument: id,
    correction: v.exactOptional(finite),
    points: v.exactOptional(v.pipe(calibrationPointsSchema, v.minLength(2))),
    /** One standard uncertainty shared by all readings, and one that comes anew with each. */
    commonStandardUncertainty: v.exactOptional(notNegative),
    independentStandardUncertainty: v.exactOptional(notNegative),
    calibratedOn: day,
    dueOn: v.exactOptional(day),
    /** As found speaks of the flights before it too; as left only of those after it. */
    condition: v.picklist(['asFound', 'asLeft']),
    reason: words,
  }),
  preflightDone: event({
    coversFitted: v.exactOptional(count),
    coversOf: v.exactOptional(count),
    fuel: v.exactOptional(measureSchema),
    fuelDensity: v.exactOptional(measureSchema),
    fuelTemperature: v.exactOptional(measureSchema),
    rampWeight: v.exactOptional(measureSchema),
    samplersLoaded: v.exactOptional(v.array(id)),
  }),
  fuelUplifted: event({
    /** A mass, or a volume as the meter of the truck shows it; a volume becomes a mass with its density alone. */
    amount: measureSchema,
    density: v.exactOptional(measureSchema),
    temperature: v.exactOptional(measureSchema),
    docket: v.exactOptional(words),
  }),
} as const;

export const afterFlight = {
  sampleHandedOver: event({ samples: v.array(id), to: name, seals: v.exactOptional(words) }),
  labResultReceived: event({
    sample: id,
    meanSizeMicrometre: v.exactOptional(finite),
    numberPerLitre: v.exactOptional(finite),
    method: v.exactOptional(words),
    analyst: v.exactOptional(name),
  }),
  panelsInspected: event({ findings: v.array(v.object({ panel: id, finding: words })) }),
  squawkRaised: event({
    squawk: id,
    panels: v.array(id),
    words,
    severity: v.exactOptional(name),
    labourH: v.exactOptional(finite),
    /** Entries that show it: an inspection, a loss, a cover that hung. */
    evidence: v.exactOptional(v.array(entryIdSchema)),
  }),
  maintenanceDone: event({
    squawk: v.exactOptional(id),
    panels: v.array(id),
    action: words,
    material: v.exactOptional(name),
    labourH: v.exactOptional(finite),
  }),
} as const;
