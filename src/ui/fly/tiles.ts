import type { FlightPhase, FlightSheet, OwnTileForm } from '../../record/sheet.ts';
import type { FlightState, IntervalKind, Timed } from '../../record/flightState.ts';
import { openInterval, type Act, type Scene } from './act.ts';
import { actOf } from './acts.ts';
import { wingOfRole } from '../../record/roles.ts';
import { rolePage, TILES, USUAL_TILE_PAGES, type TileId } from '../../record/tiles.ts';

/** Pads that a tile can open instead of writing at once. */
export type TilePad =
  | 'count'
  | 'sketch'
  | 'fuel'
  | 'air'
  | 'tank'
  | 'wing'
  | 'more'
  | 'desk'
  | 'log'
  | 'cards'
  | 'rake';

export interface Tile {
  readonly id: string;
  readonly label: string;
  readonly does:
    | { readonly kind: 'instant'; readonly act: string }
    | {
        readonly kind: 'interval';
        readonly interval: IntervalKind;
        readonly opens: string;
        readonly closes: string;
      }
    | {
        readonly kind: 'state';
        readonly on: string;
        readonly off: string;
        readonly since: (state: FlightState) => Timed | null;
      }
    | { readonly kind: 'suction' }
    | { readonly kind: 'stop' }
    | { readonly kind: 'pad'; readonly pad: TilePad }
    | { readonly kind: 'own'; readonly form: 'instant' | 'interval' | 'state' };
}

type Does = Tile['does'];
const instant = (act: string): Does => ({ kind: 'instant', act });
const interval = (of: IntervalKind, opens: string, closes: string): Does => ({
  kind: 'interval',
  interval: of,
  opens,
  closes,
});
const state = (on: string, off: string, since: (state: FlightState) => Timed | null): Does => ({
  kind: 'state',
  on,
  off,
  since,
});
const pad = (name: TilePad): Does => ({ kind: 'pad', pad: name });

/** What each tile of the vocabulary does. */
const DOES: Readonly<Record<TileId, Does>> = {
  recorder: interval('recorder', 'rec-on', 'rec-off'),
  photo: interval('photoPanel', 'photo-on', 'photo-off'),
  frame: instant('frame'),
  engine: instant('engine-start'),
  shutdown: instant('engine-stop'),
  blocks: state('blocks-off', 'blocks-on', blocksOffSince),
  roll: instant('roll'),
  liftOff: instant('liftoff'),
  touchdown: instant('touchdown'),
  gear: state('gear-up', 'gear-down', gearUpSince),
  coversLeft: instant('covers-left'),
  coversRight: instant('covers-right'),
  level: instant('level'),
  descent: instant('descend'),
  leg: instant('leg'),
  turn: interval('turn', 'turn-start', 'turn-end'),
  condition: state('cond-on', 'cond-off', (now) => now.condition.reached),
  point: interval('testPoint', 'point-start', 'point-end'),
  unit: state('unit-on', 'unit-off', (now) => now.suctionUnit),
  suction: { kind: 'suction' },
  power: instant('power'),
  fuel: pad('fuel'),
  air: pad('air'),
  tank: pad('tank'),
  wing: pad('wing'),
  probes: instant('probes'),
  count: pad('count'),
  gain: instant('gain'),
  loss: instant('loss'),
  rake: pad('rake'),
  cloud: interval('moisture', 'cloud-in', 'cloud-out'),
  sighted: instant('cloud-ahead'),
  sample: interval('sampler', 'sampler-open', 'sampler-close'),
  rough: interval('turbulence', 'rough-in', 'rough-out'),
  pilot: instant('pilot'),
  call: instant('engineer'),
  note: instant('note'),
  sketch: pad('sketch'),
  mark: instant('mark'),
  joker: instant('joker'),
  bingo: instant('bingo'),
  stop: { kind: 'stop' },
  hack: instant('hack'),
  cards: pad('cards'),
  log: pad('log'),
  desk: pad('desk'),
  more: pad('more'),
};

const BY_ID = new Map<string, Tile>(
  TILES.map(({ id, label }) => [id, { id, label, does: DOES[id] }]),
);

/** Where the wing itself is on the screen, the place of its pad is given to Turn. */
const WING_GIVES_WAY_TO = 'turn';
const WING_GIVES_WAY_TO_FOR_ENGINEER = 'desk';

export function tileOf(id: string, sheet: FlightSheet | null): Tile | null {
  const known = BY_ID.get(id);
  if (known !== undefined) {
    const word = sheet?.tileWords?.find((one) => one.tile === id)?.label ?? '';
    return word.trim() === '' ? known : { ...known, label: word };
  }
  const own = sheet?.ownTiles.find((tile) => tile.id === id);
  return own === undefined
    ? null
    : { id: own.id, label: own.label, does: { kind: 'own', form: ownForm(own.form) } };
}

/** A reading and a sample are moments whose number or id follows in the details. */
function ownForm(form: OwnTileForm): 'instant' | 'interval' | 'state' {
  return form === 'reading' || form === 'sample' ? 'instant' : form;
}

/** The twelve places of the page of a phase, or of a role that has its own; `null` where it is left empty. */
export function pageTiles(
  sheet: FlightSheet | null,
  phase: FlightPhase,
  wingOnScreen: boolean,
  role: string,
): readonly (Tile | null)[] {
  const named = sheet?.tilePages[phase] ?? [];
  const ids =
    rolePage(sheet, role) ?? (named.some((id) => id !== null) ? named : USUAL_TILE_PAGES[phase]);
  const givesWay = wingOfRole(role) === null ? WING_GIVES_WAY_TO : WING_GIVES_WAY_TO_FOR_ENGINEER;
  return Array.from({ length: 12 }, (_, place) => {
    const id = ids[place] ?? null;
    return id === null ? null : tileOf(id === 'wing' && wingOnScreen ? givesWay : id, sheet);
  });
}

function blocksOffSince(state: FlightState): Timed | null {
  const { blocksOff, blocksOn } = state.milestones;
  return blocksOn === undefined ? (blocksOff ?? null) : null;
}

function gearUpSince(state: FlightState): Timed | null {
  const { gearUp, gearDown } = state.milestones;
  return gearUp !== undefined && (gearDown === undefined || gearDown.at < gearUp.at)
    ? gearUp
    : null;
}

/** The act that a touch on this tile means now; null for a tile that opens a pad. */
export function actNow(tile: Tile, scene: Scene): Act | null {
  const { does } = tile;
  switch (does.kind) {
    case 'instant':
      return actOf(does.act);
    case 'interval':
      return actOf(openInterval(scene.state, does.interval) === null ? does.opens : does.closes);
    case 'state':
      return actOf(does.since(scene.state) === null ? does.on : does.off);
    case 'suction':
      return actOf(suctionAct(scene));
    case 'stop':
      return actOf(scene.state.openRun === null ? 'stop-terminate' : 'point-terminate');
    case 'own':
      return ownAct(tile.id, tile.label, does.form);
    case 'pad':
      return null;
  }
}

/** For an engineer, on or change of the own wing. For the scribe: both wings off: on. One on: the other on. Both on: a change; Off is offered in the detail panel. */
function suctionAct({ state, wing }: Scene): string {
  if (wing !== null) {
    return state.suction[wing].on !== null
      ? 'suction-change'
      : wing === 'L'
        ? 'suction-on-left'
        : 'suction-on-right';
  }
  const left = state.suction.L.on !== null;
  const right = state.suction.R.on !== null;
  if (left && right) {
    return 'suction-change';
  }
  return left ? 'suction-on-right' : right ? 'suction-on-left' : 'suction-on';
}

function ownAct(id: string, label: string, form: 'instant' | 'interval' | 'state'): Act {
  return {
    id: `own-${id}`,
    label,
    verb: form === 'instant' ? 'Now' : 'Start',
    write: (scene, mark) => {
      const isOpen = openInterval(scene.state, `own:${id}`) !== null;
      const written =
        form === 'instant'
          ? 'instant'
          : form === 'interval'
            ? isOpen
              ? 'closed'
              : 'opened'
            : isOpen
              ? 'off'
              : 'on';
      return { kind: 'ownEventMarked', body: { ...mark, tile: id, label, form: written } };
    },
  };
}
