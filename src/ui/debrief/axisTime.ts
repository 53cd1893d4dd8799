import { epochMs, type EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { TimeBase } from './timeBase.ts';
import { UTC_GRID, type TickGrid } from './timeline/timeScale.ts';
import { clockWords, minuteWords, ordinalDate, spokenClock, spokenLength } from './timeWords.ts';

/** How the shared axis counts: UTC, UTC with the day of the year, from take-off, or from the first time hack. */
export const AXIS_CHOICES = ['utc', 'dayOfYear', 'fromTakeOff', 'sinceHack'] as const;
export type AxisChoice = (typeof AXIS_CHOICES)[number];

/** One way to say every time of Debrief: on the axis, on the cursor, in the table and to a reader. */
export interface AxisTime extends TickGrid {
  readonly choice: AxisChoice;
  /** Head of a column of times, unit included. */
  readonly head: string;
  /** Room that a label of the axis takes. */
  readonly labelPx: number;
  /** To the second. */
  readonly words: (at: EpochMs) => string;
  readonly tickWords: (at: EpochMs) => string;
  /** As a reader says it. */
  readonly spoken: (at: EpochMs) => string;
}

/** Where each axis of a flight begins; null where nobody marked that. */
export interface AxisZeros {
  readonly takeOff: EpochMs | null;
  readonly hack: { readonly at: EpochMs; readonly number: number } | null;
}

const SECOND_MS = 1000;
const MINUTE_MS = 60_000;
const SECOND_STEPS_MS = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000].map((s) => s * SECOND_MS);

/** Lift-off, else the roll; and what the master clock showed at the first hack. All as shown. */
export function axisZerosOf(view: FlightView, base: TimeBase): AxisZeros {
  const { milestones, hacks } = view.state;
  const left = milestones.liftOff ?? milestones.takeOffRoll;
  const by = left === undefined ? undefined : view.byId(left.by);
  const first = hacks[0];
  return {
    takeOff:
      left === undefined ? null : by === undefined ? left.at : base.shown(left.at, by.entry.rec),
    hack: first === undefined ? null : { at: first.master, number: first.hack },
  };
}

/** The axis as chosen; UTC where this flight has nothing to count from. */
export function axisTimeOf(choice: AxisChoice, zeros: AxisZeros): AxisTime {
  switch (choice) {
    case 'utc':
      return UTC;
    case 'dayOfYear':
      return DAY_OF_YEAR;
    case 'fromTakeOff':
      return zeros.takeOff === null ? UTC : fromTakeOff(zeros.takeOff);
    case 'sinceHack':
      return zeros.hack === null ? UTC : sinceHack(zeros.hack.at, zeros.hack.number);
  }
}

const UTC: AxisTime = {
  choice: 'utc',
  head: 'Time, Z',
  labelPx: 62,
  ...UTC_GRID,
  words: clockWords,
  tickWords: (at) => `${minuteWords(at)}Z`,
  spoken: spokenClock,
};

const dayOfYear = (at: EpochMs): string => ordinalDate(at).slice('yyyy-'.length);
const toSecond = (at: EpochMs): EpochMs => epochMs(Math.round(at / SECOND_MS) * SECOND_MS);

const DAY_OF_YEAR: AxisTime = {
  ...UTC,
  choice: 'dayOfYear',
  head: 'Day and time, Z',
  labelPx: 84,
  words: (at) => `${dayOfYear(toSecond(at))}:${clockWords(at)}`,
  tickWords: (at) => `${dayOfYear(at)}:${minuteWords(at)}Z`,
  spoken: (at) => `day ${Number(dayOfYear(toSecond(at)))}, ${spokenClock(at)}`,
};

function fromTakeOff(zero: EpochMs): AxisTime {
  return {
    choice: 'fromTakeOff',
    head: 'Take-off, min',
    labelPx: 62,
    zero,
    stepsMs: UTC_GRID.stepsMs,
    words: (at) => {
      const totalS = Math.round((at - zero) / SECOND_MS);
      const seconds = String(Math.abs(totalS) % 60).padStart(2, '0');
      return `${signOf(totalS)}${Math.floor(Math.abs(totalS) / 60)}:${seconds}`;
    },
    tickWords: (at) => {
      const minutes = Math.round((at - zero) / MINUTE_MS);
      return `${signOf(minutes)}${Math.abs(minutes)}`;
    },
    spoken: (at) => spokenFrom(at - zero, spokenLength(at - zero), 'take-off'),
  };
}

function sinceHack(zero: EpochMs, number: number): AxisTime {
  const words = (at: EpochMs): string => {
    const seconds = Math.round((at - zero) / SECOND_MS);
    return `${signOf(seconds)}${Math.abs(seconds)}`;
  };
  return {
    choice: 'sinceHack',
    head: `Hack ${number}, s`,
    labelPx: 62,
    zero,
    stepsMs: SECOND_STEPS_MS,
    words,
    tickWords: words,
    spoken: (at) => {
      const seconds = Math.round(Math.abs(at - zero) / SECOND_MS);
      const length = `${seconds} second${seconds === 1 ? '' : 's'}`;
      return spokenFrom(at - zero, length, `time hack ${number}`);
    },
  };
}

const signOf = (count: number): string => (count < 0 ? '\u2212' : '+');

function spokenFrom(byMs: number, length: string, zero: string): string {
  return Math.round(byMs / SECOND_MS) < 0 ? `${length} before ${zero}` : `${length} after ${zero}`;
}
