import { epochMs, type EpochMs } from '../../../record/brand.ts';
import { UNITS } from '../../../record/measure.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { numberWords, unitWords } from '../../../record/sheetMeasure.ts';
import { clockWords } from '../timeWords.ts';

const LABELS: Readonly<Record<string, string>> = {
  at: 'Time of the event, Z',
  doubtS: 'Doubt, s',
  basis: 'Basis',
  basisWords: 'Evidence',
  calledBy: 'Called by',
  note: 'Note',
  unconfirmed: 'Unconfirmed because',
  glance: 'Glance from, Z',
  point: 'Test point',
  run: 'Run',
  reason: 'Reason',
  look: 'Look',
  cover: 'Cover',
  ice: 'Ice seen',
  encounter: 'Encounter',
  laminarCount: 'laminar count',
  of: 'of',
  turbulentProbes: 'turbulent probes',
  laminarProbes: 'laminar probes',
  intermittentProbes: 'intermittent probes',
  byCommand: 'By command',
  labourH: 'Labour, h',
  meanSizeMicrometre: 'Mean size, µm',
  numberPerLitre: 'Number per litre',
  grossWeight: 'Gross weight',
  lastedS: 'Lasted, s',
  everyS: 'Interval, s',
  machFrom: 'Mach from',
  machTo: 'Mach to',
  openItems: 'Open items',
  signedBy: 'Signed by',
};

/** What a path into a body is called: "FF1, lb/h", "L turbulent probes", "Called by". */
export function fieldLabel(path: string, sheet: FlightSheet | null): string {
  if (path.startsWith('readings.')) {
    return readingLabel(path.slice('readings.'.length), sheet);
  }
  const [first = path, ...rest] = path.split('.');
  if (first === 'wings') {
    const [wing = '', part = ''] = rest;
    return `${wing} ${LABELS[part] ?? inWords(part)}`.trim();
  }
  const words = LABELS[first] ?? inWords(first);
  return rest.length === 0 ? words : `${words}, ${rest.map(inWords).join(' ')}`;
}

function readingLabel(rest: string, sheet: FlightSheet | null): string {
  const id = rest.replace(/\.(value|queried|unit|method|blank)$/, '');
  const part = rest.slice(id.length + 1);
  const instrument = sheet?.instruments.find((one) => one.id === id);
  const name = instrument === undefined ? id : capitalised(instrument.name);
  const unit = instrument === undefined ? '' : unitWords(instrument.unit);
  if (part === 'queried') {
    return `${name}, query`;
  }
  return unit === '' ? name : `${name}, ${unit}`;
}

function inWords(camel: string): string {
  const words = camel.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  return capitalised(words);
}

function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A value as a person reads it in a list of fields. */
export function valueWords(path: string, value: unknown, shown: (at: EpochMs) => EpochMs): string {
  if (value === null || value === undefined) {
    return 'none';
  }
  if (typeof value === 'number') {
    return path === 'at' || path === 'glance' || path === 'master' || path.endsWith('.shown')
      ? `${clockWords(shown(epochMs(value)))}Z`
      : numberWords(value);
  }
  if (typeof value === 'string') {
    return BLANKS[value] ?? value;
  }
  if (typeof value === 'boolean') {
    return value ? 'yes' : 'no';
  }
  if (Array.isArray(value)) {
    return value.length === 0
      ? 'none'
      : value.map((item) => valueWords(path, item, shown)).join(', ');
  }
  if (typeof value === 'object') {
    return objectWords(path, new Map(Object.entries(value)), shown);
  }
  return '';
}

function objectWords(
  path: string,
  fields: ReadonlyMap<string, unknown>,
  shown: (at: EpochMs) => EpochMs,
): string {
  const [number, unit, blank, panel, finding] = ['value', 'unit', 'blank', 'panel', 'finding'].map(
    (name) => fields.get(name),
  );
  if (typeof number === 'number') {
    const queried = fields.has('queried') ? ', queried' : '';
    return `${numberWords(number)}${typeof unit === 'string' ? unitAfter(unit) : ''}${queried}`;
  }
  if (typeof blank === 'string') {
    return BLANKS[blank] ?? blank;
  }
  if (typeof panel === 'string' && typeof finding === 'string') {
    return `${panel} ${finding}`;
  }
  return [...fields]
    .map(([name, value]) => `${name} ${valueWords(`${path}.${name}`, value, shown)}`)
    .join(', ');
}

/** The unit as it is said after a figure; nothing after a plain ratio. */
function unitAfter(unit: string): string {
  const known = UNITS.find((one) => one === unit);
  const words = known === undefined ? unit : unitWords(known);
  return words === '' ? '' : ` ${words}`;
}

/** Blank is a value: these say which. */
const BLANKS: Readonly<Record<string, string>> = {
  notRead: 'not read',
  notApplicable: 'not applicable',
  unserviceable: 'unserviceable',
};
