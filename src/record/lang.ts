import { unreachable, type Entry, type KnownEntry } from './entry.ts';
import {
  awayWords,
  calibrationWords,
  changeWords,
  counted,
  DEVICE_WORDS,
  FORM_WORDS,
  listed,
  measured,
  numbered,
  onOff,
  positionWords,
  signed,
  STATE_WORDS,
  stepWords,
  STOP_WORDS,
  wingsWords,
  wingWords,
} from './entryPhrases.ts';
import { KIND_WORDS, kindWords } from './kindWords.ts';
import { measureWords, numberWords, readingsWords } from './readingWords.ts';
import type { FlightSheet } from './sheet.ts';

/** The entry in a few words of the trade: what it is, then what it says. For the log, the table and the timeline. */
export function entryWords(entry: Entry, sheet: FlightSheet | null): string {
  if (entry.kind === 'unrecognised') {
    return `${kindWords(entry.kind)}: ${entry.writtenKind}`;
  }
  const [head, ...details] = saying(entry);
  const read = entry.body.readings === undefined ? '' : readingsWords(entry.body.readings, sheet);
  const rest = [...details, read].filter((part) => part !== undefined && part !== '').join(', ');
  return rest === '' ? (head ?? '') : `${head} ${rest}`;
}

type Words = readonly [head: string, ...details: (string | undefined)[]];

function saying(entry: KnownEntry): Words {
  const kind = KIND_WORDS[entry.kind];
  switch (entry.kind) {
    case 'flightOpened':
      return [kind, entry.body.title];
    case 'recorderJoined':
      return [kind, entry.body.device];
    case 'flightSheetChanged':
      return [kind, entry.body.reason];
    case 'scribeChanged':
      return [kind, `${entry.body.from} to ${entry.body.to}`];
    case 'phaseChosen':
      return [kind, entry.body.phase];
    case 'flightClosed':
      return [kind, entry.body.how, entry.body.reason];
    case 'logSigned':
      return [kind, ...entry.body.signedBy];
    case 'headWitnessed':
      return [kind, `${entry.body.hash.slice(0, 8)} at ${entry.body.seq}`];
    case 'entryWithdrawn':
      return [kind, entry.body.reason];
    case 'entryAmended':
      return [kind, ...entry.body.changes.map(changeWords), entry.body.reason];
    case 'unconfirmedSettled':
      return [kind, entry.body.kept ? 'kept' : 'dropped'];
    case 'causeAssigned':
      return [kind, entry.body.cause, entry.body.reason];
    case 'observationsResolved':
      return [
        kind,
        entry.body.verdict === 'bothStand' ? 'both stand' : 'the other stands',
        entry.body.reason,
      ];
    case 'deviceNoted':
      return [
        kind,
        DEVICE_WORDS[entry.body.what],
        awayWords(entry.body),
        stepWords(entry.body.stepMs),
        entry.body.words,
      ];
    case 'briefAccepted':
      return [kind, ...entry.body.openLines];
    case 'reminderShown':
      return [kind, entry.body.said ?? entry.body.reminder];
    case 'reminderAnswered':
      return [kind, entry.body.reminder, entry.body.answer];
    case 'timeHackTaken':
      return [`${kind} ${entry.body.hack}`];
    case 'briefHeld':
      return [
        kind,
        entry.body.cardRevision && `cards ${entry.body.cardRevision}`,
        entry.body.joker && `joker ${measureWords(entry.body.joker)}`,
        entry.body.bingo && `bingo ${measureWords(entry.body.bingo)}`,
        entry.body.weather,
      ];
    case 'calibrationChecked':
      return [
        kind,
        ...entry.body.corrections.map(
          ({ instrument, correction }) => `${instrument} ${signed(correction)}`,
        ),
      ];
    case 'instrumentCalibrated':
      return [`${kind} ${entry.body.instrument}`, ...calibrationWords(entry.body)];
    case 'preflightDone':
      return [
        kind,
        entry.body.coversFitted === undefined
          ? undefined
          : `covers ${entry.body.coversFitted} of ${entry.body.coversOf ?? '?'}`,
        entry.body.fuel && `fuel ${measureWords(entry.body.fuel)}`,
      ];
    case 'fuelUplifted':
      return [
        kind,
        measureWords(entry.body.amount),
        entry.body.density && `at ${measureWords(entry.body.density)}`,
        entry.body.docket,
      ];
    case 'recorderSwitched':
    case 'photoPanelSwitched':
      return [`${kind} ${onOff(entry.body.on)}`, entry.body.medium];
    case 'recorderReferenced':
      return [
        kind,
        entry.body.file,
        `${numberWords(entry.body.rows)} rows`,
        entry.body.offsetS === undefined
          ? undefined
          : `clock ${signed(Math.round(entry.body.offsetS * 10) / 10)}\u00a0s`,
      ];
    case 'photoFrameTaken':
      return [kind, numbered('', entry.body.frame)];
    case 'engineStarted':
      return [kind, numbered('', entry.body.engine)];
    case 'engineShutDown':
      return [kind, entry.body.engines?.join(' and ')];
    case 'blocksOff':
      return [kind];
    case 'takeOffRolled':
    case 'touchedDown':
      return [kind, entry.body.runway && `runway ${entry.body.runway}`];
    case 'gearMoved':
      return [`${kind} ${entry.body.to}`];
    case 'coversReleased':
      return [
        kind,
        wingWords(entry.body.wing),
        listed('clear', entry.body.clear),
        listed('hung', entry.body.hung),
      ];
    case 'legStarted':
      return [kind, numbered('', entry.body.leg), entry.body.to && `to ${entry.body.to}`];
    case 'turnStarted':
      return [
        kind,
        entry.body.toLeg === undefined ? undefined : `to leg ${entry.body.toLeg}`,
        entry.body.lastedS === undefined ? undefined : `${numberWords(entry.body.lastedS)}\u00a0s`,
      ];
    case 'levelledOff':
      return [kind, measured(entry.body.altitude)];
    case 'conditionReached':
      return [kind, numbered('leg ', entry.body.leg)];
    case 'suctionUnitSwitched':
      return [`${kind} ${onOff(entry.body.on)}`, entry.body.state];
    case 'suctionTurnedOn':
    case 'suctionChanged':
      return [kind, wingWords(entry.body.wing), entry.body.setting, entry.body.region];
    case 'suctionTurnedOff':
      return [kind, wingWords(entry.body.wing), entry.body.region];
    case 'throttleChanged':
      return [kind, entry.body.setting];
    case 'testPointStarted':
    case 'testPointEnded':
      return [kind, `${entry.body.point} run ${entry.body.run}`];
    case 'testPointInterrupted':
    case 'testPointTerminated':
      return [kind, `${entry.body.point} run ${entry.body.run}`, entry.body.reason];
    case 'stopCalled':
      return [STOP_WORDS[entry.body.call], entry.body.reason];
    case 'probesRead':
      return [kind, ...wingsWords(entry.body.wings)];
    case 'rakeRead':
      return [
        `${kind} ${entry.body.rake}`,
        entry.body.laminar === undefined ? undefined : entry.body.laminar ? 'laminar' : 'turbulent',
      ];
    case 'panelStateCalled':
      return [`${entry.body.panel} ${STATE_WORDS[entry.body.state]}`];
    case 'laminarGained':
    case 'laminarLost':
      return [
        kind,
        entry.body.panels?.join(' '),
        ...wingsWords(entry.body.wings),
        entry.body.byCommand === true ? 'by command' : undefined,
      ];
    case 'moistureSighted':
      return [kind, entry.body.look];
    case 'moistureEntered':
      return [kind, entry.body.encounter, entry.body.look];
    case 'moistureExited':
      return [kind, entry.body.encounter];
    case 'samplerOpened':
      return [kind, entry.body.sample, entry.body.sampler, entry.body.purpose];
    case 'samplerClosed':
      return [kind, entry.body.sample];
    case 'turbulenceEntered':
      return [kind, entry.body.strength];
    case 'pilotCommented':
    case 'engineerCalled':
    case 'noted':
      return [`${kind}:`, entry.body.words];
    case 'sketchDrawn':
      return [`${kind}, ${counted(entry.body.strokes.length, 'stroke')}`, entry.body.caption];
    case 'positionRead':
      return [kind, ...positionWords(entry.body)];
    case 'ownEventMarked':
      return [entry.body.label, FORM_WORDS[entry.body.form]];
    case 'sampleHandedOver':
      return [kind, entry.body.samples.join(' '), `to ${entry.body.to}`];
    case 'labResultReceived':
      return [
        `${kind} ${entry.body.sample}`,
        entry.body.meanSizeMicrometre === undefined
          ? undefined
          : `${numberWords(entry.body.meanSizeMicrometre)}\u00a0µm`,
        entry.body.numberPerLitre === undefined
          ? undefined
          : `${numberWords(entry.body.numberPerLitre)} per litre`,
      ];
    case 'panelsInspected':
      return [kind, ...entry.body.findings.map(({ panel, finding }) => `${panel} ${finding}`)];
    case 'squawkRaised':
      return [`${kind} ${entry.body.squawk}`, entry.body.panels.join(' '), entry.body.words];
    case 'maintenanceDone':
      return [kind, entry.body.panels.join(' '), entry.body.action];
    case 'markMade':
      return [kind, entry.body.note];
    case 'blocksOn':
    case 'liftedOff':
    case 'turnEnded':
    case 'descentBegun':
    case 'conditionLost':
    case 'fuelRead':
    case 'airDataRead':
    case 'fuelStateRead':
    case 'turbulenceExited':
    case 'jokerReached':
    case 'bingoReached':
      return [kind];
    default:
      return unreachable(entry);
  }
}
