import type { Reading } from '../../src/record/entry.ts';
import type { Chance } from './chance.ts';
import type { Moment } from './nature.ts';
import { TOLERANCES } from './sheet.ts';

/** Ways to make a reading bad that a gate exists for. */
export const FAULTS = [
  'machDrift',
  'climb',
  'mach',
  'turn',
  'moisture',
  'beforeOnCondition',
  'engineKeyedWrong',
] as const;
export type Fault = (typeof FAULTS)[number];

/** Flights with bad readings in them, and whether the gate against them can see them. */
export interface Spoiling {
  readonly fault: Fault;
  readonly gate: 'asItIs' | 'turnedOff';
  /** Runs that the bad readings are in. Moisture and wrong digits spoil no baseline. */
  readonly suction: 'on' | 'off';
}

/** What a reading is made of: what is so, and what the gauges are asked to show of it. */
export interface Seen {
  readonly moment: Moment;
  readonly shown: {
    readonly mach: number;
    readonly machPerMin: number;
    readonly climbFtPerMin: number;
  };
  /** Fuel burnt over what the moment needs. */
  readonly surplus: number;
}

/** At the smallest this far beyond a limit, so that scatter does not bring it back inside. */
const BEYOND = 1.5;

/**
 * The same reading gone bad. A drift or a climb here is one that no thrust follows: a gust, or speed traded for
 * height; a correction for it puts in an error as large as itself. That is why the card has limits.
 */
export function spoilt(fault: Fault, seen: Seen, sign: 1 | -1, chance: Chance): Seen {
  const { moment, shown } = seen;
  switch (fault) {
    case 'machDrift': {
      const machPerMin = sign * TOLERANCES.machPerMin * chance.between(BEYOND, 3);
      return { ...seen, shown: { ...shown, machPerMin } };
    }
    case 'climb': {
      // Much more would be struck as too large a correction, whatever the limit of the card.
      const climbFtPerMin = sign * TOLERANCES.climbFtPerMin * chance.between(1.35, 1.45);
      return { ...seen, shown: { ...shown, climbFtPerMin } };
    }
    case 'mach': {
      const off = sign * TOLERANCES.mach * chance.between(2, 4);
      return {
        ...seen,
        moment: { ...moment, mach: moment.mach + off },
        shown: { ...shown, mach: shown.mach + off },
      };
    }
    case 'turn':
      return { ...seen, moment: { ...moment, loadFactor: 1 / Math.cos(chance.between(0.4, 0.6)) } };
    case 'moisture': {
      const laminarShare = moment.laminarShare * chance.between(0, 0.4);
      return { ...seen, moment: { ...moment, laminarShare } };
    }
    case 'beforeOnCondition':
      return { ...seen, surplus: chance.between(1.02, 1.06) };
    case 'engineKeyedWrong':
      return seen;
  }
}

/** A digit lost on the way to the pad: 1160 keyed as 116. */
export function digitLost(readings: readonly Reading[], instrument: string): readonly Reading[] {
  return readings.map((row) =>
    row.instrument === instrument && 'value' in row
      ? { ...row, value: Math.floor(row.value / 10) }
      : row,
  );
}
