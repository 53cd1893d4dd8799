import type { Field } from './field.ts';

/** One page of the detail panel: a question with its answers, or several fields that open a pad each. */
export type Group =
  | { readonly kind: 'question'; readonly field: Extract<Field, { form: 'choose' | 'instead' }> }
  | {
      readonly kind: 'pads';
      readonly fields: readonly Exclude<Field, { form: 'choose' | 'instead' }>[];
    };

/** Fields in their order; neighbours that open a pad stand together. */
export function groupsOf(fields: readonly Field[]): readonly Group[] {
  const groups: Group[] = [];
  for (const field of fields) {
    const last = groups.at(-1);
    if (field.form === 'choose' || field.form === 'instead') {
      groups.push({ kind: 'question', field });
    } else if (last?.kind === 'pads') {
      groups[groups.length - 1] = { kind: 'pads', fields: [...last.fields, field] };
    } else {
      groups.push({ kind: 'pads', fields: [field] });
    }
  }
  return groups;
}

export function groupWords(group: Group): string {
  return group.kind === 'question'
    ? group.field.label
    : group.fields.map((field) => field.label).join(', ');
}

/** Short name of a group, for the key that goes to it. */
export function groupName(group: Group): string {
  return group.kind === 'question' ? group.field.label : (group.fields[0]?.label ?? 'Numbers');
}
