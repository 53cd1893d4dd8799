import type { KnownEntry } from '../../record/entry.ts';
import type { Scene } from './act.ts';
import { afterFields, commonFields, DRAW } from './detailsCommon.ts';
import { flowFields, samplerFields, weatherFields } from './detailsFlow.ts';
import { coversFields, pointFields, suctionFields } from './detailsTest.ts';
import { choose, change, words, type Field } from './field.ts';
import {
  airInstruments,
  counterInstruments,
  remainingInstruments,
  tankInstruments,
} from './instruments.ts';
import {
  count,
  countTo,
  heightField,
  legs,
  massField,
  readings,
  runwayField,
} from './numberFields.ts';
import { PHRASES } from './phrases.ts';

/** What the detail panel offers for an entry as it stands: its own fields first, then who, doubt, time and note. */
export function fieldsOf(entry: KnownEntry, scene: Scene): readonly Field[] {
  return [...ownFields(entry, scene), ...readBefore(entry, scene), ...commonFields(entry, scene)];
}

/** Readings that the entry already has and that its own fields do not offer: so that a wrong digit can be put right. */
function readBefore(entry: KnownEntry, scene: Scene): readonly Field[] {
  const offered = new Set(ownFields(entry, scene).map((field) => field.id));
  const instruments = (entry.body.readings ?? []).flatMap(
    (reading) =>
      scene.sheet?.instruments.find((instrument) => instrument.id === reading.instrument) ?? [],
  );
  return readings(instruments, scene).filter((field) => !offered.has(field.id));
}

function ownFields(entry: KnownEntry, scene: Scene): readonly Field[] {
  const { sheet } = scene;
  switch (entry.kind) {
    case 'engineStarted':
      return [
        countTo('engine', 'Engine', 'engine', sheet?.aircraft.engineCount ?? 0),
        ...readings(counterInstruments(sheet), scene),
      ];
    case 'engineShutDown':
      return [enginesField(scene), ...readings(tankInstruments(sheet), scene)];
    case 'blocksOff':
      return [
        massField('weight', 'Weight', 'grossWeight', scene, sheet?.weights.ramp?.value ?? null),
      ];
    case 'takeOffRolled':
    case 'touchedDown':
      return [runwayField];
    case 'levelledOff':
      return [
        heightField(scene),
        massField('weight', 'Weight', 'grossWeight', scene, sheet?.weights.ramp?.value ?? null),
      ];
    case 'conditionReached':
      return [legs('leg', 'Leg', 'leg', sheet), ...readings(airInstruments(sheet), scene)];
    case 'legStarted':
      return [legs('leg', 'Leg', 'leg', sheet)];
    case 'turnStarted':
      return [
        legs('fromLeg', 'From leg', 'fromLeg', sheet),
        legs('toLeg', 'To leg', 'toLeg', sheet),
        count('lasted', 'Lasted', 's', 'lastedS', 3),
      ];
    case 'coversReleased':
      return coversFields(entry, scene);
    case 'suctionUnitSwitched':
    case 'suctionTurnedOn':
    case 'suctionChanged':
    case 'suctionTurnedOff':
      return suctionFields(entry, scene);
    case 'testPointStarted':
    case 'testPointEnded':
    case 'testPointInterrupted':
    case 'testPointTerminated':
    case 'stopCalled':
      return pointFields(entry, scene);
    case 'throttleChanged':
      return [words('setting', 'Setting', 'setting', PHRASES.throttle, 'setting')];
    case 'laminarGained':
    case 'laminarLost':
    case 'probesRead':
    case 'rakeRead':
    case 'panelStateCalled':
      return flowFields(entry, scene);
    case 'moistureSighted':
    case 'moistureEntered':
    case 'moistureExited':
    case 'turbulenceEntered':
      return weatherFields(entry, scene);
    case 'samplerOpened':
    case 'samplerClosed':
      return samplerFields(entry, scene);
    case 'recorderSwitched':
      return [
        count('channels', 'Channels', '', 'channels', 3),
        words('text', 'Medium', 'medium', [], 'medium'),
      ];
    case 'photoPanelSwitched':
      return [
        count('frame', 'Frame', '', 'frame', 4),
        count('every', 'Every', 's', 'everyS', 3),
        words('text', 'Medium', 'medium', [], 'medium'),
      ];
    case 'photoFrameTaken':
      return [count('frame', 'Frame', '', 'frame', 4)];
    case 'noted':
      return [words('words', 'Note', 'words', PHRASES.note, 'words'), DRAW];
    case 'sketchDrawn':
      return [words('caption', 'Caption', 'caption', PHRASES.note, 'caption')];
    case 'pilotCommented':
      return [words('words', 'Pilot said', 'words', PHRASES.pilot, 'words')];
    case 'engineerCalled':
      return [words('words', 'Cabin said', 'words', PHRASES.engineer, 'words')];
    case 'markMade':
      return [words('note', 'Meaning', 'note', PHRASES.note, 'note')];
    case 'jokerReached':
    case 'bingoReached':
      return readings([...remainingInstruments(sheet), ...counterInstruments(sheet)], scene);
    case 'timeHackTaken':
      return hackFields(scene);
    case 'entryWithdrawn':
    case 'entryAmended':
      return afterFields(entry);
    default:
      // Nothing to add, or a form of its own on Brief or Debrief.
      return [];
  }
}

function enginesField(scene: Scene): Field {
  const engines = Array.from(
    { length: scene.sheet?.aircraft.engineCount ?? 0 },
    (_, index) => index + 1,
  );
  return {
    form: 'choose',
    id: 'engines',
    label: 'Engines',
    choices: [
      { label: 'All', changes: [change('engines', engines)] },
      ...engines.map((engine) => ({ label: `${engine}`, changes: [change('engines', [engine])] })),
    ],
  };
}

function hackFields(scene: Scene): readonly Field[] {
  const clocks = (scene.sheet?.clocks ?? []).filter(
    (clock) => clock.id !== 'tablet' && clock.id !== 'master',
  );
  return [
    { form: 'clock', id: 'master', label: 'Master showed', clock: null },
    ...clocks.map((clock): Field => ({
      form: 'clock',
      id: `clock-${clock.id}`,
      label: `${clock.owner} showed`,
      clock: clock.id,
    })),
    choose('hackNo', 'Hack', 'hack', [
      ['1', 1],
      ['2', 2],
      ['3', 3],
      ['4', 4],
    ]),
  ];
}
