import type { EpochMs } from '../../record/brand.ts';
import type { FlightState } from '../../record/flightState.ts';
import { items, itemsBackwards } from '../../record/trail.ts';
import { running } from '../kit/time.ts';
import type { Scene } from './act.ts';
import { airInstruments, fuelInstruments } from './instruments.ts';
import { actNow, type Tile } from './tiles.ts';
import { sinceOf } from './touchTile.ts';

/** How a tile looks: name above, word and running time at its foot. */
export interface Face {
  readonly look: 'ready' | 'open' | 'on' | 'pad';
  readonly foot: string;
  readonly time: string | null;
}

export function faceOf(tile: Tile, scene: Scene, now: EpochMs): Face {
  const { does } = tile;
  const since = sinceOf(tile, scene.state, scene.wing);
  const time = since === null ? null : running(now - since);
  switch (does.kind) {
    case 'pad':
      return does.pad === 'fuel' || does.pad === 'air'
        ? dueFace(does.pad, scene, now)
        : { look: 'pad', foot: PAD_FOOT[does.pad], time: null };
    case 'interval':
      return time === null
        ? ready(tile, scene)
        : { look: 'open', foot: openWord(tile, scene.state), time };
    case 'state':
      return time === null
        ? ready(tile, scene)
        : { look: 'on', foot: ON_WORD[tile.id] ?? 'On', time };
    case 'suction':
      return time === null
        ? ready(tile, scene)
        : { look: 'open', foot: suctionWord(scene.state), time };
    case 'own':
      return time === null
        ? ready(tile, scene)
        : {
            look: does.form === 'state' ? 'on' : 'open',
            foot: does.form === 'state' ? 'On' : 'Open',
            time,
          };
    case 'instant':
    case 'stop':
      return ready(tile, scene);
  }
}

const PAD_FOOT = {
  tank: 'Gauge',
  wing: 'Map',
  count: 'Probes',
  sketch: 'Draw',
  more: 'Events',
  desk: 'Tablet',
  log: 'So far',
  cards: 'Order',
  rake: 'Read',
} as const;
const ON_WORD: Readonly<Record<string, string>> = { blocks: 'Off', gear: 'Up' };

function ready(tile: Tile, scene: Scene): Face {
  return { look: 'ready', foot: actNow(tile, scene)?.verb ?? '', time: null };
}

function openWord(tile: Tile, state: FlightState): string {
  if (tile.id !== 'point' || state.openRun === null) {
    return 'Open';
  }
  const run = [...items(state.runs)][state.openRun];
  return run === undefined ? 'Open' : run.point;
}

function suctionWord(state: FlightState): string {
  const left = state.suction.L.on !== null;
  const right = state.suction.R.on !== null;
  return left && right ? 'On' : left ? 'L only' : 'R only';
}

/** When the next reading is due: a standing cue on its own tile, before any reminder. */
function dueFace(pad: 'fuel' | 'air', scene: Scene, now: EpochMs): Face {
  const every = scene.sheet?.limits.readingEveryS ?? 0;
  const ids = (pad === 'fuel' ? fuelInstruments(scene.sheet) : airInstruments(scene.sheet)).map(
    (each) => each.id,
  );
  const lastAt = lastReadAt(scene.state, ids);
  if (lastAt === null || every <= 0) {
    return { look: 'pad', foot: 'Read', time: null };
  }
  const dueInMs = lastAt + every * 1000 - now;
  return dueInMs >= 0
    ? { look: 'pad', foot: 'Due in', time: running(dueInMs) }
    : { look: 'pad', foot: 'Overdue', time: running(-dueInMs) };
}

const GLANCES_LOOKED_AT = 40;

function lastReadAt(state: FlightState, ids: readonly string[]): EpochMs | null {
  let looked = 0;
  for (const glance of itemsBackwards(state.glances)) {
    looked += 1;
    if (ids.some((id) => id in glance.readings)) {
      return glance.at;
    }
    if (looked === GLANCES_LOOKED_AT) {
      break;
    }
  }
  return null;
}
