import { QUIET_REMINDER } from '../../analysis/reminderLog.ts';
import { ROLES } from '../../record/roles.ts';
import { nextOf, sizeWords, TEXT_SIZES, THEMES, THEME_WORDS } from '../kit/settings.ts';
import { ChipPanel, type Chip } from './ChipPanel.tsx';
import { EndPanel } from './EndPanel.tsx';
import { useFly, type Fly } from './flyContext.ts';
import type { Panel } from './flyState.ts';

type Desk = Extract<Panel, { kind: 'desk' }>;

/** What is about this tablet and not about the flight, and the ways off Fly. */
export function DeskPanel({ panel }: { readonly panel: Desk }) {
  const fly = useFly();
  const go = (page: Desk['page']): void =>
    fly.move({ do: 'panel', panel: { kind: 'desk', page, chips: 0 } });
  if (panel.page === 'complete' || panel.page === 'aborted') {
    return <EndPanel how={panel.page} onBack={() => go('first')} />;
  }
  const done: Chip = {
    act: 'panel-done',
    label: 'Done',
    onTouch: () => fly.move({ do: 'panel', panel: null }),
  };
  const back: Chip = { act: 'desk-back', label: 'Back', onTouch: () => go('first') };
  const heads = {
    first: ['This tablet', deskWords(fly)],
    scribe: [`Pen of this tablet: ${penWords(fly)}`, 'Who takes the pen?'],
  } as const;
  const chips = { first: firstChips(fly, go), scribe: scribeChips(fly) };
  return (
    <ChipPanel
      title={heads[panel.page][0]}
      sub={heads[panel.page][1]}
      chips={chips[panel.page]}
      fixed={panel.page === 'first' ? [done] : [back, done]}
      page={panel.chips}
      onMore={() => fly.move({ do: 'panel', panel: { ...panel, chips: panel.chips + 1 } })}
    />
  );
}

/** Larger text grows on Fly only as far as every key keeps its size and gap: where it stops is said. */
function deskWords({ settings, layout }: Fly): string {
  return settings.textSize > layout.textSize
    ? `Text is ${sizeWords(layout.textSize)} on Fly, all that its keys can hold.`
    : 'Nothing here enters the record but scribe, quiet and position.';
}

function firstChips(fly: Fly, go: (page: Desk['page']) => void): readonly Chip[] {
  const { settings, setSettings, leave } = fly;
  return [
    { act: 'desk-scribe', label: 'Change scribe', onTouch: () => go('scribe') },
    { act: 'desk-end', label: 'End flight', onTouch: () => go('complete') },
    { act: 'desk-debrief', label: 'Debrief', onTouch: leave.toDebrief },
    { act: 'desk-brief', label: 'Brief', onTouch: leave.toBrief },
    {
      act: 'desk-theme',
      label: `${THEME_WORDS[settings.theme]} theme`,
      onTouch: () => setSettings({ theme: nextOf(THEMES, settings.theme) }),
    },
    {
      act: 'desk-quiet',
      label: 'Quiet 15 min',
      onTouch: ({ stamp }) =>
        void fly.append({
          kind: 'reminderAnswered',
          body: { reminder: QUIET_REMINDER, answer: 'quiet' },
          stamp,
        }),
    },
    {
      act: 'desk-hand',
      label: settings.hand === 'right' ? 'Right hand' : 'Left hand',
      onTouch: () => setSettings({ hand: settings.hand === 'right' ? 'left' : 'right' }),
    },
    {
      act: 'desk-text',
      label: `Text ${sizeWords(settings.textSize)}`,
      onTouch: () => setSettings({ textSize: nextOf(TEXT_SIZES, settings.textSize) }),
    },
    {
      act: 'desk-sound',
      label: settings.sound ? 'Sound on' : 'Sound off',
      onTouch: () => setSettings({ sound: !settings.sound }),
    },
    {
      act: 'desk-pulse',
      label: settings.pulse ? 'Pulse on' : 'Pulse off',
      onTouch: () => setSettings({ pulse: !settings.pulse }),
    },
    ...(fly.sheet?.positionAllowed === true
      ? [
          {
            act: 'desk-position',
            label: settings.position ? 'Position on' : 'Position off',
            onTouch: () => setSettings({ position: !settings.position }),
          },
        ]
      : []),
    { act: 'desk-manual', label: 'Manual', onTouch: leave.toManual },
    { act: 'desk-abort', label: 'Abort flight', onTouch: () => go('aborted') },
  ];
}

function scribeChips(fly: Fly): readonly Chip[] {
  const people = fly.sheet?.people ?? [];
  const { author: from, role: now } = fly.journal.author();
  const take =
    (to: string, role: string): Chip['onTouch'] =>
    ({ stamp }) => {
      // The one who takes the pen signs for taking it.
      fly.journal.setAuthor({ author: to, role });
      void fly.append({ kind: 'scribeChanged', body: { from, to, role }, stamp });
      fly.move({ do: 'panel', panel: null });
    };
  return [
    ...people.map((person) => ({
      act: `scribe-${person.id}`,
      label:
        person.name === undefined
          ? `${person.id} ${person.role}`
          : `${person.name}, ${person.role}`,
      set: (person.name ?? person.id) === from && person.role === now,
      onTouch: take(person.name ?? person.id, person.role),
    })),
    // The same hand in another role: it chooses the tiles.
    ...ROLES.map((role, index) => ({
      act: `role-${index}`,
      label: `as ${role}`,
      set: role === now,
      onTouch: take(from, role),
    })),
  ];
}

function penWords({ journal }: Fly): string {
  const { author, role } = journal.author();
  return role === '' ? author : `${author}, ${role}`;
}
