import { unreachable, type Entry } from '../../../record/entry.ts';
import type { FlightSheet } from '../../../record/sheet.ts';

export type LaneId =
  | 'phase'
  | 'covers'
  | 'moisture'
  | 'suction'
  | 'sampler'
  | `panel:${string}`
  | 'fuel'
  | 'reduction'
  | 'notes';

export interface Lane {
  readonly id: LaneId;
  readonly name: string;
  readonly form: 'interval' | 'panel' | 'curve' | 'words';
  /** A heavier rule above: the lane opens a new family. */
  readonly opensFamily: boolean;
}

const lane = (id: LaneId, name: string, form: Lane['form'], opensFamily = false): Lane => ({
  id,
  name,
  form,
  opensFamily,
});

/** Lanes in their one order; a panel keeps its lane when nobody ever called it. */
export function lanesOf(sheet: FlightSheet | null): readonly Lane[] {
  const panels = [...(sheet?.panels ?? [])].sort(
    (a, b) => a.wing.localeCompare(b.wing) || a.number - b.number,
  );
  return [
    lane('phase', 'Phase', 'interval'),
    lane('covers', 'Covers', 'interval'),
    lane('moisture', 'Moisture', 'interval'),
    lane('suction', 'Suction', 'interval'),
    lane('sampler', 'Sampler', 'interval'),
    ...panels.map((panel, index) =>
      lane(
        `panel:${panel.id}`,
        panel.id,
        'panel',
        index === 0 || panels[index - 1]?.wing !== panel.wing,
      ),
    ),
    lane('fuel', 'Fuel flow', 'curve', true),
    lane('reduction', 'Reduction', 'curve', true),
    lane('notes', 'Notes', 'words', true),
  ];
}

export function laneName(id: LaneId): string {
  switch (id) {
    case 'phase':
      return 'Phase';
    case 'covers':
      return 'Covers';
    case 'moisture':
      return 'Moisture';
    case 'suction':
      return 'Suction';
    case 'sampler':
      return 'Sampler';
    case 'fuel':
      return 'Fuel flow';
    case 'reduction':
      return 'Reduction';
    case 'notes':
      return 'Notes';
    default:
      return `Panel ${id.slice('panel:'.length)}`;
  }
}

/** The lane that an entry's mark stands in. Calls on the wing stand in the lane of the first panel they name. */
export function laneOf(entry: Entry, sheet: FlightSheet | null): LaneId {
  switch (entry.kind) {
    case 'phaseChosen':
    case 'engineStarted':
    case 'engineShutDown':
    case 'blocksOff':
    case 'blocksOn':
    case 'takeOffRolled':
    case 'liftedOff':
    case 'touchedDown':
    case 'gearMoved':
    case 'legStarted':
    case 'turnStarted':
    case 'turnEnded':
    case 'levelledOff':
    case 'descentBegun':
    case 'conditionReached':
    case 'conditionLost':
      return 'phase';
    case 'coversReleased':
      return 'covers';
    case 'moistureSighted':
    case 'moistureEntered':
    case 'moistureExited':
      return 'moisture';
    case 'suctionUnitSwitched':
    case 'suctionTurnedOn':
    case 'suctionChanged':
    case 'suctionTurnedOff':
      return 'suction';
    case 'samplerOpened':
    case 'samplerClosed':
    case 'sampleHandedOver':
    case 'labResultReceived':
      return 'sampler';
    case 'panelStateCalled':
      return panelLane([entry.body.panel], sheet);
    case 'laminarGained':
    case 'laminarLost':
      return panelLane(panelsNamed(entry.body, sheet), sheet);
    case 'probesRead':
      return panelLane(panelsNamed(entry.body, sheet), sheet);
    case 'rakeRead':
      return panelLane(firstPanelOf(entry.body.wing, sheet), sheet);
    case 'fuelRead':
    case 'airDataRead':
    case 'fuelStateRead':
    case 'throttleChanged':
    case 'testPointStarted':
    case 'testPointEnded':
    case 'testPointInterrupted':
    case 'testPointTerminated':
    case 'fuelUplifted':
      return 'fuel';
    case 'flightOpened':
    case 'recorderJoined':
    case 'flightSheetChanged':
    case 'scribeChanged':
    case 'flightClosed':
    case 'logSigned':
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
    case 'timeHackTaken':
    case 'briefHeld':
    case 'calibrationChecked':
    case 'instrumentCalibrated':
    case 'preflightDone':
    case 'recorderSwitched':
    case 'photoPanelSwitched':
    case 'recorderReferenced':
    case 'photoFrameTaken':
    case 'stopCalled':
    case 'turbulenceEntered':
    case 'turbulenceExited':
    case 'pilotCommented':
    case 'engineerCalled':
    case 'noted':
    case 'sketchDrawn':
    case 'positionRead':
    case 'markMade':
    case 'jokerReached':
    case 'bingoReached':
    case 'ownEventMarked':
    case 'panelsInspected':
    case 'squawkRaised':
    case 'maintenanceDone':
    case 'unrecognised':
      return 'notes';
    default:
      return unreachable(entry);
  }
}

interface WingWords {
  readonly panels?: readonly string[];
  readonly wings?: { readonly L?: unknown; readonly R?: unknown };
}

function panelsNamed(body: WingWords, sheet: FlightSheet | null): readonly string[] {
  if (body.panels !== undefined && body.panels.length > 0) {
    return body.panels;
  }
  return firstPanelOf(body.wings?.L === undefined ? 'R' : 'L', sheet);
}

function firstPanelOf(wing: 'L' | 'R', sheet: FlightSheet | null): readonly string[] {
  const first = [...(sheet?.panels ?? [])]
    .filter((panel) => panel.wing === wing)
    .sort((a, b) => a.number - b.number)[0];
  return first === undefined ? [] : [first.id];
}

function panelLane(named: readonly string[], sheet: FlightSheet | null): LaneId {
  const known = named.find((id) => sheet?.panels.some((panel) => panel.id === id));
  return known === undefined ? 'notes' : `panel:${known}`;
}
