import * as v from 'valibot';
import {
  count,
  day,
  entryIdSchema,
  event,
  finite,
  instantSchema,
  name,
  pointRun,
  wingOrBoth,
  wingsSchema,
  words,
} from './bodyParts.ts';
import { afterFlight, beforeFlight } from './kindsOnGround.ts';
import { idSchema as id, measureSchema, unitSchema } from './measure.ts';
import { flightSheetSchema, wingSchema } from './sheet.ts';
import { strokesSchema } from './sketch.ts';

/**
 * Everything that a flight can hold. Kinds are past tense: an entry reports, it does not instruct.
 * To add a kind: add it here, follow the compiler to each switch, put a file into test/flights.
 */

const PANEL_STATES = ['laminar', 'intermittent', 'turbulent', 'notAssessed'] as const;
export const panelStateSchema = v.picklist(PANEL_STATES);
export type PanelState = v.InferOutput<typeof panelStateSchema>;

export const bodySchemas = {
  // The record itself
  flightOpened: event({
    nature: v.picklist(['flight', 'practice', 'demo']),
    title: name,
    /** Day-of-flight date in UTC; a flight keeps it past midnight. */
    date: day,
    device: name,
    sheet: flightSheetSchema,
  }),
  recorderJoined: event({
    device: name,
    purpose: v.picklist(['inFlight', 'debrief', 'transcription']),
  }),
  flightSheetChanged: event({ sheet: flightSheetSchema, reason: words }),
  scribeChanged: event({ from: name, to: name, role: v.exactOptional(name) }),
  phaseChosen: event({ phase: v.picklist(['ground', 'climb', 'cruise', 'descent']) }),
  flightClosed: event({ how: v.picklist(['complete', 'aborted']), reason: v.exactOptional(words) }),
  logSigned: event({
    signedBy: v.array(name),
    openItems: v.array(words),
    heads: v.array(v.object({ rec: id, seq: count, hash: entryIdSchema })),
  }),
  headWitnessed: event({ rec: id, seq: count, hash: entryIdSchema }),
  entryWithdrawn: event({ target: entryIdSchema, reason: words }),
  entryAmended: event({
    target: entryIdSchema,
    /** Amendments of the same target that the author knew and that this one supersedes or builds on. */
    replaces: v.array(entryIdSchema),
    /** Dotted path into the body; in `readings` a row is named by its instrument: `readings.FF2.value`. `null` is absent. */
    changes: v.array(
      v.object({ field: v.pipe(v.string(), v.maxLength(100)), old: v.unknown(), new: v.unknown() }),
    ),
    code: v.picklist([
      'detail',
      'backDated',
      'misKeyed',
      'swapped',
      'wrongButton',
      'kept',
      'other',
    ]),
    reason: words,
    countersignedBy: v.exactOptional(name),
  }),
  unconfirmedSettled: event({ target: entryIdSchema, kept: v.boolean() }),
  causeAssigned: event({ target: entryIdSchema, cause: name, reason: words }),
  /** What a person made of one thing seen by two recorders. Both observations stay in the record. */
  observationsResolved: event({
    /** The one that gives way; where both stand, the later one. */
    target: entryIdSchema,
    other: entryIdSchema,
    verdict: v.picklist(['otherStands', 'bothStand']),
    reason: words,
  }),
  deviceNoted: event({
    what: v.picklist([
      'started',
      'resumed',
      'hidden',
      'shown',
      'clockStepped',
      'sleptOrStepped',
      'awakeLost',
      'awakeHeld',
      'storageTrouble',
    ]),
    stepMs: v.exactOptional(finite),
    /** With `resumed`, seconds since this tablet's last entry; with `shown`, since its screen was left. */
    awayS: v.exactOptional(v.pipe(finite, v.minValue(0))),
    build: v.exactOptional(name),
    words: v.exactOptional(words),
  }),
  briefAccepted: event({ openLines: v.array(name) }),
  /** A line of the reminder strip began to show; what it said stands beside its name. */
  reminderShown: event({ reminder: name, said: v.exactOptional(name) }),
  reminderAnswered: event({ reminder: name, answer: name }),

  ...beforeFlight,

  // Aircraft and devices
  recorderSwitched: event({
    on: v.boolean(),
    medium: v.exactOptional(name),
    channels: v.exactOptional(count),
  }),
  /**
   * A file of recorded parameters, named by the hash of its bytes: results that lean on it say which one it was. The file
   * itself stays outside the record.
   */
  recorderReferenced: event({
    file: name,
    sha256: entryIdSchema,
    bytes: count,
    rows: count,
    /** First and last row by the recorder's own clock. */
    from: instantSchema,
    to: instantSchema,
    channels: v.array(name),
    /** Recorder less aircraft time base, and one standard uncertainty; absent where none was found. */
    offsetS: v.exactOptional(finite),
    offsetDoubtS: v.exactOptional(v.pipe(finite, v.minValue(0))),
  }),
  photoPanelSwitched: event({
    on: v.boolean(),
    medium: v.exactOptional(name),
    everyS: v.exactOptional(finite),
    frame: v.exactOptional(count),
  }),
  photoFrameTaken: event({ frame: v.exactOptional(count) }),
  engineStarted: event({ engine: v.exactOptional(count) }),
  engineShutDown: event({ engines: v.exactOptional(v.array(count)) }),
  blocksOff: event({ grossWeight: v.exactOptional(measureSchema) }),
  blocksOn: event({}),
  takeOffRolled: event({ runway: v.exactOptional(name) }),
  liftedOff: event({}),
  touchedDown: event({ runway: v.exactOptional(name) }),
  gearMoved: event({ to: v.picklist(['up', 'down']) }),
  coversReleased: event({
    wing: wingOrBoth,
    /** Absent until somebody looked: a release command is not a clear panel. */
    clear: v.exactOptional(v.array(id)),
    hung: v.exactOptional(v.array(id)),
    command: v.exactOptional(count),
    altitude: v.exactOptional(measureSchema),
  }),
  legStarted: event({
    leg: v.exactOptional(count),
    from: v.exactOptional(name),
    to: v.exactOptional(name),
  }),
  turnStarted: event({
    fromLeg: v.exactOptional(count),
    toLeg: v.exactOptional(count),
    lastedS: v.exactOptional(finite),
  }),
  turnEnded: event({}),
  levelledOff: event({
    altitude: v.exactOptional(measureSchema),
    grossWeight: v.exactOptional(measureSchema),
  }),
  descentBegun: event({}),
  conditionReached: event({ leg: v.exactOptional(count) }),
  conditionLost: event({}),

  // Suction, power, points
  suctionUnitSwitched: event({ on: v.boolean(), state: v.exactOptional(name) }),
  suctionTurnedOn: event({
    wing: wingOrBoth,
    region: v.exactOptional(name),
    setting: v.exactOptional(name),
  }),
  suctionChanged: event({
    wing: wingOrBoth,
    region: v.exactOptional(name),
    setting: v.exactOptional(name),
  }),
  suctionTurnedOff: event({ wing: wingOrBoth, region: v.exactOptional(name) }),
  throttleChanged: event({ setting: v.exactOptional(words) }),
  testPointStarted: event({ ...pointRun }),
  testPointEnded: event({ ...pointRun }),
  testPointInterrupted: event({ ...pointRun, reason: v.exactOptional(words) }),
  testPointTerminated: event({ ...pointRun, reason: v.exactOptional(words) }),
  stopCalled: event({
    call: v.picklist(['knockItOff', 'terminate', 'abort']),
    reason: v.exactOptional(words),
  }),

  // Readings
  fuelRead: event({}),
  airDataRead: event({}),
  fuelStateRead: event({}),
  probesRead: event({ wings: v.exactOptional(wingsSchema) }),
  rakeRead: event({
    wing: wingSchema,
    rake: id,
    laminar: v.exactOptional(v.boolean()),
    tubes: v.exactOptional(v.array(finite)),
    tubeUnit: v.exactOptional(unitSchema),
  }),

  // Flow and weather
  panelStateCalled: event({ panel: id, state: panelStateSchema }),
  laminarGained: event({
    wings: v.exactOptional(wingsSchema),
    panels: v.exactOptional(v.array(id)),
    byCommand: v.exactOptional(v.boolean()),
  }),
  laminarLost: event({
    wings: v.exactOptional(wingsSchema),
    panels: v.exactOptional(v.array(id)),
    byCommand: v.exactOptional(v.boolean()),
  }),
  moistureSighted: event({ look: v.exactOptional(words) }),
  moistureEntered: event({
    encounter: v.exactOptional(id),
    look: v.exactOptional(words),
    cover: v.exactOptional(v.picklist(['partial', 'full'])),
    ice: v.exactOptional(v.boolean()),
  }),
  moistureExited: event({ encounter: v.exactOptional(id) }),
  samplerOpened: event({
    sampler: v.exactOptional(name),
    sample: v.exactOptional(id),
    purpose: v.exactOptional(name),
  }),
  samplerClosed: event({ sample: v.exactOptional(id) }),
  turbulenceEntered: event({
    strength: v.exactOptional(name),
    machFrom: v.exactOptional(finite),
    machTo: v.exactOptional(finite),
  }),
  turbulenceExited: event({}),

  // People and decisions
  pilotCommented: event({ words }),
  engineerCalled: event({ words }),
  noted: event({ words, target: v.exactOptional(entryIdSchema) }),
  /** A note drawn by hand on a blank card, about `target` or about now. */
  sketchDrawn: event({
    strokes: strokesSchema,
    caption: v.exactOptional(words),
    target: v.exactOptional(entryIdSchema),
  }),
  /** Where the tablet's own receiver says it is. It flies nothing and stands beside the entries, not in them. */
  positionRead: event({
    latitudeDeg: v.pipe(finite, v.minValue(-90), v.maxValue(90)),
    longitudeDeg: v.pipe(finite, v.minValue(-180), v.maxValue(180)),
    /** Above the ellipsoid, as the receiver gives it: not a pressure altitude. */
    altitudeM: v.exactOptional(finite),
    /** Radius of the horizontal doubt, 95 % by the receiver's own account. */
    accuracyM: v.pipe(finite, v.minValue(0)),
  }),
  markMade: event({}),
  jokerReached: event({}),
  bingoReached: event({}),
  ownEventMarked: event({
    tile: id,
    label: name,
    form: v.picklist(['instant', 'opened', 'closed', 'on', 'off']),
  }),

  ...afterFlight,
} as const;

export type KnownKind = keyof typeof bodySchemas;
export const KNOWN_KINDS = Object.keys(bodySchemas) as readonly KnownKind[];
