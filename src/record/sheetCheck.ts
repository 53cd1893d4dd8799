import type { FlightSheet } from './sheet.ts';
import { cardDoubts } from './sheetCheckCards.ts';
import { aircraftDoubts, conditionDoubts, weightDoubts } from './sheetCheckAircraft.ts';
import { instrumentDoubts } from './sheetCheckInstruments.ts';
import { archiveDoubts, revisionDoubts } from './sheetCheckHistory.ts';
import { wingDoubts } from './sheetCheckWing.ts';
import type { SheetDoubt } from './sheetDoubt.ts';

/** The pages that a flight sheet is edited on, in the order in which they are best filled. */
export const SHEET_SECTIONS = [
  'flight',
  'aircraft',
  'weights',
  'condition',
  'baseline',
  'panels',
  'probes',
  'instruments',
  'cards',
  'people',
  'clocks',
  'limits',
  'tiles',
] as const;
export type SheetSection = (typeof SHEET_SECTIONS)[number];

const SECTION_OF_FIELD = {
  id: 'flight',
  revision: 'flight',
  revisions: 'flight',
  basis: 'flight',
  title: 'flight',
  massUnit: 'flight',
  heightUnit: 'flight',
  field: 'flight',
  localOffsetH: 'flight',
  legs: 'flight',
  stopWords: 'flight',
  aircraft: 'aircraft',
  engineMap: 'aircraft',
  engineTables: 'aircraft',
  tsfcSlope: 'aircraft',
  weights: 'weights',
  condition: 'condition',
  tolerances: 'condition',
  machHoldStandardUncertainty: 'condition',
  stability: 'condition',
  timeDoubts: 'condition',
  laminarBelow: 'probes',
  borrowedBaseline: 'baseline',
  targetReductionFraction: 'baseline',
  baselineArchive: 'baseline',
  panels: 'panels',
  probes: 'probes',
  instruments: 'instruments',
  testCards: 'cards',
  people: 'people',
  clocks: 'clocks',
  limits: 'limits',
  tilePages: 'tiles',
  rolePages: 'tiles',
  positionAllowed: 'flight',
  ownTiles: 'tiles',
  tileWords: 'tiles',
} as const satisfies Record<keyof FlightSheet, SheetSection>;
const SECTIONS_BY_NAME = new Map<string, SheetSection>(Object.entries(SECTION_OF_FIELD));

/**
 * Everything that is doubtful about a flight sheet, in the order of its pages. It warns and never blocks: a crew flies
 * with what it has, and the list stands beside it.
 *
 * @param given.today UTC date, YYYY-MM-DD, against which due dates are held; null leaves them unjudged
 * @param given.tiles ids of the built-in tiles; null leaves tile names unjudged
 */
export function checkSheet(
  sheet: FlightSheet,
  given: { readonly today: string | null; readonly tiles: readonly string[] | null },
): readonly SheetDoubt[] {
  const doubts = [
    ...aircraftDoubts(sheet),
    ...weightDoubts(sheet),
    ...conditionDoubts(sheet),
    ...wingDoubts(sheet),
    ...instrumentDoubts(sheet, given.today),
    ...cardDoubts(sheet, given.tiles),
    ...revisionDoubts(sheet),
    ...archiveDoubts(sheet),
  ];
  return SHEET_SECTIONS.flatMap((section) =>
    doubts.filter((one) => sectionOf(one.path) === section),
  );
}

/** The page on which a field stands. */
export function sectionOf(path: SheetDoubt['path']): SheetSection {
  const section = SECTIONS_BY_NAME.get(path.split('.')[0] ?? '');
  if (section === undefined) {
    throw new RangeError(`a path must begin with a field of the flight sheet, got ${path}`);
  }
  return section;
}
