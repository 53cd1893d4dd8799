import { epochMs } from '../../record/brand.ts';
import type { Body } from '../../record/entry.ts';
import {
  masterClock,
  nextEncounter,
  nextRun,
  nextSample,
  openInterval,
  openSample,
  pointAtHand,
  probesOf,
  type Act,
  type Scene,
} from './act.ts';

const MINUTE_MS = 60_000;

const act = (id: string, label: string, verb: string, write: Act['write']): Act => ({
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

/** An engineer's touch is about the own wing, even when nothing more is said of it. */
const ownWing = ({ wing, sheet }: Scene): Pick<Body<'laminarGained'>, 'wings'> =>
  wing === null ? {} : { wings: { [wing]: { of: probesOf(sheet, wing).length } } };

/**
 * Every event that Fly can write with one touch. Each beginning and each end is an act of its own, so that a late end,
 * or an end without a beginning, can be written as it was. The fields come after, in the detail panel.
 */
const BUILT_IN: readonly Act[] = [
  act('engine-start', 'Engine', 'Started', (_scene, mark) => ({
    kind: 'engineStarted',
    body: mark,
  })),
  act('engine-stop', 'Eng off', 'Shut', (_scene, mark) => ({ kind: 'engineShutDown', body: mark })),
  act('blocks-off', 'Blocks', 'Off', (_scene, mark) => ({ kind: 'blocksOff', body: mark })),
  act('blocks-on', 'Blocks', 'On', (_scene, mark) => ({ kind: 'blocksOn', body: mark })),
  act('roll', 'Roll', 'Began', (_scene, mark) => ({ kind: 'takeOffRolled', body: mark })),
  act('liftoff', 'Liftoff', 'Now', (_scene, mark) => ({ kind: 'liftedOff', body: mark })),
  act('gear-up', 'Gear', 'Up', (_scene, mark) => ({
    kind: 'gearMoved',
    body: { ...mark, to: 'up' },
  })),
  act('gear-down', 'Gear', 'Down', (_scene, mark) => ({
    kind: 'gearMoved',
    body: { ...mark, to: 'down' },
  })),
  act('covers-left', 'Cover L', 'Release', (_scene, mark) => ({
    kind: 'coversReleased',
    body: { ...mark, wing: 'L' },
  })),
  act('covers-right', 'Cover R', 'Release', (_scene, mark) => ({
    kind: 'coversReleased',
    body: { ...mark, wing: 'R' },
  })),
  act('level', 'Level', 'Off', (_scene, mark) => ({ kind: 'levelledOff', body: mark })),
  act('descend', 'TOD', 'Begun', (_scene, mark) => ({ kind: 'descentBegun', body: mark })),
  act('touchdown', 'Touch', 'Down', (_scene, mark) => ({ kind: 'touchedDown', body: mark })),
  act('cond-on', 'Cond', 'Reached', (_scene, mark) => ({ kind: 'conditionReached', body: mark })),
  act('cond-off', 'Cond', 'Lost', (_scene, mark) => ({ kind: 'conditionLost', body: mark })),
  act('leg', 'Leg', 'Start', (_scene, mark) => ({ kind: 'legStarted', body: mark })),
  act('turn-start', 'Turn', 'Start', (_scene, mark) => ({ kind: 'turnStarted', body: mark })),
  act('turn-end', 'Turn', 'End', (_scene, mark) => ({ kind: 'turnEnded', body: mark })),
  act('unit-on', 'Unit', 'Start', (_scene, mark) => ({
    kind: 'suctionUnitSwitched',
    body: { ...mark, on: true },
  })),
  act('unit-off', 'Unit', 'Stop', (_scene, mark) => ({
    kind: 'suctionUnitSwitched',
    body: { ...mark, on: false },
  })),
  act('suction-on', 'Suction', 'On', (_scene, mark) => ({
    kind: 'suctionTurnedOn',
    body: { ...mark, wing: 'both' },
  })),
  act('suction-on-left', 'Suct L', 'On', (_scene, mark) => ({
    kind: 'suctionTurnedOn',
    body: { ...mark, wing: 'L' },
  })),
  act('suction-on-right', 'Suct R', 'On', (_scene, mark) => ({
    kind: 'suctionTurnedOn',
    body: { ...mark, wing: 'R' },
  })),
  act('suction-change', 'Suction', 'Change', (scene, mark) => ({
    kind: 'suctionChanged',
    body: { ...mark, wing: scene.wing ?? 'both' },
  })),
  act('suction-off', 'Suction', 'Off', (_scene, mark) => ({
    kind: 'suctionTurnedOff',
    body: { ...mark, wing: 'both' },
  })),
  act('suction-off-left', 'Suct L', 'Off', (_scene, mark) => ({
    kind: 'suctionTurnedOff',
    body: { ...mark, wing: 'L' },
  })),
  act('suction-off-right', 'Suct R', 'Off', (_scene, mark) => ({
    kind: 'suctionTurnedOff',
    body: { ...mark, wing: 'R' },
  })),
  act('power', 'Power', 'Changed', (_scene, mark) => ({ kind: 'throttleChanged', body: mark })),
  act('point-start', 'Point', 'Start', (scene, mark) => ({
    kind: 'testPointStarted',
    body: { ...mark, ...nextRun(scene, scene.nextPoint ?? 'TP') },
  })),
  act('point-end', 'Point', 'End', (scene, mark) => ({
    kind: 'testPointEnded',
    body: { ...mark, ...pointAtHand(scene) },
  })),
  act('point-interrupt', 'Point', 'Spoiled', (scene, mark) => ({
    kind: 'testPointInterrupted',
    body: { ...mark, ...pointAtHand(scene) },
  })),
  act('point-terminate', 'Stop', 'Point', (scene, mark) => ({
    kind: 'testPointTerminated',
    body: { ...mark, ...pointAtHand(scene) },
  })),
  act('stop-terminate', 'Stop', 'Called', (_scene, mark) => ({
    kind: 'stopCalled',
    body: { ...mark, call: 'terminate' },
  })),
  act('stop-knock-it-off', 'Knock', 'It off', (_scene, mark) => ({
    kind: 'stopCalled',
    body: { ...mark, call: 'knockItOff' },
  })),
  act('stop-abort', 'Abort', 'Called', (_scene, mark) => ({
    kind: 'stopCalled',
    body: { ...mark, call: 'abort' },
  })),
  act('gain', 'Gain', 'Laminar', (scene, mark) => ({
    kind: 'laminarGained',
    body: { ...mark, ...ownWing(scene) },
  })),
  act('loss', 'Loss', 'Laminar', (scene, mark) => ({
    kind: 'laminarLost',
    body: { ...mark, ...ownWing(scene) },
  })),
  act('probes', 'Probes', 'Read', (scene, mark) => ({
    kind: 'probesRead',
    body: { ...mark, ...ownWing(scene) },
  })),
  act('cloud-ahead', 'Cloud', 'Ahead', (_scene, mark) => ({ kind: 'moistureSighted', body: mark })),
  act('cloud-in', 'Cloud', 'Enter', (scene, mark) => ({
    kind: 'moistureEntered',
    body: { ...mark, encounter: nextEncounter(scene.state) },
  })),
  act('cloud-out', 'Cloud', 'Exit', (scene, mark) => ({
    kind: 'moistureExited',
    body: { ...mark, ...encounterBody(scene) },
  })),
  act('sampler-open', 'Sample', 'Open', (scene, mark) => ({
    kind: 'samplerOpened',
    body: { ...mark, sample: nextSample(scene.state) },
  })),
  act('sampler-close', 'Sample', 'Close', (scene, mark) => ({
    kind: 'samplerClosed',
    body: { ...mark, ...sampleBody(scene) },
  })),
  act('rough-in', 'Rough', 'Start', (_scene, mark) => ({ kind: 'turbulenceEntered', body: mark })),
  act('rough-out', 'Rough', 'End', (_scene, mark) => ({ kind: 'turbulenceExited', body: mark })),
  act('rec-on', 'Rec', 'On', (_scene, mark) => ({
    kind: 'recorderSwitched',
    body: { ...mark, on: true },
  })),
  act('rec-off', 'Rec', 'Off', (_scene, mark) => ({
    kind: 'recorderSwitched',
    body: { ...mark, on: false },
  })),
  act('photo-on', 'Photo', 'On', (_scene, mark) => ({
    kind: 'photoPanelSwitched',
    body: { ...mark, on: true },
  })),
  act('photo-off', 'Photo', 'Off', (_scene, mark) => ({
    kind: 'photoPanelSwitched',
    body: { ...mark, on: false },
  })),
  act('frame', 'Frame', 'Now', (_scene, mark) => ({ kind: 'photoFrameTaken', body: mark })),
  act('mark', 'Mark', 'Now', (_scene, mark) => ({ kind: 'markMade', body: mark })),
  act('note', 'Note', 'Write', (_scene, mark) => ({ kind: 'noted', body: { ...mark, words: '' } })),
  act('pilot', 'Pilot', 'Said', (_scene, mark) => ({
    kind: 'pilotCommented',
    body: { ...mark, words: '' },
  })),
  act('engineer', 'Cabin', 'Said', (_scene, mark) => ({
    kind: 'engineerCalled',
    body: { ...mark, words: '' },
  })),
  act('joker', 'Joker', 'Reached', (_scene, mark) => ({ kind: 'jokerReached', body: mark })),
  act('bingo', 'Bingo', 'Reached', (_scene, mark) => ({ kind: 'bingoReached', body: mark })),
  act('hack', 'Hack', 'Now', (scene, mark) => ({
    kind: 'timeHackTaken',
    body: {
      ...mark,
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
