import { epochMs } from '../../record/brand.ts';
import {
  masterClock,
  nextEncounter,
  nextRun,
  nextSample,
  openInterval,
  openSample,
  pointAtHand,
  type Act,
  type Scene,
  type Written,
} from './act.ts';

const MINUTE_MS = 60_000;

const act = (id: string, label: string, verb: string, write: (scene: Scene) => Written): Act => ({
  id,
  label,
  verb,
  write,
});

const encounterBody = (scene: Scene): { encounter?: string } => {
  const open = openInterval(scene.state, 'moisture');
  return open === null || open.label === '' ? {} : { encounter: open.label };
};

const sampleBody = (scene: Scene): { sample?: string } => {
  const sample = openSample(scene.state);
  return sample === null ? {} : { sample };
};

/**
 * Every event that Fly can write with one touch. Each beginning and each end is an act of its own, so that a late end,
 * or an end without a beginning, can be written as it was. The fields come after, in the detail panel.
 */
const BUILT_IN: readonly Act[] = [
  act('engine-start', 'Engine', 'Started', () => ({ kind: 'engineStarted', body: {} })),
  act('engine-stop', 'Eng off', 'Shut', () => ({ kind: 'engineShutDown', body: {} })),
  act('blocks-off', 'Blocks', 'Off', () => ({ kind: 'blocksOff', body: {} })),
  act('blocks-on', 'Blocks', 'On', () => ({ kind: 'blocksOn', body: {} })),
  act('roll', 'Roll', 'Began', () => ({ kind: 'takeOffRolled', body: {} })),
  act('liftoff', 'Liftoff', 'Now', () => ({ kind: 'liftedOff', body: {} })),
  act('gear-up', 'Gear', 'Up', () => ({ kind: 'gearMoved', body: { to: 'up' } })),
  act('gear-down', 'Gear', 'Down', () => ({ kind: 'gearMoved', body: { to: 'down' } })),
  act('covers-left', 'Cover L', 'Release', () => ({ kind: 'coversReleased', body: { wing: 'L' } })),
  act('covers-right', 'Cover R', 'Release', () => ({
    kind: 'coversReleased',
    body: { wing: 'R' },
  })),
  act('level', 'Level', 'Off', () => ({ kind: 'levelledOff', body: {} })),
  act('descend', 'Descend', 'Begun', () => ({ kind: 'descentBegun', body: {} })),
  act('touchdown', 'Touch', 'Down', () => ({ kind: 'touchedDown', body: {} })),
  act('cond-on', 'Cond', 'Reached', () => ({ kind: 'conditionReached', body: {} })),
  act('cond-off', 'Cond', 'Lost', () => ({ kind: 'conditionLost', body: {} })),
  act('leg', 'Leg', 'Start', () => ({ kind: 'legStarted', body: {} })),
  act('turn-start', 'Turn', 'Start', () => ({ kind: 'turnStarted', body: {} })),
  act('turn-end', 'Turn', 'End', () => ({ kind: 'turnEnded', body: {} })),
  act('unit-on', 'Unit', 'Start', () => ({ kind: 'suctionUnitSwitched', body: { on: true } })),
  act('unit-off', 'Unit', 'Stop', () => ({ kind: 'suctionUnitSwitched', body: { on: false } })),
  act('suction-on', 'Suction', 'On', () => ({ kind: 'suctionTurnedOn', body: { wing: 'both' } })),
  act('suction-on-left', 'Suct L', 'On', () => ({ kind: 'suctionTurnedOn', body: { wing: 'L' } })),
  act('suction-on-right', 'Suct R', 'On', () => ({ kind: 'suctionTurnedOn', body: { wing: 'R' } })),
  act('suction-change', 'Suction', 'Change', () => ({
    kind: 'suctionChanged',
    body: { wing: 'both' },
  })),
  act('suction-off', 'Suction', 'Off', () => ({
    kind: 'suctionTurnedOff',
    body: { wing: 'both' },
  })),
  act('suction-off-left', 'Suct L', 'Off', () => ({
    kind: 'suctionTurnedOff',
    body: { wing: 'L' },
  })),
  act('suction-off-right', 'Suct R', 'Off', () => ({
    kind: 'suctionTurnedOff',
    body: { wing: 'R' },
  })),
  act('power', 'Power', 'Changed', () => ({ kind: 'throttleChanged', body: {} })),
  act('point-start', 'Point', 'Start', (scene) => ({
    kind: 'testPointStarted',
    body: nextRun(scene, scene.nextPoint ?? 'TP'),
  })),
  act('point-end', 'Point', 'End', (scene) => ({
    kind: 'testPointEnded',
    body: pointAtHand(scene),
  })),
  act('point-interrupt', 'Point', 'Spoiled', (scene) => ({
    kind: 'testPointInterrupted',
    body: pointAtHand(scene),
  })),
  act('point-terminate', 'Stop', 'Point', (scene) => ({
    kind: 'testPointTerminated',
    body: pointAtHand(scene),
  })),
  act('stop-terminate', 'Stop', 'Called', () => ({
    kind: 'stopCalled',
    body: { call: 'terminate' },
  })),
  act('stop-knock-it-off', 'Knock', 'It off', () => ({
    kind: 'stopCalled',
    body: { call: 'knockItOff' },
  })),
  act('stop-abort', 'Abort', 'Called', () => ({ kind: 'stopCalled', body: { call: 'abort' } })),
  act('gain', 'Gain', 'Laminar', () => ({ kind: 'laminarGained', body: {} })),
  act('loss', 'Loss', 'Laminar', () => ({ kind: 'laminarLost', body: {} })),
  act('probes', 'Probes', 'Read', () => ({ kind: 'probesRead', body: {} })),
  act('cloud-ahead', 'Cloud', 'Ahead', () => ({ kind: 'moistureSighted', body: {} })),
  act('cloud-in', 'Cloud', 'Enter', (scene) => ({
    kind: 'moistureEntered',
    body: { encounter: nextEncounter(scene.state) },
  })),
  act('cloud-out', 'Cloud', 'Exit', (scene) => ({
    kind: 'moistureExited',
    body: encounterBody(scene),
  })),
  act('sampler-open', 'Sample', 'Open', (scene) => ({
    kind: 'samplerOpened',
    body: { sample: nextSample(scene.state) },
  })),
  act('sampler-close', 'Sample', 'Close', (scene) => ({
    kind: 'samplerClosed',
    body: sampleBody(scene),
  })),
  act('rough-in', 'Rough', 'Start', () => ({ kind: 'turbulenceEntered', body: {} })),
  act('rough-out', 'Rough', 'End', () => ({ kind: 'turbulenceExited', body: {} })),
  act('rec-on', 'Rec', 'On', () => ({ kind: 'recorderSwitched', body: { on: true } })),
  act('rec-off', 'Rec', 'Off', () => ({ kind: 'recorderSwitched', body: { on: false } })),
  act('photo-on', 'Photo', 'On', () => ({ kind: 'photoPanelSwitched', body: { on: true } })),
  act('photo-off', 'Photo', 'Off', () => ({ kind: 'photoPanelSwitched', body: { on: false } })),
  act('frame', 'Frame', 'Now', () => ({ kind: 'photoFrameTaken', body: {} })),
  act('mark', 'Mark', 'Now', () => ({ kind: 'markMade', body: {} })),
  act('note', 'Note', 'Write', () => ({ kind: 'noted', body: { words: '' } })),
  act('pilot', 'Pilot', 'Said', () => ({ kind: 'pilotCommented', body: { words: '' } })),
  act('engineer', 'Cabin', 'Said', () => ({ kind: 'engineerCalled', body: { words: '' } })),
  act('joker', 'Joker', 'Reached', () => ({ kind: 'jokerReached', body: {} })),
  act('bingo', 'Bingo', 'Reached', () => ({ kind: 'bingoReached', body: {} })),
  act('hack', 'Hack', 'Now', (scene) => ({
    kind: 'timeHackTaken',
    body: {
      hack: scene.state.hacks.length + 1,
      masterClock: masterClock(scene.sheet),
      // A hack is called on the full minute; the detail panel takes another time.
      master: epochMs(Math.round(scene.at / MINUTE_MS) * MINUTE_MS),
      shown: [],
      method: 'read aloud, all clocks at once',
    },
  })),
];

const BY_ID = new Map(BUILT_IN.map((each) => [each.id, each]));

/** All acts in the order in which the pad of every event shows them. */
export const ACTS = BUILT_IN;

export function actOf(id: string): Act | null {
  return BY_ID.get(id) ?? null;
}
