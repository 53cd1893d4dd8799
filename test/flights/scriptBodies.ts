import type { EntryId, EpochMs } from '../../src/record/brand.ts';
import type { KnownKind } from '../../src/record/kinds.ts';
import type { Measure, Unit } from '../../src/record/measure.ts';
import type { ScriptEntry } from './script.ts';
import { amendedField, readingsOf, wingsOf } from './scriptReadings.ts';

/** What the scribe writes. The body is loose here and checked by `parseEntry`, the one door. */
export interface Saying {
  readonly kind: KnownKind;
  readonly body: object;
}

export interface Context {
  /** Tablet time of the event itself; of a late line it is earlier than the writing. */
  readonly at: EpochMs;
  readonly wall: EpochMs;
  readonly idOf: (n: number) => EntryId;
  /** The recorder's own head before this line. */
  readonly head: { readonly rec: string; readonly seq: number; readonly hash: EntryId };
}

/** What one line of the script makes the scribe write: two entries where one touch would not do. */
export function sayingsOf(line: ScriptEntry, context: Context): readonly Saying[] {
  const readings = readingsOf(line);
  const common = { ...commonOf(line, context), ...(readings.length > 0 && { readings }) };
  return ownOf(line, context).map(({ kind, body }) => ({ kind, body: { ...common, ...body } }));
}

function commonOf(line: ScriptEntry, { at, wall }: Context): object {
  const late = line.enteredUtc !== undefined;
  return {
    at: late ? at : undefined,
    doubtS: line.doubt_s,
    basis: late ? 'late' : undefined,
    basisWords: line.basis,
    calledBy: line.calledBy ?? (line.kind === 'terminate' ? line.by : undefined),
    glance: line.kind === 'fuel reading' ? wall : undefined,
  };
}

/** The script's plain kinds that are one kind of ours with fields of the same or nearly the same name. */
function ownOf(line: ScriptEntry, context: Context): readonly Saying[] {
  const say = (kind: KnownKind, body: object = {}): readonly Saying[] => [{ kind, body }];
  /** The scribe turns to the next page of tiles when the flight does; the script does not speak of pages. */
  const turnTo = (phase: string): readonly Saying[] => say('phaseChosen', { phase });
  const point = { point: line.testPoint, run: line.run, reason: line.reason };
  const suction = { wing: line.wing, setting: line.setting };
  switch (line.kind) {
    case 'time hack': {
      const { tablet: _ownTouch, ...others } = line.shown ?? {};
      return say('timeHackTaken', {
        hack: line.hack,
        masterClock: 'master',
        master: Date.parse(line.utc),
        shown: Object.entries(others).map(([clock, shown]) => ({
          clock,
          shown: Date.parse(shown),
        })),
        method: line.method,
      });
    }
    case 'recorder on':
      return say('recorderSwitched', { on: true, medium: line.medium, channels: line.channels });
    case 'photo panel on':
      return say('photoPanelSwitched', {
        on: true,
        medium: line.medium,
        everyS: line.interval_s,
        frame: line.frame,
      });
    case 'photo panel and recorder off':
      return [
        ...say('photoPanelSwitched', { on: false, frame: line.frame }),
        ...say('recorderSwitched', { on: false }),
      ];
    case 'engine start':
      return say('engineStarted', { engine: line.engine });
    case 'engine shutdown':
      return say('engineShutDown', { engines: line.engines });
    case 'blocks off':
      return say('blocksOff', { grossWeight: measured(line.grossWeight_lb, 'lb') });
    case 'blocks on':
      return say('blocksOn');
    case 'take-off roll':
      return [...say('takeOffRolled', { runway: line.runway }), ...turnTo('climb')];
    case 'lift-off':
      return say('liftedOff');
    case 'touchdown':
      return say('touchedDown', { runway: line.runway });
    case 'gear up':
      return say('gearMoved', { to: 'up' });
    case 'covers release':
      return say('coversReleased', {
        wing: line.wing,
        clear: line.clear,
        hung: line.hung,
        command: line.command,
        altitude: measured(line.altitude_ft, 'ft'),
      });
    case 'level-off':
      return [
        ...say('levelledOff', {
          altitude: measured(line.altitude_ft, 'ft'),
          grossWeight: measured(line.grossWeight_lb, 'lb'),
        }),
        ...turnTo('cruise'),
      ];
    case 'top of descent':
      return [...say('descentBegun'), ...turnTo('descent')];
    case 'on condition':
      return say('conditionReached', { leg: line.leg });
    case 'turn':
      return say('turnStarted', {
        fromLeg: line.fromLeg,
        toLeg: line.toLeg,
        lastedS: line.lasted_s,
      });
    case 'suction unit start':
      return say('suctionUnitSwitched', { on: true, state: line.state });
    case 'suction unit stop':
      return say('suctionUnitSwitched', { on: false });
    case 'suction on':
      return say('suctionTurnedOn', suction);
    case 'suction change':
      return say('suctionChanged', suction);
    case 'suction off':
      return say('suctionTurnedOff', { wing: line.wing });
    case 'throttle change':
      return say('throttleChanged', { setting: line.setting });
    case 'test point start':
      return say('testPointStarted', { ...point, reason: undefined });
    case 'test point end':
      return say('testPointEnded', { ...point, reason: undefined });
    case 'test point interrupted':
      return say('testPointInterrupted', point);
    case 'terminate':
      return say('testPointTerminated', point);
    case 'fuel reading':
      return say('fuelRead');
    case 'fuel state':
      return say('fuelStateRead');
    case 'probe reading':
      return say('probesRead', { wings: wingsOf(line) });
    case 'rake reading':
      return say('rakeRead', {
        wing: line.wing,
        rake: line.rake,
        laminar: line.laminar,
        tubes: line.tubes_inH2O,
        tubeUnit: 'inH2O',
      });
    case 'laminar gain':
      return say('laminarGained', flowChange(line));
    case 'laminar loss':
      return say('laminarLost', flowChange(line));
    case 'moisture entry':
      return say('moistureEntered', { encounter: line.encounter, look: line.look });
    case 'moisture exit':
      return say('moistureExited', { encounter: line.encounter });
    case 'sampler open':
      return say('samplerOpened', {
        sampler: line.sampler,
        sample: line.sample,
        purpose: line.purpose,
      });
    case 'sampler close':
      return say('samplerClosed', { sample: line.sample });
    case 'turbulence':
      return say('turbulenceEntered', {
        strength: line.strength,
        machFrom: line.machFrom,
        machTo: line.machTo,
      });
    case 'pilot comment':
      return say('pilotCommented', { words: line.text });
    case 'note':
      return say('noted', { words: line.text });
    case 'joker reached':
      return say('jokerReached');
    default:
      return groundWork(line, context);
  }
}

/** What is written before the flight, about other entries, and after landing. */
function groundWork(line: ScriptEntry, context: Context): readonly Saying[] {
  const say = (kind: KnownKind, body: object = {}): readonly Saying[] => [{ kind, body }];
  switch (line.kind) {
    case 'brief':
      return say('briefHeld', {
        cardRevision: line.cardRevision,
        joker: measured(line.joker_lb, 'lb'),
        bingo: measured(line.bingo_lb, 'lb'),
        targetReductionFraction: (line.fuelFlowReductionTarget_pct ?? 0) / 100,
        stopWords: line.stopWords,
        weather: line.weather,
      });
    case 'calibration check':
      return say('calibrationChecked', {
        corrections: Object.entries(line.corrections ?? {}).map(([instrument, correction]) => ({
          instrument,
          correction,
        })),
        inDate: line.inDate,
        probes: line.probes,
      });
    case 'preflight':
      return say('preflightDone', {
        coversFitted: line.coversFitted,
        coversOf: line.coversOf,
        fuel: measured(line.fuel_lb, 'lb'),
        fuelDensity: measured(line.fuelDensity_lb_per_gal, 'lb/USgal'),
        fuelTemperature: measured(line.fuelTemperature_C, 'degC'),
        rampWeight: measured(line.rampWeight_lb, 'lb'),
        samplersLoaded: line.samplersLoaded,
      });
    case 'void':
      return say('entryWithdrawn', { target: target(line, context), reason: line.reason });
    case 'amendment':
      return say('entryAmended', {
        target: target(line, context),
        replaces: [],
        changes: (line.changes ?? []).map((change) => ({
          ...change,
          field: amendedField(change.field),
        })),
        code: line.reason === 'engines swapped' ? 'swapped' : 'misKeyed',
        reason: line.reason,
        countersignedBy: line.countersignedBy,
      });
    case 'sample handed over':
      return say('sampleHandedOver', { samples: line.samples, to: line.to, seals: line.seals });
    case 'lab result':
      return say('labResultReceived', {
        sample: line.sample,
        meanSizeMicrometre: line.meanSize_um ?? undefined,
        numberPerLitre: line.number_per_litre,
        method: line.method,
        analyst: line.analyst,
      });
    case 'inspection':
      return say('panelsInspected', {
        findings: Object.entries(line.panels ?? {}).map(([panel, finding]) => ({ panel, finding })),
      });
    case 'squawk':
      return say('squawkRaised', {
        squawk: line.squawk,
        panels: (line.panel ?? '').split(' '),
        words: line.text,
        labourH: line.labour_h,
      });
    case 'log signed':
      return say('logSigned', {
        signedBy: line.by,
        openItems: line.openItems,
        heads: [context.head],
      });
    default:
      throw new RangeError(`a kind of the script must be known, got ${line.kind}`);
  }
}

function flowChange(line: ScriptEntry): object {
  return {
    wings: wingsOf(line),
    panels: line.panels,
    byCommand: line.reason === 'by command' ? true : undefined,
  };
}

function target(line: ScriptEntry, context: Context): EntryId {
  if (line.amends === undefined) {
    throw new RangeError(`line ${line.n} must name the entry that it is about`);
  }
  return context.idOf(line.amends.n);
}

function measured(value: number | undefined, unit: Unit): Measure | undefined {
  return value === undefined ? undefined : { value, unit };
}
