import { bodySchemas, type KnownKind } from '../../../record/kinds.ts';
import { UNITS } from '../../../record/measure.ts';

/** How a field of an entry is keyed on the ground. */
export type FieldForm = {
  /** Dotted path into the body, as an amendment names it. */
  readonly path: string;
  readonly isRequired: boolean;
} & (
  | {
      readonly form:
        | 'number'
        | 'words'
        | 'longWords'
        | 'yesNo'
        | 'time'
        | 'list'
        | 'numbers'
        | 'measure'
        | 'findings';
    }
  | { readonly form: 'choice'; readonly choices: readonly string[] }
);

/** Wiring between entries, and fields with a form of their own; nobody keys them here. */
const NOT_KEYED = new Set([
  'target',
  'replaces',
  'changes',
  'kept',
  'heads',
  'sheet',
  'shown',
  'corrections',
  'readings',
  'unconfirmed',
  'glance',
]);
const TIMES = new Set(['at', 'master']);
const LONG = new Set(['words', 'note', 'reason', 'basisWords', 'action']);
/** What every entry may carry comes after what is its own. */
const COMMON = new Set(['at', 'doubtS', 'basis', 'basisWords', 'calledBy', 'note']);

interface SchemaNode {
  readonly type: string;
  readonly wrapped?: unknown;
  readonly entries?: unknown;
  readonly item?: unknown;
  readonly options?: unknown;
}

/** Every field that a kind can hold, read off the one schema that also checks it: own fields first. */
export function fieldFormsOf(kind: KnownKind): readonly FieldForm[] {
  const found = formsIn(bodySchemas[kind], '', true);
  const isCommon = ({ path }: FieldForm): boolean => COMMON.has(path);
  return [...found.filter((form) => !isCommon(form)), ...found.filter(isCommon)];
}

function formsIn(node: unknown, path: string, isRequired: boolean): readonly FieldForm[] {
  if (!isNode(node)) {
    return [];
  }
  switch (node.type) {
    case 'exact_optional':
    case 'optional':
      return formsIn(node.wrapped, path, false);
    case 'nullable':
      return formsIn(node.wrapped, path, isRequired);
    case 'object':
      return objectForms(node, path, isRequired);
    case 'number':
      return [{ path, isRequired, form: 'number' }];
    case 'custom':
      // Instants are checked by a function of their own; ids of other entries are too, but nobody keys those.
      return TIMES.has(path) ? [{ path, isRequired, form: 'time' }] : [];
    case 'string':
      return [{ path, isRequired, form: LONG.has(path) ? 'longWords' : 'words' }];
    case 'boolean':
      return [{ path, isRequired, form: 'yesNo' }];
    case 'picklist':
      return [{ path, isRequired, form: 'choice', choices: stringsOf(node.options) }];
    case 'array':
      return arrayForms(node, path, isRequired);
    default:
      return [];
  }
}

function objectForms(node: SchemaNode, path: string, isRequired: boolean): readonly FieldForm[] {
  const entries = typeof node.entries === 'object' && node.entries !== null ? node.entries : {};
  if (path !== '' && Object.hasOwn(entries, 'unit')) {
    return [{ path, isRequired, form: 'measure' }];
  }
  return Object.entries(entries)
    .filter(([name]) => !NOT_KEYED.has(name))
    .flatMap(([name, inner]) =>
      // Inside an object that may be absent nothing is required by itself; the whole is checked when it is written.
      path === '' ? formsIn(inner, name, isRequired) : formsIn(inner, `${path}.${name}`, false),
    );
}

function arrayForms(node: SchemaNode, path: string, isRequired: boolean): readonly FieldForm[] {
  if (path === 'findings') {
    return [{ path, isRequired, form: 'findings' }];
  }
  if (!isNode(node.item)) {
    return [];
  }
  if (node.item.type === 'string') {
    return [{ path, isRequired, form: 'list' }];
  }
  return node.item.type === 'number' ? [{ path, isRequired, form: 'numbers' }] : [];
}

function isNode(value: unknown): value is SchemaNode {
  return (
    typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string'
  );
}

function stringsOf(options: unknown): readonly string[] {
  return Array.isArray(options) ? options.filter((option) => typeof option === 'string') : [];
}

export const isUnitWord = (word: string): boolean => UNITS.some((unit) => unit === word);
