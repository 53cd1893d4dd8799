import * as v from 'valibot';
import { isEntryId, isEpochMs, type EntryId, type EpochMs } from './brand.ts';
import { idSchema, unitSchema } from './measure.ts';

/** What the bodies of entries are made of. */

export const finite = v.pipe(v.number(), v.finite());
export const count = v.pipe(v.number(), v.integer(), v.minValue(0));
export const name = v.pipe(v.string(), v.maxLength(200));
export const words = v.pipe(v.string(), v.maxLength(2000));
/** YYYY-MM-DD. */
export const day = v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}$/));
export const instantSchema = v.custom<EpochMs>(isEpochMs);
export const entryIdSchema = v.custom<EntryId>(isEntryId);

/** A gauge as it was read, in the unit it shows. Not read, not applicable, unserviceable and zero are four things. */
export const readingSchema = v.union([
  v.object({
    instrument: idSchema,
    value: finite,
    unit: unitSchema,
    /** How it was keyed; Debrief compares the two. */
    method: v.exactOptional(v.picklist(['digits', 'steps'])),
    /** Outside the band when entered, or short of digits: kept, and left out of every number until somebody keeps it. */
    queried: v.exactOptional(v.picklist(['outsideBand', 'short'])),
  }),
  v.object({
    instrument: idSchema,
    blank: v.picklist(['notRead', 'notApplicable', 'unserviceable']),
  }),
]);

/**
 * Probes of one wing as called: name the turbulent ones (all others laminar) or the laminar ones (all others
 * turbulent), less any intermittent ones; or give only a count, when nobody said which.
 */
export const wingProbesSchema = v.object({
  of: count,
  laminarCount: v.exactOptional(finite),
  turbulentProbes: v.exactOptional(v.array(idSchema)),
  laminarProbes: v.exactOptional(v.array(idSchema)),
  intermittentProbes: v.exactOptional(v.array(idSchema)),
});
export const wingsSchema = v.object({
  L: v.exactOptional(wingProbesSchema),
  R: v.exactOptional(wingProbesSchema),
});

/** What any event may carry beside its own fields. */
export const common = {
  /** When it happened, where that is not the touch: back-dated or late. The touch time stays in the envelope. */
  at: v.exactOptional(instantSchema),
  /** Doubt of the time, one standard uncertainty in seconds; absent means the flight sheet's default. */
  doubtS: v.exactOptional(v.pipe(v.number(), v.finite(), v.minValue(0))),
  basis: v.exactOptional(v.picklist(['seen', 'heard', 'instrument', 'late', 'transcribed'])),
  basisWords: v.exactOptional(words),
  calledBy: v.exactOptional(name),
  note: v.exactOptional(words),
  /** A touch that may not have been meant: out of every number until KEEP or DROP. */
  unconfirmed: v.exactOptional(
    v.picklist(['briefContact', 'slippedOff', 'cancelled', 'heldLong', 'twoTiles']),
  ),
  /** Readings taken in one glance share this: the time of the first digit's contact. */
  glance: v.exactOptional(instantSchema),
  readings: v.exactOptional(v.array(readingSchema)),
} as const;

export const wingOrBoth = v.picklist(['L', 'R', 'both']);
export const pointRun = { point: idSchema, run: count } as const;

/** The body of a kind: what any event may carry, and its own fields. */
export const event = <const Entries extends v.ObjectEntries>(
  own: Entries,
): v.ObjectSchema<typeof common & Entries, undefined> => v.object({ ...common, ...own });
