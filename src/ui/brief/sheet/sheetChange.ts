import type { FlightSheet } from '../../../record/sheet.ts';

const FIELD_WORDS: Readonly<Record<keyof FlightSheet, string>> = {
  id: 'its id',
  revision: 'revision',
  title: 'title',
  massUnit: 'unit of mass',
  heightUnit: 'unit of height',
  field: 'field',
  localOffsetH: 'local time',
  legs: 'legs',
  people: 'people',
  aircraft: 'aircraft',
  engineMap: 'engine map',
  engineTables: 'engine tables',
  tsfcSlope: 'slope of consumption',
  weights: 'weights',
  condition: 'condition of the cards',
  tolerances: 'tolerances',
  machHoldStandardUncertainty: 'doubt of the Mach hold',
  stability: 'limits of a steady point',
  timeDoubts: 'doubts of times',
  borrowedBaseline: 'borrowed baseline',
  targetReductionFraction: 'target',
  panels: 'panels',
  probes: 'probes',
  laminarBelow: 'laminar limit',
  instruments: 'instruments',
  testCards: 'test cards',
  clocks: 'clocks',
  limits: 'limits',
  stopWords: 'stop words',
  tilePages: 'tiles',
  rolePages: 'tiles of a role',
  positionAllowed: 'position',
  ownTiles: 'own events',
};

/** The parts in which two flight sheets differ, in words. */
export function changedParts(before: FlightSheet, after: FlightSheet): readonly string[] {
  const given = (sheet: FlightSheet) => new Map<string, unknown>(Object.entries(sheet));
  const [old, now] = [given(before), given(after)];
  return Object.entries(FIELD_WORDS).flatMap(([name, words]) =>
    sorted(old.get(name)) === sorted(now.get(name)) ? [] : [words],
  );
}

/** JSON with its keys in order, so that two spellings of one sheet compare equal. */
function sorted(value: unknown): string | undefined {
  return JSON.stringify(value, (_, node: unknown) =>
    typeof node === 'object' && node !== null && !Array.isArray(node)
      ? Object.fromEntries(Object.entries(node).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : node,
  );
}
