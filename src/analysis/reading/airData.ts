import type { EpochMs } from '../../record/brand.ts';
import type { FlightState, Glance } from '../../record/flightState.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { itemAt } from '../../record/trail.ts';
import { GLANCES_LOOKED_AT, looksOfRun, sampleOf, type AirField, type Look } from './looks.ts';

/** How much one look at a display counts in a value; looks that two readings share do not average out. */
interface LookShare {
  readonly glance: number;
  readonly share: number;
}

export interface FieldValue {
  readonly value: number;
  /** Of one look, in SI. */
  readonly standardUncertainty: number;
  readonly shares: readonly LookShare[];
  /** From this reading's own glance, another one of the run, or too old to stand. */
  readonly from: 'own' | 'run' | 'stale';
}

/** Mach, pressure altitude in m, static temperature in K, Mach per second, pressure altitude rate in m/s. */
export type AirData = Readonly<Record<AirField, FieldValue>>;

/** Air data of the same run serve this long: a choice of the live method. */
const AIR_DATA_LASTS_S = 300;
/** A slope over less is mostly display steps. */
const SHORTEST_SLOPE_S = 60;

/** As far as it is known at the reading: its own look, or the last of the same run. */
export function airDataBefore(
  state: FlightState,
  sheet: FlightSheet,
  index: number,
): AirData | null {
  return gather(state, index, (field, glance) => {
    const own = ownValue(sheet, glance, index, field);
    if (own !== null) return own;
    const earlier = looksOfRun(state, sheet, glance, index, field, [-1]);
    const last = earlier[0];
    if (last !== undefined && secondsApart(last.at, glance.at) <= AIR_DATA_LASTS_S) {
      return oneLook(last, 'run');
    }
    return slopeOf(state, sheet, glance, index, field, [-1]) ?? stale(state, sheet, index, field);
  });
}

/** After landing: between the readings before and after it in the same run, on a straight line. */
export function airDataWithin(
  state: FlightState,
  sheet: FlightSheet,
  index: number,
): AirData | null {
  return gather(state, index, (field, glance) => {
    const own = ownValue(sheet, glance, index, field);
    if (own !== null) return own;
    const before = looksOfRun(state, sheet, glance, index, field, [-1])[0];
    const after = looksOfRun(state, sheet, glance, index, field, [1])[0];
    if (before !== undefined && after !== undefined) return between(before, after, glance.at);
    const near = before ?? after;
    if (near !== undefined && secondsApart(near.at, glance.at) <= AIR_DATA_LASTS_S) {
      return oneLook(near, 'run');
    }
    return (
      slopeOf(state, sheet, glance, index, field, [-1, 1]) ?? stale(state, sheet, index, field)
    );
  });
}

type Find = (field: AirField, glance: Glance) => FieldValue | null;

function gather(state: FlightState, index: number, find: Find): AirData | null {
  const glance = itemAt(state.glances, index);
  if (glance === undefined) return null;
  const [mach, pressureAltitude, temperature, machRate, altitudeRate] = FIELDS.map((field) =>
    find(field, glance),
  );
  if (!mach || !pressureAltitude || !temperature) return null;
  return {
    mach,
    pressureAltitude,
    temperature,
    machRate: machRate ?? UNKNOWN_RATE,
    altitudeRate: altitudeRate ?? UNKNOWN_RATE,
  };
}

const FIELDS: readonly AirField[] = [
  'mach',
  'pressureAltitude',
  'temperature',
  'machRate',
  'altitudeRate',
];

/** Nobody read a rate and no slope can be drawn: the number is struck, not corrected. */
const UNKNOWN_RATE: FieldValue = { value: 0, standardUncertainty: 0, shares: [], from: 'stale' };

function ownValue(
  sheet: FlightSheet,
  glance: Glance,
  index: number,
  field: AirField,
): FieldValue | null {
  const sample = sampleOf(sheet, glance, field);
  return sample === null ? null : oneLook({ ...sample, index, at: glance.at }, 'own');
}

function between(before: Look, after: Look, at: EpochMs): FieldValue {
  const spanMs = after.at - before.at;
  const late = spanMs > 0 ? (at - before.at) / spanMs : 0.5;
  return {
    value: before.value + late * (after.value - before.value),
    standardUncertainty: Math.max(before.standardUncertainty, after.standardUncertainty),
    shares: [
      { glance: before.index, share: 1 - late },
      { glance: after.index, share: late },
    ],
    from: 'run',
  };
}

const RATED: Partial<Record<AirField, AirField>> = {
  machRate: 'mach',
  altitudeRate: 'pressureAltitude',
};

/** Slope of Mach or height over the run, where no rate was keyed. */
function slopeOf(
  state: FlightState,
  sheet: FlightSheet,
  glance: Glance,
  index: number,
  field: AirField,
  directions: readonly (1 | -1)[],
): FieldValue | null {
  const rated = RATED[field];
  if (rated === undefined) return null;
  const own = sampleOf(sheet, glance, rated);
  const looks = looksOfRun(state, sheet, glance, index, rated, directions)
    .concat(own === null ? [] : [{ ...own, index, at: glance.at }])
    .filter((look) => secondsApart(look.at, glance.at) <= AIR_DATA_LASTS_S)
    .map((look) => ({ ...look, seconds: (look.at - glance.at) / 1000 }));
  const seconds = looks.map((look) => look.seconds);
  if (looks.length < 2 || Math.max(...seconds) - Math.min(...seconds) < SHORTEST_SLOPE_S)
    return null;
  const meanS = seconds.reduce((total, s) => total + s, 0) / looks.length;
  const spread = looks.reduce((total, look) => total + (look.seconds - meanS) ** 2, 0);
  const slope =
    looks.reduce((total, look) => total + (look.seconds - meanS) * look.value, 0) / spread;
  const display = Math.max(...looks.map((look) => look.standardUncertainty));
  return {
    value: slope,
    standardUncertainty: display / Math.sqrt(spread),
    shares: [{ glance: index, share: 1 }],
    from: 'run',
  };
}

/** The newest look of any run, too old to stand: the number it gives is struck. */
function stale(
  state: FlightState,
  sheet: FlightSheet,
  index: number,
  field: AirField,
): FieldValue | null {
  for (let at = index - 1; at >= Math.max(0, index - GLANCES_LOOKED_AT); at -= 1) {
    const glance = itemAt(state.glances, at);
    const sample = glance === undefined ? null : sampleOf(sheet, glance, field);
    if (glance !== undefined && sample !== null) {
      return oneLook({ ...sample, index: at, at: glance.at }, 'stale');
    }
  }
  return null;
}

function oneLook(look: Look, from: FieldValue['from']): FieldValue {
  return {
    value: look.value,
    standardUncertainty: look.standardUncertainty,
    shares: [{ glance: look.index, share: 1 }],
    from,
  };
}

function secondsApart(a: EpochMs, b: EpochMs): number {
  return Math.abs(a - b) / 1000;
}
