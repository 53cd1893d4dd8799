import type { EpochMs } from '../../record/brand.ts';
import type { FlightState, Timed } from '../../record/flightState.ts';
import type { Wing } from '../../record/sheet.ts';
import type { Touch } from '../kit/touchBoard.ts';
import { openInterval, type Act, type Mark } from './act.ts';
import type { Fly } from './flyContext.ts';
import { actNow, type Tile } from './tiles.ts';

/** An interval cannot be closed within this time of its opening: it is the same finger again. */
const CLOSE_GUARD_MS = 2000;

/** What a touch on a tile does: writes its event at the time of contact, or opens its pad. */
export async function touchTile(fly: Fly, tile: Tile, touch: Touch): Promise<void> {
  const at = touch.stamp.wall;
  if (tile.does.kind === 'pad') {
    openTilePad(fly, tile.does.pad, touch);
    return;
  }
  const since = sinceOf(tile, fly.state, fly.wing);
  if (since !== null && at - since < CLOSE_GUARD_MS) {
    fly.move({ do: 'notice', words: `${tile.label}: too soon, touch again`, at: fly.clock.now() });
    return;
  }
  const act = actNow(tile, fly.sceneAt(at));
  if (act !== null) {
    await writeAct(fly, act, touch);
  }
}

/** Writes an act, then offers its details. */
export async function writeAct(fly: Fly, act: Act, touch: Touch): Promise<void> {
  const mark: Mark = touch.outcome === 'sure' ? {} : { unconfirmed: touch.outcome };
  const written = act.write(fly.sceneAt(touch.stamp.wall), mark);
  const entry = await fly.append({ ...written, stamp: touch.stamp });
  if (entry === null || entry.kind === 'unrecognised') {
    return;
  }
  const target = entry.id;
  if (act.id === 'point-start') {
    fly.move({ do: 'point', point: null });
  }
  if (touch.outcome !== 'sure') {
    fly.move({ do: 'panel', panel: { kind: 'chosen', target } });
    return;
  }
  fly.move({ do: 'panel', panel: { kind: 'detail', target, field: 0, page: 0 } });
  if (
    entry.kind === 'laminarGained' ||
    entry.kind === 'laminarLost' ||
    entry.kind === 'probesRead'
  ) {
    fly.move({ do: 'open', pad: { kind: 'probes', target, stamp: null, wing: fly.wing ?? 'L' } });
  } else if (entry.kind === 'coversReleased' && entry.body.wing !== 'both') {
    fly.move({ do: 'open', pad: { kind: 'covers', target, wing: entry.body.wing } });
  }
}

function openTilePad(
  fly: Fly,
  pad: Extract<Tile['does'], { kind: 'pad' }>['pad'],
  touch: Touch,
): void {
  switch (pad) {
    case 'fuel':
    case 'air':
    case 'tank':
      fly.move({ do: 'open', pad: { kind: 'readings', of: pad, step: 0, glance: null } });
      return;
    case 'wing':
      fly.move({ do: 'open', pad: { kind: 'wing', wing: fly.wing ?? 'L' } });
      return;
    case 'count':
      fly.move({
        do: 'open',
        pad: { kind: 'count', target: null, stamp: touch.stamp, wing: fly.wing ?? 'L' },
      });
      return;
    case 'sketch':
      fly.move({ do: 'open', pad: { kind: 'sketch', target: null } });
      return;
    case 'more':
    case 'log':
      fly.move({ do: 'open', pad: { kind: pad, page: 0 } });
      return;
    case 'desk':
      fly.move({ do: 'panel', panel: { kind: 'desk', page: 'first', chips: 0 } });
      return;
    case 'cards':
      fly.move({ do: 'panel', panel: { kind: 'cards', page: 0 } });
      return;
    case 'rake':
      fly.move({ do: 'panel', panel: { kind: 'rake' } });
  }
}

/** Since when the thing that a touch would close has been open; null when a touch would open it. */
export function sinceOf(tile: Tile, state: FlightState, wing: Wing | null): EpochMs | null {
  const { does } = tile;
  const at = (timed: Timed | null | undefined): EpochMs | null => timed?.at ?? null;
  switch (does.kind) {
    case 'interval':
      return at(openInterval(state, does.interval)?.opened);
    case 'state':
      return at(does.since(state));
    case 'suction':
      return at(
        wing === null ? (state.suction.L.on ?? state.suction.R.on) : state.suction[wing].on,
      );
    case 'own':
      return at(openInterval(state, `own:${tile.id}`)?.opened);
    case 'instant':
    case 'stop':
    case 'pad':
      return null;
  }
}
