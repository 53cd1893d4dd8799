import { ROLES, wingOfRole } from '../../../record/roles.ts';
import { FLIGHT_PHASES, type FlightPhase, type FlightSheet } from '../../../record/sheet.ts';
import { rolePage, TILES } from '../../../record/tiles.ts';

export const PLACES = Array.from({ length: 12 }, (_, place) => place);

/** A page of tiles: of a phase of flight, or of a role that has one of its own in all phases. */
export type PageName = FlightPhase | (typeof ROLES)[number];

const PHASE_WORDS: Readonly<Record<FlightPhase, string>> = {
  ground: 'Ground',
  climb: 'Climb',
  cruise: 'Cruise',
  descent: 'Descent',
};

export const PAGES: readonly { readonly value: PageName; readonly label: string }[] = [
  ...FLIGHT_PHASES.map((value) => ({ value, label: PHASE_WORDS[value] })),
  ...ROLES.filter((role) => wingOfRole(role) !== null).map((value) => ({
    value,
    label: `${value.charAt(0).toUpperCase()}${value.slice(1)}`,
  })),
];

export function tilesOn(sheet: FlightSheet, page: PageName): readonly (string | null)[] {
  const ids = isPhase(page) ? sheet.tilePages[page] : (rolePage(sheet, page) ?? []);
  return PLACES.map((place) => ids[place] ?? null);
}

export function withTiles(
  sheet: FlightSheet,
  page: PageName,
  tiles: readonly (string | null)[],
): FlightSheet {
  if (isPhase(page)) {
    return { ...sheet, tilePages: { ...sheet.tilePages, [page]: tiles } };
  }
  const others = (sheet.rolePages ?? []).filter(({ role }) => role !== page);
  return { ...sheet, rolePages: [...others, { role: page, tiles }] };
}

/** What stands on a tile: the crew's own word before the usual one. */
export function tileLabel(sheet: FlightSheet, id: string | null): string {
  if (id === null) return 'empty';
  const own = sheet.ownTiles.find((tile) => tile.id === id);
  if (own !== undefined) return own.label;
  const word = sheet.tileWords?.find((one) => one.tile === id)?.label ?? '';
  return word.trim() === '' ? (TILES.find((tile) => tile.id === id)?.label ?? id) : word;
}

/** The sheet with another word on a built-in tile; an empty one brings the usual word back. */
export function withTileWord(sheet: FlightSheet, tile: string, label: string): FlightSheet {
  const others = (sheet.tileWords ?? []).filter((one) => one.tile !== tile);
  const { tileWords: _, ...rest } = sheet;
  const words = label === '' ? others : [...others, { tile, label: label.slice(0, 40) }];
  return words.length === 0 ? rest : { ...rest, tileWords: words };
}

function isPhase(page: PageName): page is FlightPhase {
  return FLIGHT_PHASES.some((phase) => phase === page);
}
