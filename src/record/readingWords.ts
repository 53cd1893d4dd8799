import type { Reading } from './entry.ts';
import type { Measure, Unit } from './measure.ts';
import type { FlightSheet, Instrument, Quantity } from './sheet.ts';

const NO_BREAK = '\u00a0';
const MINUS = '\u2212';

/** Units as the trade writes them; a water convention is left to the instrument's own page. */
const UNIT_WORDS: Partial<Record<Unit, string>> = {
  degC: '°C',
  ft2: 'ft²',
  m2: 'm²',
  '1': '',
  '1/min': '/min',
  inH2O: 'inH₂O',
  'inH2O@39.2F': 'inH₂O',
  'inH2O@60F': 'inH₂O',
  'inH2O@20C': 'inH₂O',
};

/** Digits in groups of three with a true minus; `decimals` places, or as many as the number has. */
export function numberWords(value: number, decimals: number | null = null): string {
  const plain = decimals === null ? String(Math.abs(value)) : Math.abs(value).toFixed(decimals);
  const [whole = '0', part] = plain.split('.');
  const grouped = /^\d+$/.test(whole) ? whole.replace(/\B(?=(\d{3})+$)/g, NO_BREAK) : whole;
  const sign = value < 0 && Number(plain) !== 0 ? MINUS : '';
  return `${sign}${grouped}${part === undefined ? '' : `.${part}`}`;
}

export function measureWords({ value, unit }: Measure): string {
  return withUnit(numberWords(value), unit);
}

function withUnit(figure: string, unit: Unit): string {
  const word = UNIT_WORDS[unit] ?? unit;
  return word === '' ? figure : `${figure}${NO_BREAK}${word}`;
}

const BLANK_WORDS = {
  notRead: 'not read',
  notApplicable: 'not applicable',
  unserviceable: 'unserviceable',
} as const;

/** A value as the gauge shows it, or the reason why there is none. */
function readingWords(reading: Reading, instrument: Instrument | null): string {
  if ('blank' in reading) {
    return BLANK_WORDS[reading.blank];
  }
  return withUnit(numberWords(reading.value, decimalsOf(reading, instrument)), reading.unit);
}

/** What stands for a glance in one line: the first of these groups of which something was read, else everything. */
const HEADLINES: readonly (readonly Quantity[])[] = [
  ['fuelFlow'],
  ['suctionFuelFlow', 'mach', 'pressureAltitude'],
];

/** What a glance read, short. The rest of it is in the glance; nothing that was left blank is told unless all of it was. */
export function readingsWords(readings: readonly Reading[], sheet: FlightSheet | null): string {
  const known = new Map(
    (sheet?.instruments ?? []).map((instrument) => [instrument.id, instrument]),
  );
  const rows = readings.map((reading) => ({
    reading,
    instrument: known.get(reading.instrument) ?? null,
  }));
  const given = rows.filter(({ reading }) => 'value' in reading);
  const headline = HEADLINES.map((quantities) =>
    given.filter((row) => row.instrument !== null && quantities.includes(row.instrument.quantity)),
  ).find((group) => group.length > 0);
  const told = headline ?? (given.length > 0 ? given : rows);
  const isFlows = told.every(({ instrument }) => instrument?.quantity === 'fuelFlow');
  return (isFlows ? flowWords(told, sheet) : told.map(named)).join(', ');
}

interface Row {
  readonly reading: Reading;
  readonly instrument: Instrument | null;
}

/** `1 220, 1 150 lb/h` in the order of engines; a single engine of several says which. */
function flowWords(rows: readonly Row[], sheet: FlightSheet | null): readonly string[] {
  const units = new Set(rows.map(({ reading }) => ('unit' in reading ? reading.unit : null)));
  const alone = rows.length === 1 && (sheet?.aircraft.engineCount ?? 1) > 1;
  if (rows.length === 0 || units.size > 1 || alone) {
    return rows.map(named);
  }
  const figures = rows.map(({ reading, instrument }) =>
    'value' in reading ? numberWords(reading.value, decimalsOf(reading, instrument)) : '',
  );
  const [unit] = units;
  const all = figures.join(', ');
  return [unit === null || unit === undefined ? all : withUnit(all, unit)];
}

function named({ reading, instrument }: Row): string {
  const value = readingWords(reading, instrument);
  switch (instrument?.quantity) {
    case 'fuelFlow':
      return `engine ${instrument.consumer ?? reading.instrument} ${value}`;
    case 'suctionFuelFlow':
      return `unit ${value}`;
    case 'mach':
      return `M ${value}`;
    case 'pressureAltitude':
      return value;
    default:
      return `${reading.instrument} ${value}`;
  }
}

/** A gauge's own places, unless what was written has more. */
function decimalsOf(reading: Reading, instrument: Instrument | null): number | null {
  if (instrument === null || !('value' in reading)) {
    return null;
  }
  const shown = instrument.format.decimals;
  return Number(reading.value.toFixed(shown)) === reading.value ? shown : null;
}
