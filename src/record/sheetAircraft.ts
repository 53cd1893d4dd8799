import * as v from 'valibot';
import type { Immutable } from './brand.ts';
import { finite, measureSchema, name } from './measure.ts';

/** The aircraft on a flight sheet: what its engines and its suction cost, and when it flies steadily. */

export const engineTableSchema = v.object({
  /** By number; absent: all engines together. */
  engine: v.exactOptional(v.pipe(v.number(), v.integer(), v.minValue(1))),
  rows: v.pipe(v.array(v.object({ thrust: measureSchema, flow: measureSchema })), v.minLength(2)),
  /** Of the table as a whole, one standard uncertainty: it shifts all rows alike. */
  flowStandardUncertainty: v.exactOptional(measureSchema),
  valid: v.exactOptional(name),
});
export type EngineTable = Immutable<v.InferOutput<typeof engineTableSchema>>;

/** Limits over a sliding window; what is left out follows from the tolerances of the card. */
export const stabilitySchema = v.object({
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

/** One half of a wing that is straight from root to tip: enough to sketch it and to work areas out. */
const planformSchema = v.object({
  semiSpan: measureSchema,
  rootChord: measureSchema,
  tipChord: measureSchema,
  /** Of the leading edge, degrees. */
  leadingEdgeSweepDeg: v.exactOptional(finite),
});
export type WingPlan = Immutable<v.InferOutput<typeof planformSchema>>;

export const aircraftSchema = v.object({
  mark: name,
  callsign: v.exactOptional(name),
  type: v.exactOptional(name),
  wingArea: measureSchema,
  planform: v.exactOptional(planformSchema),
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
});

/** Total flow = (idle + slope x thrust) x sqrt(T / Tstd); absent when there is no map. */
export const engineMapSchema = v.object({
  idleFlow: measureSchema,
  idleStandardUncertainty: v.exactOptional(measureSchema),
  flowPerThrust: measureSchema,
  valid: v.exactOptional(name),
});
