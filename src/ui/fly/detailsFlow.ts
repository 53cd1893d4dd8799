import type { EntryOf } from '../../record/entry.ts';
import { items } from '../../record/trail.ts';
import { nextSample, sampleName, type Scene } from './act.ts';
import { choose, words, type Field } from './field.ts';
import { decimal } from './numberFields.ts';
import { PHRASES } from './phrases.ts';

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
