import { wingOfRole } from './roles.ts';
import type { FlightSheet } from './sheet.ts';

/** The built-in events of Fly: the name that a flight sheet keeps, the word on the tile, and what it is for. */
export const TILES = [
  { id: 'recorder', label: 'Rec', words: 'Flight recorder on and off' },
  { id: 'photo', label: 'Photo', words: 'Photo panel on and off' },
  { id: 'frame', label: 'Frame', words: 'Photo frame now' },
  { id: 'engine', label: 'Engine', words: 'Engine start' },
  { id: 'shutdown', label: 'Eng off', words: 'Engine shutdown' },
  { id: 'blocks', label: 'Blocks', words: 'Blocks off and on' },
  { id: 'roll', label: 'Roll', words: 'Take-off roll' },
  { id: 'liftOff', label: 'Liftoff', words: 'Lift-off' },
  { id: 'touchdown', label: 'Landed', words: 'Touchdown' },
  { id: 'gear', label: 'Gear', words: 'Gear up and down' },
  { id: 'coversLeft', label: 'Cover L', words: 'Covers release, left wing' },
  { id: 'coversRight', label: 'Cover R', words: 'Covers release, right wing' },
  { id: 'level', label: 'Level', words: 'Level-off' },
  { id: 'descent', label: 'TOD', words: 'Top of descent' },
  { id: 'leg', label: 'Leg', words: 'Leg start' },
  { id: 'turn', label: 'Turn', words: 'Turn start and end' },
  { id: 'condition', label: 'Cond', words: 'On and off condition' },
  { id: 'point', label: 'Point', words: 'Test point start, end, interrupted' },
  { id: 'unit', label: 'Unit', words: 'Suction unit start and stop' },
  { id: 'suction', label: 'Suction', words: 'Suction on, change and off' },
  { id: 'power', label: 'Power', words: 'Throttle or trim change' },
  { id: 'fuel', label: 'Fuel', words: 'Fuel reading' },
  { id: 'air', label: 'Air', words: 'Air data reading' },
  { id: 'tank', label: 'Tank', words: 'Fuel state: tank gauge and counters' },
  { id: 'wing', label: 'Wing', words: 'Wing map' },
  { id: 'probes', label: 'Probes', words: 'Probe reading' },
  { id: 'count', label: 'Count', words: 'Probes laminar, by count' },
  { id: 'gain', label: 'Gain', words: 'Laminar flow gained' },
  { id: 'loss', label: 'Loss', words: 'Laminar flow lost' },
  { id: 'rake', label: 'Rake', words: 'Rake reading' },
  { id: 'cloud', label: 'Cloud', words: 'Moisture entry and exit' },
  { id: 'sighted', label: 'Seen', words: 'Moisture seen ahead' },
  { id: 'sample', label: 'Sample', words: 'Sampler open and close' },
  { id: 'rough', label: 'Rough', words: 'Turbulence start and end' },
  { id: 'pilot', label: 'Pilot', words: 'Pilot comment' },
  { id: 'call', label: 'Call', words: 'Engineer call' },
  { id: 'note', label: 'Note', words: 'Note' },
  { id: 'sketch', label: 'Sketch', words: 'Note drawn by hand on a blank card' },
  { id: 'mark', label: 'Mark', words: 'Event mark: time now, meaning later' },
  { id: 'joker', label: 'Joker', words: 'Joker fuel reached' },
  { id: 'bingo', label: 'Bingo', words: 'Bingo fuel reached' },
  { id: 'stop', label: 'Stop', words: 'Stop call: knock-it-off, terminate, abort' },
  { id: 'hack', label: 'Hack', words: 'Time hack' },
  { id: 'cards', label: 'Cards', words: 'Test cards: choose what comes next' },
  { id: 'log', label: 'Log', words: 'The log so far: amend, withdraw, back-date' },
  { id: 'desk', label: 'Desk', words: 'Theme, hand, scribe, manual, other screens' },
  { id: 'more', label: 'More', words: 'Every event there is' },
] as const satisfies readonly {
  readonly id: string;
  readonly label: string;
  readonly words: string;
}[];
export type TileId = (typeof TILES)[number]['id'];
export const TILE_IDS: readonly string[] = TILES.map((tile) => tile.id);

/**
 * Four columns, three rows; a row is a family: flight and suction, air and flow, readings and marks. More stands last
 * on every page, so that no event is ever out of reach.
 */
export const USUAL_TILE_PAGES: FlightSheet['tilePages'] = {
  ground: places([
    ['engine', 'blocks', 'roll', 'liftOff'],
    ['recorder', 'photo', 'hack', 'tank'],
    ['note', 'mark', 'desk', 'more'],
  ]),
  climb: places([
    ['gear', 'coversLeft', 'coversRight', 'level'],
    ['unit', 'condition', 'cloud', 'rough'],
    ['fuel', 'mark', 'stop', 'more'],
  ]),
  cruise: places([
    ['point', 'condition', 'suction', 'cloud'],
    ['sample', 'gain', 'loss', 'wing'],
    ['fuel', 'mark', 'stop', 'more'],
  ]),
  descent: places([
    ['descent', 'suction', 'unit', 'gear'],
    ['touchdown', 'blocks', 'shutdown', 'hack'],
    ['tank', 'mark', 'note', 'more'],
  ]),
};

/** What a wing engineer sees and hears, whatever the phase of flight: the flow on one wing, and words about it. */
const WING_ENGINEER_PAGE: readonly TileId[] = places([
  ['gain', 'loss', 'count', 'probes'],
  ['wing', 'suction', 'rake', 'sighted'],
  ['note', 'call', 'mark', 'more'],
]);

/** The page of tiles of a role: as the flight sheet gives it, else the usual one; null where the phases have theirs. */
export function rolePage(
  sheet: FlightSheet | null,
  role: string,
): readonly (string | null)[] | null {
  const given = sheet?.rolePages?.find((page) => page.role === role)?.tiles;
  if (given?.some((id) => id !== null) === true) {
    return given;
  }
  return wingOfRole(role) === null ? null : WING_ENGINEER_PAGE;
}

function places(rows: readonly (readonly TileId[])[]): readonly TileId[] {
  return rows.flat();
}
