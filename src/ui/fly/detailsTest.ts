import type { EntryOf } from '../../record/entry.ts';
import { items } from '../../record/trail.ts';
import { nextRun, nextSample, sampleName, type Scene } from './act.ts';
import { change, choose, words, type Choice, type Field } from './field.ts';
import { counterInstruments, suctionFlowInstrument } from './instruments.ts';
import { countTo, decimal, heightField, readings } from './numberFields.ts';
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
      return [WINGS_CHOICE, settingField(scene), ...meters, regionField];
    case 'suctionChanged':
      return [settingField(scene), INSTEAD_OF_CHANGE, WINGS_CHOICE, ...meters, regionField];
    case 'suctionTurnedOff':
      return [WINGS_CHOICE, ...meters];
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

const regionField = words(
  'region',
  'Region',
  'region',
  ['leading edge', 'inboard', 'outboard', 'upper', 'lower'],
  'region',
);

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

export function flowFields(
  entry: EntryOf<'laminarGained' | 'laminarLost' | 'probesRead' | 'rakeRead' | 'panelStateCalled'>,
  _scene: Scene,
): readonly Field[] {
  const probes: Field = { form: 'probes', id: 'probes', label: 'Probes' };
  switch (entry.kind) {
    case 'laminarGained':
    case 'laminarLost':
      return [
        probes,
        choose('byCommand', 'By command', 'byCommand', [
          ['By command', true],
          ['By itself', false],
        ]),
        {
          form: 'instead',
          id: 'instead',
          label: 'Wrong way?',
          acts: [
            entry.kind === 'laminarGained'
              ? { label: 'It was loss', act: 'loss' }
              : { label: 'It was gain', act: 'gain' },
          ],
        },
      ];
    case 'probesRead':
      return [probes, { form: 'pressures', id: 'pressures', label: 'Pressures' }];
    case 'rakeRead':
      return [
        { form: 'tubes', id: 'tubes', label: 'Tubes' },
        choose('laminar', 'Profile', 'laminar', [
          ['Laminar', true],
          ['Turbulent', false],
        ]),
      ];
    case 'panelStateCalled':
      return [];
  }
}

export function weatherFields(
  entry: EntryOf<'moistureSighted' | 'moistureEntered' | 'moistureExited' | 'turbulenceEntered'>,
  scene: Scene,
): readonly Field[] {
  const look = words('look', 'Look', 'look', PHRASES.cloudLook, 'look');
  switch (entry.kind) {
    case 'moistureSighted':
      return [look];
    case 'moistureEntered':
      return [
        look,
        choose('cover', 'Cover', 'cover', [
          ['Partial', 'partial'],
          ['Full', 'full'],
        ]),
        choose('ice', 'Ice', 'ice', [
          ['No ice', false],
          ['Ice', true],
        ]),
        encounterField(scene),
        {
          form: 'instead',
          id: 'instead',
          label: 'Was it?',
          acts: [
            { label: 'Seen ahead', act: 'cloud-ahead' },
            { label: 'Exit', act: 'cloud-out' },
          ],
        },
      ];
    case 'moistureExited':
      return [
        encounterField(scene),
        {
          form: 'instead',
          id: 'instead',
          label: 'Was it?',
          acts: [
            { label: 'Entry', act: 'cloud-in' },
            { label: 'Sampler open', act: 'sampler-open' },
          ],
        },
      ];
    case 'turbulenceEntered':
      return [
        words('strength', 'Strength', 'strength', PHRASES.rough, 'strength'),
        decimal('machFrom', 'Mach from', 'machFrom', 1, 3),
        decimal('machTo', 'Mach to', 'machTo', 1, 3),
      ];
  }
}

function encounterField(scene: Scene): Field {
  const most =
    [...items(scene.state.intervals)].filter((interval) => interval.kind === 'moisture').length + 2;
  return choose(
    'encounter',
    'Encounter',
    'encounter',
    Array.from({ length: most }, (_, index) => [`M${index + 1}`, `M${index + 1}`] as const),
  );
}

export function samplerFields(
  entry: EntryOf<'samplerOpened' | 'samplerClosed'>,
  scene: Scene,
): readonly Field[] {
  const proposed = nextSample(scene.state);
  const used = [...items(scene.state.samples)].map((sample) => sample.sample);
  const names = [
    ...new Set([
      ...used.toReversed(),
      proposed,
      ...Array.from({ length: 12 }, (_, index) => sampleName(index + 1)),
    ]),
  ];
  const sample = words('sample', 'Sample', 'sample', names.slice(0, 12), 'sample');
  return entry.kind === 'samplerOpened'
    ? [
        words('purpose', 'Purpose', 'purpose', PHRASES.samplerPurpose, 'purpose'),
        words('sampler', 'Sampler', 'sampler', PHRASES.sampler, 'sampler'),
        sample,
      ]
    : [sample];
}
