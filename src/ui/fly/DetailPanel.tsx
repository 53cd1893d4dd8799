import type { KnownEntry } from '../../record/entry.ts';
import type { StandingEntry } from '../../record/flightState.ts';
import { hms } from '../kit/time.ts';
import type { Touch } from '../kit/touchBoard.ts';
import { actOf } from './acts.ts';
import { ChipPanel, type Chip } from './ChipPanel.tsx';
import { groupName, groupsOf, groupWords, type Group } from './detailGroups.ts';
import { entryLabel } from './entryLabel.ts';
import type { Choice } from './field.ts';
import { useFly, type Fly } from './flyContext.ts';
import type { Panel } from './flyState.ts';
import { fieldsOf } from './details.ts';
import { openFieldPad } from './openFieldPad.ts';
import { valueAt } from './amend.ts';
import { writeInstead } from './writeInstead.ts';

type Detail = Extract<Panel, { kind: 'detail' }>;

/** After any event: what may be added to it. Nothing here is needed for the event to stand. */
export function DetailPanel({ panel }: { readonly panel: Detail }) {
  const fly = useFly();
  const standing = fly.view.byId(panel.target);
  const entry = standing?.effective;
  if (standing === undefined || entry === undefined || entry.kind === 'unrecognised') {
    return null;
  }
  const groups = groupsOf(fieldsOf(entry, fly.sceneAt(standing.at)));
  const place = panel.field % Math.max(1, groups.length);
  const group = groups[place];
  const next = groups[(place + 1) % Math.max(1, groups.length)];
  const go = (field: number, page = 0): void =>
    fly.move({ do: 'panel', panel: { ...panel, field, page } });
  const done: Chip = {
    act: 'panel-done',
    label: 'Done',
    onTouch: () => fly.move({ do: 'panel', panel: null }),
  };
  const fixed =
    next === undefined || next === group
      ? [done]
      : [
          { act: 'panel-next', label: `${groupName(next)} next`, onTouch: () => go(place + 1) },
          done,
        ];
  return (
    <ChipPanel
      title={entryLabel(standing, fly.sheet)}
      sub={`${hms(standing.at)} ${group === undefined ? '' : groupWords(group)}`}
      chips={group === undefined ? [] : chipsOf(fly, standing, entry, group, () => go(place + 1))}
      fixed={fixed}
      page={panel.page}
      onMore={() => go(place, panel.page + 1)}
    />
  );
}

function chipsOf(
  fly: Fly,
  standing: StandingEntry,
  entry: KnownEntry,
  group: Group,
  onDone: () => void,
): readonly Chip[] {
  const target = entry.id;
  if (group.kind === 'pads') {
    return group.fields.map((field) => ({
      act: `field-${field.id}`,
      label: field.label,
      onTouch: (touch) => openFieldPad(fly, standing, field, touch.stamp),
    }));
  }
  const { field } = group;
  if (field.form === 'instead') {
    return field.acts.map(({ label, act }) => ({
      act: `instead-${act}`,
      label,
      onTouch: (touch: Touch) => {
        const other = actOf(act);
        if (other !== null) {
          void writeInstead(fly, standing, other, touch);
        }
      },
    }));
  }
  const chips = field.choices.map((choice, index): Chip => ({
    act: `chip-${field.id}-${index}`,
    label: choice.label,
    set: isSet(standing, choice),
    onTouch: ({ stamp }) => {
      void fly.amend(target, choice.changes, stamp).then(onDone);
    },
  }));
  const { textTo } = field;
  return textTo === undefined
    ? chips
    : [
        ...chips,
        {
          act: `type-${field.id}`,
          label: 'Type',
          onTouch: () =>
            fly.move({
              do: 'open',
              pad: { kind: 'text', target, path: textTo, label: field.label },
            }),
        },
      ];
}

function isSet(standing: StandingEntry, choice: Choice): boolean {
  return choice.changes.every(
    (each) => JSON.stringify(valueAt(standing, each.field)) === JSON.stringify(each.value),
  );
}
