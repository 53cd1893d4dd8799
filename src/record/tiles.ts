import type { FlightSheet } from './sheet.ts';

/** The built-in events of Fly: the name that a flight sheet keeps, the word on the tile, and what it is for. */
export const TILES = [
  { id: 'recorder', label: 'Rec', words: 'Flight recorder on and off' },
  { id: 'photo', label: 'Photo', words: 'Photo panel on and off' },
  { id: 'frame', label: 'Frame', words: 'Photo frame now' },
  { id: 'engine', label: 'Engine', words: 'Engine start and shutdown' },
  { id: 'blocks', label: 'Blocks', words: 'Blocks off and on' },
  { id: 'roll', label: 'Roll', words: 'Take-off roll' },
  { id: 'liftOff', label: 'Liftoff', words: 'Lift-off' },
  { id: 'touchdown', label: 'Landed', words: 'Touchdown' },
  { id: 'gear', label: 'Gear', words: 'Gear up and down' },
  { id: 'covers', label: 'Covers', words: 'Covers release' },
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
  { id: 'probes', label: 'Probes', words: 'Probe reading, laminar gain and loss' },
  { id: 'rake', label: 'Rake', words: 'Rake reading' },
  { id: 'cloud', label: 'Cloud', words: 'Moisture entry and exit' },
  { id: 'sighted', label: 'Seen', words: 'Moisture seen ahead' },
  { id: 'sample', label: 'Sample', words: 'Sampler open and close' },
  { id: 'rough', label: 'Rough', words: 'Turbulence start and end' },
  { id: 'pilot', label: 'Pilot', words: 'Pilot comment' },
  { id: 'call', label: 'Call', words: 'Engineer call' },
  { id: 'note', label: 'Note', words: 'Note' },
  { id: 'mark', label: 'Mark', words: 'Event mark: time now, meaning later' },
  { id: 'joker', label: 'Joker', words: 'Joker fuel reached' },
  { id: 'bingo', label: 'Bingo', words: 'Bingo fuel reached' },
  { id: 'stop', label: 'Stop', words: 'Stop call: knock-it-off, terminate, abort' },
] as const satisfies readonly {
  readonly id: string;
  readonly label: string;
  readonly words: string;
}[];
export type TileId = (typeof TILES)[number]['id'];
export const TILE_IDS: readonly string[] = TILES.map((tile) => tile.id);

/** Four columns, three rows; a row is a family: flight and suction, air and power, readings and marks. */
export const USUAL_TILE_PAGES: FlightSheet['tilePages'] = {
  ground: places([
    ['recorder', 'photo', 'engine', 'blocks'],
    ['roll', 'liftOff', 'unit', 'frame'],
    ['tank', 'note', 'mark', 'stop'],
  ]),
  climb: places([
    ['liftOff', 'gear', 'covers', 'unit'],
    ['level', 'condition', 'cloud', 'rough'],
    ['fuel', 'air', 'mark', 'stop'],
  ]),
  cruise: places([
    ['point', 'condition', 'suction', 'cloud'],
    ['sample', 'turn', 'rough', 'power'],
    ['fuel', 'air', 'mark', 'stop'],
  ]),
  descent: places([
    ['suction', 'unit', 'descent', 'gear'],
    ['touchdown', 'blocks', 'engine', 'joker'],
    ['fuel', 'tank', 'mark', 'stop'],
  ]),
};

function places(rows: readonly (readonly TileId[])[]): readonly TileId[] {
  return rows.flat();
}
