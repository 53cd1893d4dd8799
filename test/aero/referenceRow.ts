import {
  fromSi,
  isUnit,
  METRES_PER_FOOT,
  METRES_PER_INCH,
  NEWTONS_PER_POUND_FORCE,
  PASCALS_PER_PSI,
  toSi,
} from '../../src/aero/units.ts';

/** One check value as test/reference holds it. */
export interface ReferenceRow {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: Readonly<Record<string, { readonly value: unknown; readonly unit: string }>>;
  readonly expected: number | string;
  readonly unit: string;
  readonly tolerance: { readonly type: string; readonly value: number };
  readonly origin: string;
  readonly source: string;
  readonly notComputedBecause?: string;
}

/** How a row is answered: a number in the row's own unit, or a string. */
export type Answer = (row: RowReader) => number | string;

/** Answers by quantity, or by id where one quantity is asked in several ways. */
export type Answers = Readonly<Record<string, Answer>>;

const tables = import.meta.glob<readonly ReferenceRow[]>('../reference/*.json', {
  eager: true,
  import: 'default',
});

/** Every table of check values by file name. */
export const REFERENCE_TABLES: ReadonlyMap<string, readonly ReferenceRow[]> = new Map(
  Object.entries(tables).map(([path, rows]) => [path.replace(/^.*\/|\.json$/g, ''), rows]),
);

/** Spellings of the tables that the product has no use for, as multiples of SI. */
const OTHER_FACTORS: Readonly<Record<string, number>> = {
  ppm: 1e-6,
  '1000 lbf': 1000 * NEWTONS_PER_POUND_FORCE,
  'lbf/ft^2': (PASCALS_PER_PSI * METRES_PER_INCH ** 2) / METRES_PER_FOOT ** 2,
  '1/ft': 1 / METRES_PER_FOOT,
  'lb/h per lbf': 0.45359237 / 3600 / NEWTONS_PER_POUND_FORCE,
  'lb/(lbf h)': 0.45359237 / 3600 / NEWTONS_PER_POUND_FORCE,
  'Pa s': 1,
  'kg/(m s K^0.5)': 1,
  'J/(kmol K)': 1,
  'kg/kmol': 1,
  day: 86_400,
};

const SPELLINGS: Readonly<Record<string, string>> = {
  "m'": 'm',
  'inH2O(20C)': 'inH2O@20C',
  'inH2O(conv)': 'inH2O',
  'ft^2': 'ft2',
  'm/s^2': 'm/s2',
  'kg/m^3': 'kg/m3',
  'm^3': 'm3',
};

/** Reads the inputs of a row, looking through "same data as" where the row points at another. */
export class RowReader {
  readonly row: ReferenceRow;
  readonly #all: ReadonlyMap<string, ReferenceRow>;

  constructor(row: ReferenceRow, all: ReadonlyMap<string, ReferenceRow>) {
    this.row = row;
    this.#all = all;
  }

  has(name: string): boolean {
    return this.#find(name) !== undefined;
  }

  /** A number in SI. */
  si(name: string): number {
    const { unit } = this.#need(name);
    return inSi(this.raw(name), unit);
  }

  /** A number as written. */
  raw(name: string): number {
    const { value } = this.#need(name);
    if (typeof value !== 'number') throw new TypeError(`${this.row.id}: ${name} is not a number`);
    return value;
  }

  text(name: string): string {
    const { value } = this.#need(name);
    if (typeof value !== 'string') throw new TypeError(`${this.row.id}: ${name} is not a text`);
    return value;
  }

  list(name: string): readonly number[] {
    return numbersOf(this.#need(name).value);
  }

  siList(name: string): readonly number[] {
    const { unit } = this.#need(name);
    return this.list(name).map((value) => inSi(value, unit));
  }

  /** Whatever stands there, for tables and lists of words. */
  value(name: string): unknown {
    return this.#need(name).value;
  }

  /** The row that an input points at. */
  through(name: string): RowReader {
    const row = this.#all.get(this.text(name));
    if (row === undefined) throw new TypeError(`${this.row.id}: ${name} points at no row`);
    return new RowReader(row, this.#all);
  }

  /** An SI number in the unit the row expects. */
  out(si: number): number {
    const unit = SPELLINGS[this.row.unit] ?? this.row.unit;
    const factor = OTHER_FACTORS[unit];
    if (factor !== undefined) return si / factor;
    if (!isUnit(unit)) throw new TypeError(`${this.row.id}: unit ${unit} is not known`);
    return valueOf(fromSi({ value: si, unit }));
  }

  #need(name: string): { readonly value: unknown; readonly unit: string } {
    const found = this.#find(name);
    if (found === undefined) throw new TypeError(`${this.row.id} has no input ${name}`);
    return found;
  }

  #find(name: string): { readonly value: unknown; readonly unit: string } | undefined {
    const own = this.row.inputs[name];
    if (own !== undefined) return own;
    for (const { value, unit } of Object.values(this.row.inputs)) {
      const other = unit.startsWith('same ') ? this.#all.get(String(value)) : undefined;
      const found = other && new RowReader(other, this.#all).#find(name);
      if (found !== undefined) return found;
    }
    return undefined;
  }
}

/** The value of an outcome that has one. */
export function valueOf<Value>(
  outcome:
    | { readonly kind: 'ready'; readonly value: Value }
    | { readonly kind: 'unavailable'; readonly because: string },
): Value {
  if (outcome.kind === 'unavailable') throw new TypeError(`no value: ${outcome.because}`);
  return outcome.value;
}

/** The thing itself where a reason could have come in its place. */
export function given<Thing extends { readonly kind: string }>(
  thing: Thing | { readonly kind: 'unavailable'; readonly because: string },
): Exclude<Thing, { readonly kind: 'unavailable' }> {
  if (isUnavailable(thing)) throw new TypeError(`no value: ${thing.because}`);
  return thing as Exclude<Thing, { readonly kind: 'unavailable' }>;
}

/** An element that must be there. */
export function itemAt<Item>(items: readonly Item[], index: number): Item {
  const item = items[index];
  if (item === undefined) throw new TypeError(`no element ${index} among ${items.length}`);
  return item;
}

function isUnavailable(thing: {
  readonly kind: string;
}): thing is { readonly kind: 'unavailable'; readonly because: string } {
  return thing.kind === 'unavailable';
}

function inSi(value: number, written: string): number {
  const unit = SPELLINGS[written] ?? written;
  const factor = OTHER_FACTORS[unit];
  if (factor !== undefined) return value * factor;
  if (!isUnit(unit)) throw new TypeError(`unit ${unit} is not known`);
  return valueOf(toSi({ value, unit })).value;
}

function numbersOf(value: unknown): readonly number[] {
  if (!Array.isArray(value)) throw new TypeError('not a list');
  return value.map((item: unknown) => {
    if (typeof item !== 'number') throw new TypeError('not a list of numbers');
    return item;
  });
}
