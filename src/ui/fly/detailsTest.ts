import type { EntryOf } from '../../record/entry.ts';
import { items } from '../../record/trail.ts';
import { nextRun, type Scene } from './act.ts';
import { change, choose, words, type Choice, type Field } from './field.ts';
import { counterInstruments, suctionFlowInstrument } from './instruments.ts';
import { countTo, heightField, readings } from './numberFields.ts';
import { PHRASES } from './phrases.ts';

const WINGS_CHOICE = choose('wing', 'Wing', 'wing', [
  ['Both', 'both'],
  ['Left', 'L'],
  ['Right', 'R'],
]);

export function coversFields(entry: EntryOf<'coversReleased'>, scene: Scene): readonly Field[] {
  return [
    { form: 'covers', id: 'covers', label: 'Panels', wing: entry.body.wing },
    heightField(scene),
    choose('command', 'Command', 'command', [
      ['First', 1],
      ['Second', 2],
      ['Third', 3],
    ]),
  ];
}

export function suctionFields(
  entry: EntryOf<'suctionUnitSwitched' | 'suctionTurnedOn' | 'suctionChanged' | 'suctionTurnedOff'>,
  scene: Scene,
): readonly Field[] {
  const flow = suctionFlowInstrument(scene.sheet);
  const meters = readings(
    [...(flow === null ? [] : [flow]), ...counterInstruments(scene.sheet)],
    scene,
  );
  switch (entry.kind) {
    case 'suctionUnitSwitched':
      return [words('state', 'State', 'state', PHRASES.unitState, 'state'), ...meters];
    case 'suctionTurnedOn':
      return scene.wing === null
        ? [WINGS_CHOICE, settingField(scene), regionField(scene), ...meters]
        : [settingField(scene), regionField(scene), WINGS_CHOICE, ...meters];
    case 'suctionChanged':
      return scene.wing === null
        ? [settingField(scene), INSTEAD_OF_CHANGE, WINGS_CHOICE, regionField(scene), ...meters]
        : [settingField(scene), regionField(scene), INSTEAD_OF_CHANGE, WINGS_CHOICE, ...meters];
    case 'suctionTurnedOff':
      return [WINGS_CHOICE, regionField(scene), ...meters];
  }
}

const INSTEAD_OF_CHANGE: Field = {
  form: 'instead',
  id: 'instead',
  label: 'Was it off?',
  acts: [
    { label: 'Both off', act: 'suction-off' },
    { label: 'Left off', act: 'suction-off-left' },
    { label: 'Right off', act: 'suction-off-right' },
  ],
};

const USUAL_REGIONS = ['leading edge', 'inboard', 'outboard', 'upper', 'lower'];

/** The regions that this flight has named, the newest first, then the usual ones. */
function regionField(scene: Scene): Field {
  const named = [...items(scene.state.suctionChanges)].flatMap((each) => each.region ?? []);
  const regions = [...new Set([...named.toReversed(), ...USUAL_REGIONS])];
  return words('region', 'Region', 'region', regions, 'region');
}

/** Settings of the cards, then those used in this flight that no card names. */
function settingField(scene: Scene): Field {
  const onCards = (scene.sheet?.testCards ?? [])
    .filter((card) => card.suction === 'on')
    .map((card) => card.setting);
  const used = [...items(scene.state.suctionChanges)].flatMap((each) => each.setting ?? []);
  return words(
    'setting',
    'Setting',
    'setting',
    [...new Set([...onCards, ...used])].filter((each) => each !== ''),
    'setting',
  );
}

export function pointFields(
  entry: EntryOf<
    | 'testPointStarted'
    | 'testPointEnded'
    | 'testPointInterrupted'
    | 'testPointTerminated'
    | 'stopCalled'
  >,
  scene: Scene,
): readonly Field[] {
  const reason = words('reason', 'Reason', 'reason', reasons(scene), 'reason');
  switch (entry.kind) {
    case 'testPointStarted':
      return [pointChoice(scene, 'start'), countTo('run', 'Run', 'run', 6)];
    case 'testPointEnded':
      return [
        {
          form: 'instead',
          id: 'instead',
          label: 'Ended how?',
          acts: [
            { label: 'Spoiled', act: 'point-interrupt' },
            { label: 'Stopped', act: 'point-terminate' },
          ],
        },
        pointChoice(scene, 'end'),
      ];
    case 'testPointInterrupted':
    case 'testPointTerminated':
      return [reason, pointChoice(scene, 'end')];
    case 'stopCalled':
      return [
        choose('call', 'Call', 'call', [
          ['Terminate', 'terminate'],
          ['Knock it off', 'knockItOff'],
          ['Abort', 'abort'],
        ]),
        reason,
      ];
  }
}

function reasons(scene: Scene): readonly string[] {
  const encounters = [...items(scene.state.intervals)].filter(
    (interval) => interval.kind === 'moisture' && interval.label !== '',
  );
  const newest = encounters.at(-1);
  return newest === undefined
    ? PHRASES.stopReason
    : [`moisture ${newest.label}`, ...PHRASES.stopReason.slice(1)];
}

/** Another card than the proposed one; its run number comes with it. An end is of a run that was begun. */
function pointChoice(scene: Scene, says: 'start' | 'end'): Field {
  const choices = (scene.sheet?.testCards ?? [])
    .toSorted((a, b) => a.order - b.order)
    .map((card): Choice => {
      const { point, run } = nextRun(scene, card.id);
      const isOpen = [...items(scene.state.runs)].some(
        (each) => each.point === point && each.state === 'open',
      );
      const newest = Math.max(1, run - 1);
      return {
        label: `${card.id} ${card.title}`,
        changes: [change('point', point), change('run', says === 'end' || isOpen ? newest : run)],
      };
    });
  return { form: 'choose', id: 'point', label: 'Card', choices };
}
