import type { Chance } from './chance.ts';
import type { Seen } from './faults.ts';
import type { Moment } from './nature.ts';

const FOOT_M = 0.3048;

/** How one run wanders about its card. */
export interface Wander {
  readonly machOff: number;
  readonly machPerMin: number;
  readonly machSwingPerMin: number;
  readonly altitudeOffFt: number;
  readonly climbFtPerMin: number;
  readonly climbSwingFtPerMin: number;
  readonly periodS: number;
  readonly phase: number;
  readonly middleS: number;
}

export function someWander(chance: Chance, machHold: number, middleS: number): Wander {
  return {
    // What the flight sheet doubts is a run's whole departure: a steady part and a drift over minutes.
    machOff: chance.normal(0.95 * machHold),
    machPerMin: chance.normal(0.05 * machHold),
    machSwingPerMin: chance.between(0, 0.0004),
    altitudeOffFt: chance.normal(25),
    climbFtPerMin: chance.normal(3),
    climbSwingFtPerMin: chance.between(0, 25),
    periodS: chance.between(60, 140),
    phase: chance.between(0, 2 * Math.PI),
    middleS,
  };
}

/** Where the aircraft is at this second of the flight, for all that it should hold `steady`; thrust follows. */
export function wandered(wander: Wander, atS: number, steady: Moment): Seen {
  const sinceMin = (atS - wander.middleS) / 60;
  const turn = (2 * Math.PI * atS) / wander.periodS + wander.phase;
  const swingMin = wander.periodS / 60 / (2 * Math.PI);
  const machPerMin = wander.machPerMin + wander.machSwingPerMin * Math.cos(turn);
  const climbFtPerMin = wander.climbFtPerMin + wander.climbSwingFtPerMin * Math.sin(turn);
  const mach =
    steady.mach +
    wander.machOff +
    wander.machPerMin * sinceMin +
    wander.machSwingPerMin * swingMin * Math.sin(turn);
  const offFt =
    wander.altitudeOffFt +
    wander.climbFtPerMin * sinceMin -
    wander.climbSwingFtPerMin * swingMin * Math.cos(turn);
  return {
    moment: {
      ...steady,
      pressureAltitudeM: steady.pressureAltitudeM + offFt * FOOT_M,
      mach,
      climbMPerS: (climbFtPerMin * FOOT_M) / 60,
      machPerS: machPerMin / 60,
    },
    shown: { mach, machPerMin, climbFtPerMin },
    surplus: 1,
  };
}
