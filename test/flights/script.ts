import * as v from 'valibot';

/**
 * An input script: what a crew did and what each gauge showed, entry by entry. It is no file format of the application;
 * `scriptToEntries.ts` turns it into entries as if a person had touched the screen.
 */

const counters = v.objectWithRest({ unit: v.exactOptional(v.number()) }, v.number());
const airData = v.object({
  mach: v.number(),
  altitude_ft: v.number(),
  sat_C: v.number(),
  machDrift_per_min: v.number(),
  climb_ft_per_min: v.number(),
});
const wingCall = {
  laminarCount: v.exactOptional(v.number()),
  of: v.exactOptional(v.number()),
  laminarProbes: v.exactOptional(v.array(v.string())),
  turbulentProbes: v.exactOptional(v.array(v.string())),
  intermittentProbes: v.exactOptional(v.array(v.string())),
};
const numbers = v.record(v.string(), v.number());
const texts = v.record(v.string(), v.string());

/** Every field of every kind; which of them a kind has is the script's affair. */
export const scriptEntrySchema = v.object({
  n: v.number(),
  recorder: v.string(),
  utc: v.string(),
  enteredUtc: v.exactOptional(v.string()),
  kind: v.string(),
  doubt_s: v.exactOptional(v.number()),
  basis: v.exactOptional(v.string()),
  by: v.exactOptional(v.union([v.string(), v.array(v.string())])),
  calledBy: v.exactOptional(v.string()),
  countersignedBy: v.exactOptional(v.string()),
  amends: v.exactOptional(v.object({ recorder: v.string(), n: v.number() })),
  changes: v.exactOptional(
    v.array(v.object({ field: v.string(), old: v.unknown(), new: v.unknown() })),
  ),
  reason: v.exactOptional(v.string()),
  text: v.exactOptional(v.string()),
  cardRevision: v.exactOptional(v.string()),
  joker_lb: v.exactOptional(v.number()),
  bingo_lb: v.exactOptional(v.number()),
  fuelFlowReductionTarget_pct: v.exactOptional(v.number()),
  stopWords: v.exactOptional(v.string()),
  weather: v.exactOptional(v.string()),
  corrections: v.exactOptional(numbers),
  inDate: v.exactOptional(v.boolean()),
  probes: v.exactOptional(v.string()),
  coversFitted: v.exactOptional(v.number()),
  coversOf: v.exactOptional(v.number()),
  fuel_lb: v.exactOptional(v.number()),
  fuelDensity_lb_per_gal: v.exactOptional(v.number()),
  fuelTemperature_C: v.exactOptional(v.number()),
  rampWeight_lb: v.exactOptional(v.number()),
  samplersLoaded: v.exactOptional(v.array(v.string())),
  hack: v.exactOptional(v.number()),
  method: v.exactOptional(v.string()),
  shown: v.exactOptional(texts),
  medium: v.exactOptional(v.string()),
  channels: v.exactOptional(v.number()),
  interval_s: v.exactOptional(v.number()),
  frame: v.exactOptional(v.number()),
  engine: v.exactOptional(v.number()),
  engines: v.exactOptional(v.array(v.number())),
  grossWeight_lb: v.exactOptional(v.number()),
  runway: v.exactOptional(v.string()),
  wing: v.exactOptional(v.picklist(['L', 'R', 'both'])),
  clear: v.exactOptional(v.array(v.string())),
  hung: v.exactOptional(v.array(v.string())),
  command: v.exactOptional(v.number()),
  altitude_ft: v.exactOptional(v.number()),
  state: v.exactOptional(v.string()),
  leg: v.exactOptional(v.number()),
  fromLeg: v.exactOptional(v.number()),
  toLeg: v.exactOptional(v.number()),
  lasted_s: v.exactOptional(v.number()),
  testPoint: v.exactOptional(v.string()),
  run: v.exactOptional(v.number()),
  airData: v.exactOptional(airData),
  fuelFlow_lb_per_h: v.exactOptional(numbers),
  suctionUnitFlow_lb_per_h: v.exactOptional(v.number()),
  fuelUsed_lb: v.exactOptional(counters),
  countersRemaining_lb: v.exactOptional(v.number()),
  tankGauge_lb: v.exactOptional(v.number()),
  setting: v.exactOptional(v.string()),
  ...wingCall,
  wings: v.exactOptional(
    v.object({ L: v.exactOptional(v.object(wingCall)), R: v.exactOptional(v.object(wingCall)) }),
  ),
  probes_inH2O: v.exactOptional(numbers),
  rake: v.exactOptional(v.string()),
  laminar: v.exactOptional(v.boolean()),
  tubes_inH2O: v.exactOptional(v.array(v.number())),
  encounter: v.exactOptional(v.string()),
  look: v.exactOptional(v.string()),
  sampler: v.exactOptional(v.string()),
  sample: v.exactOptional(v.string()),
  purpose: v.exactOptional(v.string()),
  strength: v.exactOptional(v.string()),
  machFrom: v.exactOptional(v.number()),
  machTo: v.exactOptional(v.number()),
  samples: v.exactOptional(v.array(v.string())),
  to: v.exactOptional(v.string()),
  seals: v.exactOptional(v.string()),
  panels: v.exactOptional(v.union([v.array(v.string()), texts])),
  panel: v.exactOptional(v.string()),
  squawk: v.exactOptional(v.string()),
  labour_h: v.exactOptional(v.number()),
  openItems: v.exactOptional(v.array(v.string())),
  meanSize_um: v.exactOptional(v.nullable(v.number())),
  number_per_litre: v.exactOptional(v.number()),
  analyst: v.exactOptional(v.string()),
});
export type ScriptEntry = v.InferOutput<typeof scriptEntrySchema>;
export type ScriptWingCall = NonNullable<NonNullable<ScriptEntry['wings']>['L']>;

const scriptInstrument = v.object({
  id: v.string(),
  quantity: v.string(),
  engine: v.exactOptional(v.number()),
  unit: v.string(),
  resolution: v.number(),
  correction: v.number(),
  repeatability_1sigma: v.exactOptional(v.number()),
  calibrationResidual_1sigma: v.exactOptional(v.number()),
  calibrationDue: v.exactOptional(v.string()),
});
export type ScriptInstrument = v.InferOutput<typeof scriptInstrument>;

const wing = v.picklist(['L', 'R']);

export const scriptSchema = v.object({
  flight: v.object({
    id: v.string(),
    title: v.string(),
    date: v.string(),
    units: v.literal('lb'),
    field: v.string(),
    localOffset_h: v.number(),
    crew: texts,
    legs: v.array(v.string()),
    rampWeight_lb: v.number(),
    zeroFuelWeight_lb: v.number(),
    rampFuel_lb: v.number(),
  }),
  aircraft: v.object({
    mark: v.string(),
    type: v.string(),
    callsign: v.string(),
    wingArea_ft2: v.number(),
    engines: v.number(),
    suctionDrive: v.literal('separate unit with its own metered fuel'),
    machSensitivity_dlnFlow_per_dlnMach: v.object({
      suctionOff: v.number(),
      suctionOn: v.number(),
    }),
  }),
  condition: v.object({ mach: v.number(), altitude_ft: v.number() }),
  tolerances: v.object({
    mach: v.number(),
    machDrift_per_min: v.number(),
    altitude_ft: v.number(),
    climb_ft_per_min: v.number(),
  }),
  doubts_1sigma: v.object({
    grossWeight_lb: v.number(),
    machHold: v.number(),
    engineMapIdle_lb_per_h: v.number(),
  }),
  borrowedBaseline: v.exactOptional(
    v.object({
      weightElasticity_dlnFlow_per_dlnWeight: v.number(),
      u_1sigma: v.number(),
      from: v.string(),
    }),
  ),
  timeDoubt_s: v.object({ 'one touch': v.number(), reading: v.number(), late: v.number() }),
  panels: v.array(
    v.object({
      id: v.string(),
      wing,
      number: v.number(),
      area_ft2: v.number(),
      meanChord_ft: v.number(),
      spanFrom_pct: v.number(),
      spanTo_pct: v.number(),
      laminarTo_pctChord: v.number(),
    }),
  ),
  probes: v.array(v.object({ id: v.string(), wing, panel: v.string(), area_ft2: v.number() })),
  laminarBelow_inH2O: v.number(),
  instruments: v.array(scriptInstrument),
  engineMap: v.nullable(
    v.object({
      valid: v.string(),
      idle_lb_per_h: v.number(),
      slope_lb_per_h_per_lbf: v.number(),
    }),
  ),
  testCards: v.array(
    v.object({
      id: v.string(),
      title: v.string(),
      setting: v.string(),
      suction: v.picklist(['on', 'off']),
      order: v.number(),
      priority: v.number(),
      expectedFuel: v.number(),
      minimumReadings: v.number(),
    }),
  ),
  clocks: v.array(
    v.object({
      id: v.string(),
      owner: v.string(),
      scale: v.exactOptional(v.literal('UTC')),
      resolution_s: v.number(),
    }),
  ),
  entries: v.array(scriptEntrySchema),
});
export type Script = v.InferOutput<typeof scriptSchema>;
