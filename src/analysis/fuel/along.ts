import { airState, type AirState } from '../../aero/atmosphere.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../../aero/units.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import { items } from '../../record/trail.ts';
import type { Context } from '../reading/context.ts';
import { sampleOf, type AirField } from '../reading/looks.ts';
import { isFlyableMach } from '../reading/sheetTerms.ts';
import type { Counter } from './counters.ts';
import { valueOnLines, type Seen } from './lines.ts';

/** How weight and air go through the flight, on straight lines between what was read. */
export interface Along {
  readonly weightN: (at: number) => number;
  /** The card's height and a standard day where nobody read either. */
  readonly air: (at: number) => AirState;
  /** That of the card where nobody read it. */
  readonly mach: (at: number) => number;
  readonly wasAirRead: boolean;
  /** Instants at which the lines may bend. */
  readonly corners: readonly EpochMs[];
  /** What was read inside a stretch, and the looks on either side of it. */
  readonly entriesWithin: (from: EpochMs, to: EpochMs) => readonly EntryId[];
}

interface SeenBy extends Seen {
  readonly by: readonly EntryId[];
}

/** @returns null without a ramp weight */
export function alongFlight(context: Context, counters: readonly Counter[]): Along | null {
  const { ramp, terms } = context;
  if (ramp === null) return null;
  const temperature = seenOf(context, 'temperature');
  const height = seenOf(context, 'pressureAltitude');
  const burnt = counters.map(({ looks }) =>
    looks.map(({ at, kg, by }): SeenBy => ({ at, value: kg, by })),
  );
  const mach = seenOf(context, 'mach').filter(({ value }) => isFlyableMach(value));
  const lines = [temperature, height, mach, ...burnt];
  return {
    weightN: (at) => {
      const burntKg = burnt.reduce(
        (total, seen) => (seen.length === 0 ? total : total + valueOnLines(seen, at)),
        0,
      );
      return (ramp.massKg - burntKg) * STANDARD_GRAVITY_M_PER_S2;
    },
    air: (at) => {
      const { cardAir } = terms;
      const pressureAltitudeM =
        height.length === 0 ? cardAir.pressureAltitudeM : valueOnLines(height, at);
      const state =
        temperature.length === 0
          ? airState({ pressureAltitudeM })
          : airState({ pressureAltitudeM, staticTemperatureK: valueOnLines(temperature, at) });
      // A slip of the pen, higher than the air goes: the card stands in, and readings of that moment say so.
      return state.kind === 'unavailable' ? cardAir : state;
    },
    mach: (at) => (mach.length === 0 ? terms.cardMach : valueOnLines(mach, at)),
    wasAirRead: temperature.length > 0 && height.length > 0,
    corners: lines.flat().map(({ at }) => at),
    entriesWithin: (from, to) => [
      ...new Set(lines.flatMap((seen) => about(seen, from, to)).flatMap(({ by }) => by)),
      ...(ramp.by === null ? [] : [ramp.by]),
    ],
  };
}

function seenOf({ state, terms }: Context, field: AirField): readonly SeenBy[] {
  const seen: SeenBy[] = [];
  for (const glance of items(state.glances)) {
    const sample = sampleOf(terms.sheet, glance, field);
    if (sample !== null) seen.push({ at: glance.at, value: sample.value, by: glance.by });
  }
  return seen.sort((a, b) => a.at - b.at);
}

function about(seen: readonly SeenBy[], from: EpochMs, to: EpochMs): readonly SeenBy[] {
  const first = seen.findLastIndex(({ at }) => at <= from);
  const after = seen.findIndex(({ at }) => at >= to);
  return seen.slice(Math.max(0, first), after < 0 ? seen.length : after + 1);
}
