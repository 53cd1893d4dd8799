import type { EpochMs } from '../brand.ts';
import { unreachable, type KnownEntry } from '../entry.ts';
import type { StandingEntry, Timed } from '../flightState.ts';
import { calibrationChecked, instrumentCalibrated } from './calibrations.ts';
import { type Fold, timedBy, withState } from './fold.ts';
import {
  closed,
  opened,
  ownEvent,
  samplerClosed,
  samplerOpened,
  turnEnded,
  turnStarted,
} from './intervals.ts';
import {
  conditionReached,
  coversReleased,
  flightOpened,
  markMade,
  milestone,
  noted,
  preflightDone,
  scribeChanged,
  timeHackTaken,
  withSheet,
} from './opening.ts';
import { pointEnded, pointStarted, stopCalled } from './points.ts';
import { withReadings } from './readings.ts';
import { suctionChanged, suctionTurnedOff, suctionTurnedOn, throttleChanged } from './suction.ts';
import { flowChanged, panelStateCalled, probesRead } from './wing.ts';

/** The state after one more entry, in order of event time. What was withdrawn, dropped or never settled says nothing. */
export function folded(fold: Fold, standing: StandingEntry): Fold {
  const entryCount = fold.state.entryCount + 1;
  if (standing.standing !== 'stands') {
    return withState(fold, { entryCount });
  }
  const counted = withState(fold, { entryCount, lastAt: standing.at });
  const { effective } = standing;
  if (effective.kind === 'unrecognised') {
    return counted;
  }
  const timed = timedBy(effective, standing.at);
  // A reading given with an end was taken before it: it still belongs to what ends.
  return isEnd(effective)
    ? said(withReadings(counted, effective, standing, timed), effective, timed, standing.ownAt)
    : withReadings(said(counted, effective, timed, standing.ownAt), effective, standing, timed);
}

function isEnd(entry: KnownEntry): boolean {
  switch (entry.kind) {
    case 'testPointEnded':
    case 'testPointInterrupted':
    case 'testPointTerminated':
    case 'stopCalled':
      return true;
    default:
      return false;
  }
}

/** What the entry says, apart from its readings. */
function said(fold: Fold, entry: KnownEntry, timed: Timed, ownAt: EpochMs): Fold {
  switch (entry.kind) {
    case 'flightOpened':
      return flightOpened(fold, entry, timed);
    case 'flightSheetChanged':
      return withSheet(fold, entry.body.sheet);
    case 'scribeChanged':
      return scribeChanged(fold, entry);
    case 'phaseChosen':
      return withState(fold, { phase: entry.body.phase });
    case 'flightClosed':
      return withState(fold, { closed: { at: timed.at, how: entry.body.how, by: entry.id } });
    case 'logSigned': {
      const { signedBy } = entry.body;
      const signed = [...fold.state.signed, { at: timed.at, signedBy, by: entry.id }];
      return withState(fold, { signed });
    }
    case 'timeHackTaken':
      return timeHackTaken(fold, entry, timed, ownAt);
    case 'preflightDone':
      return preflightDone(fold, entry, timed);
    case 'calibrationChecked':
      return calibrationChecked(fold, entry, timed);
    case 'instrumentCalibrated':
      return instrumentCalibrated(fold, entry, timed);

    case 'recorderSwitched':
      return entry.body.on
        ? opened(fold, 'recorder', entry.body.medium ?? '', timed)
        : closed(fold, 'recorder', entry.body.medium ?? '', timed);
    case 'photoPanelSwitched':
      return entry.body.on
        ? opened(fold, 'photoPanel', entry.body.medium ?? '', timed)
        : closed(fold, 'photoPanel', entry.body.medium ?? '', timed);
    case 'blocksOff':
      return milestone(fold, 'blocksOff', timed);
    case 'takeOffRolled':
      return milestone(fold, 'takeOffRoll', timed);
    case 'liftedOff':
      return milestone(fold, 'liftOff', timed);
    case 'gearMoved':
      return milestone(fold, entry.body.to === 'up' ? 'gearUp' : 'gearDown', timed);
    case 'levelledOff':
      return milestone(fold, 'levelOff', timed);
    case 'descentBegun':
      return milestone(fold, 'topOfDescent', timed);
    case 'touchedDown':
      return milestone(fold, 'touchdown', timed);
    case 'blocksOn':
      return milestone(fold, 'blocksOn', timed);
    case 'coversReleased':
      return coversReleased(fold, entry, timed);
    case 'turnStarted':
      return turnStarted(fold, entry, timed);
    case 'turnEnded':
      return turnEnded(fold, timed);
    case 'conditionReached':
      return conditionReached(fold, timed);
    case 'conditionLost': {
      const { lastReachedAt } = fold.state.condition;
      return withState(fold, { condition: { reached: null, lastReachedAt } });
    }

    case 'suctionUnitSwitched':
      return withState(fold, { suctionUnit: entry.body.on ? timed : null });
    case 'suctionTurnedOn':
      return suctionTurnedOn(fold, entry, timed);
    case 'suctionChanged':
      return suctionChanged(fold, entry, timed);
    case 'suctionTurnedOff':
      return suctionTurnedOff(fold, entry, timed);
    case 'throttleChanged':
      return throttleChanged(fold, timed);
    case 'testPointStarted':
      return pointStarted(fold, entry, timed);
    case 'testPointEnded':
    case 'testPointInterrupted':
    case 'testPointTerminated':
      return pointEnded(fold, entry, timed);
    case 'stopCalled':
      return stopCalled(fold, entry, timed);

    case 'probesRead':
      return probesRead(fold, entry, timed);
    case 'panelStateCalled':
      return panelStateCalled(fold, entry, timed);
    case 'laminarGained':
    case 'laminarLost':
      return flowChanged(fold, entry, timed);
    case 'moistureEntered':
      return opened(fold, 'moisture', entry.body.encounter ?? '', timed);
    case 'moistureExited':
      return closed(fold, 'moisture', entry.body.encounter ?? '', timed);
    case 'samplerOpened':
      return samplerOpened(fold, entry, timed);
    case 'samplerClosed':
      return samplerClosed(fold, entry, timed);
    case 'turbulenceEntered':
      return opened(fold, 'turbulence', entry.body.strength ?? '', timed);
    case 'turbulenceExited':
      return closed(fold, 'turbulence', '', timed);

    case 'markMade':
      return markMade(fold, timed);
    case 'noted':
      return noted(fold, entry);
    case 'ownEventMarked':
      return ownEvent(fold, entry, timed);

    // Facts that analysis and the debrief read from the entries themselves; the state does not change by them.
    case 'recorderJoined':
    case 'headWitnessed':
    case 'entryWithdrawn':
    case 'entryAmended':
    case 'unconfirmedSettled':
    case 'causeAssigned':
    case 'observationsResolved':
    case 'deviceNoted':
    case 'briefAccepted':
    case 'reminderShown':
    case 'reminderAnswered':
    case 'briefHeld':
    case 'fuelUplifted':
    case 'recorderReferenced':
    case 'photoFrameTaken':
    case 'engineStarted':
    case 'engineShutDown':
    case 'legStarted':
    case 'fuelRead':
    case 'airDataRead':
    case 'fuelStateRead':
    case 'rakeRead':
    case 'moistureSighted':
    case 'sketchDrawn':
    case 'positionRead':
    case 'pilotCommented':
    case 'engineerCalled':
    case 'jokerReached':
    case 'bingoReached':
    case 'sampleHandedOver':
    case 'labResultReceived':
    case 'panelsInspected':
    case 'squawkRaised':
    case 'maintenanceDone':
      return fold;
    default:
      return unreachable(entry);
  }
}
