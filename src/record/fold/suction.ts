import type { EpochMs } from '../brand.ts';
import type { EntryOf } from '../entry.ts';
import type { SuctionChange, Timed } from '../flightState.ts';
import { type Wing, WINGS } from '../sheet.ts';
import { appended } from '../trail.ts';
import { doubted, type Fold, withMemory, withState } from './fold.ts';
import { begun, endedIfOpen } from './intervals.ts';

type Named = 'L' | 'R' | 'both';

export function wingsNamed(wing: Named): readonly Wing[] {
  return wing === 'both' ? WINGS : [wing];
}

export function suctionTurnedOn(fold: Fold, entry: EntryOf<'suctionTurnedOn'>, timed: Timed): Fold {
  const { wing, region = null, setting = null } = entry.body;
  const next = wingsNamed(wing).reduce((before, side) => {
    const regions = before.memory.regionsOn[side];
    const asked = regions.includes(region)
      ? doubted(before, timed, 'suctionAlreadyOn', side)
      : withRegions(before, side, [...regions, region]);
    const { on, setting: old } = asked.state.suction[side];
    const turned = withWing(asked, side, {
      on: on ?? timed,
      setting: setting ?? old,
      region,
      lastChangeAt: timed.at,
    });
    return on === null ? begun(turned, 'suction', side, timed) : turned;
  }, fold);
  return upset(changed(next, wing, 'on', setting, region, timed), timed.at);
}

/** A change says what the setting is from now on; on a wing without suction it is kept and asked about. */
export function suctionChanged(fold: Fold, entry: EntryOf<'suctionChanged'>, timed: Timed): Fold {
  const { wing, region = null, setting = null } = entry.body;
  const next = wingsNamed(wing).reduce((before, side) => {
    const now = before.state.suction[side];
    const asked = now.on === null ? doubted(before, timed, 'suctionNotOn', side) : before;
    return withWing(asked, side, {
      on: now.on,
      setting: setting ?? now.setting,
      region: region ?? now.region,
      lastChangeAt: timed.at,
    });
  }, fold);
  return changed(next, wing, 'changed', setting, region, timed);
}

/**
 * Without a region the whole wing goes off. With one, only that region: the wing stays on while another region, or the
 * wing as a whole, was turned on and not off.
 */
export function suctionTurnedOff(
  fold: Fold,
  entry: EntryOf<'suctionTurnedOff'>,
  timed: Timed,
): Fold {
  const { wing, region = null } = entry.body;
  const next = wingsNamed(wing).reduce((before, side) => {
    const now = before.state.suction[side];
    const asked = now.on === null ? doubted(before, timed, 'suctionNotOn', side) : before;
    const left =
      region === null ? [] : asked.memory.regionsOn[side].filter((other) => other !== region);
    const turned = withRegions(asked, side, left);
    return left.length > 0
      ? withWing(turned, side, { ...now, lastChangeAt: timed.at })
      : endedIfOpen(
          withWing(turned, side, { on: null, setting: null, region: null, lastChangeAt: timed.at }),
          'suction',
          side,
          timed,
        );
  }, fold);
  return upset(changed(next, wing, 'off', null, region, timed), timed.at);
}

export function throttleChanged(fold: Fold, timed: Timed): Fold {
  return upset(withState(fold, { lastThrottleAt: timed.at }), timed.at);
}

/** After suction on, suction off or a throttle change the aircraft must settle anew; a change of setting is no upset. */
function upset(fold: Fold, at: EpochMs): Fold {
  return withMemory(fold, { lastUpsetAt: at });
}

function changed(
  fold: Fold,
  wing: Named,
  what: SuctionChange['what'],
  setting: string | null,
  region: string | null,
  timed: Timed,
): Fold {
  const change: SuctionChange = { ...timed, wings: wingsNamed(wing), what, setting, region };
  return withState(fold, { suctionChanges: appended(fold.state.suctionChanges, change) });
}

function withWing(fold: Fold, wing: Wing, now: Fold['state']['suction'][Wing]): Fold {
  return withState(fold, { suction: { ...fold.state.suction, [wing]: now } });
}

function withRegions(fold: Fold, wing: Wing, regions: readonly (string | null)[]): Fold {
  return withMemory(fold, { regionsOn: { ...fold.memory.regionsOn, [wing]: regions } });
}

/** When either wing's suction was last turned on, changed or turned off. */
export function lastSuctionChangeAt(fold: Fold): EpochMs | null {
  const { L, R } = fold.state.suction;
  if (L.lastChangeAt === null || R.lastChangeAt === null) {
    return L.lastChangeAt ?? R.lastChangeAt;
  }
  return L.lastChangeAt > R.lastChangeAt ? L.lastChangeAt : R.lastChangeAt;
}
