import { median } from '../../aero/statistics/descriptive.ts';
import type { Suspicion } from './suspected.ts';
import type { EngineReading, FlowLook, LookedRun } from './flowReadings.ts';

/** Fewer other looks are no habit (a choice). */
const FEWEST_OTHERS = 2;
/** At least this share of the others has the same sign, or there is no habit (a choice). */
const HABIT_FRACTION = 0.75;
/** A difference between engines smaller than this many of its doubts has no sign to flip (a choice). */
const DIFFERENCE_DOUBTS = 2;
/** Exchanged engines leave their sum as it was: beyond this share of the others' it is another slip (a choice). */
const SUM_FRACTION = 0.03;

type Swapped = Extract<Suspicion, { kind: 'enginesSwapped' }>;

/** Looks whose split between two engines has the other sign than the rest of the run, and would fit if exchanged. */
export function swappedEngines({ looks }: LookedRun): readonly Swapped[] {
  return looks.flatMap((look) =>
    pairsOf(look).flatMap(([one, other]): readonly Swapped[] => {
      const others = looks.filter(({ glance }) => glance !== look.glance);
      const habits = others.flatMap((of) => splitOf(of, one.place, other.place) ?? []);
      if (habits.length < FEWEST_OTHERS) return [];
      const habit = median(habits);
      const alike = habits.filter((of) => of * habit > 0).length;
      if (alike < HABIT_FRACTION * habits.length) return [];
      const split = one.reading.kgPerS - other.reading.kgPerS;
      const least =
        DIFFERENCE_DOUBTS * Math.hypot(one.reading.lookKgPerS, other.reading.lookKgPerS);
      const flips = split * habit < 0 && Math.min(Math.abs(split), Math.abs(habit)) > least;
      const sums = others.flatMap((of) => sumOf(of) ?? []);
      const sum = sumOf(look) ?? 0;
      const whole = median(sums.length === 0 ? [sum] : sums);
      if (Math.abs(sum - whole) > SUM_FRACTION * whole) return [];
      // Exchanged, the split is the habit but for the scatter of both.
      if (!flips || Math.abs(split + habit) > 2 * least) return [];
      return [
        {
          kind: 'enginesSwapped',
          glance: look.glance,
          instruments: [one.reading.gauge.id, other.reading.gauge.id],
          candidates: [other.reading.value, one.reading.value],
          entries: [...new Set([...look.by, ...others.flatMap(({ by }) => by)])],
        },
      ];
    }),
  );
}

interface Placed {
  readonly place: number;
  readonly reading: EngineReading;
}

/** Engines read in one unit, two by two: exchanged digits of two units would not be the same flow. */
function pairsOf({ engines }: FlowLook): readonly (readonly [Placed, Placed])[] {
  const read = engines.flatMap((reading, place) => (reading === null ? [] : [{ place, reading }]));
  return read.flatMap((one, index) =>
    read
      .slice(index + 1)
      .filter((other) => other.reading.gauge.unit === one.reading.gauge.unit)
      .map((other) => [one, other] as const),
  );
}

function sumOf({ engines }: FlowLook): number | null {
  if (engines.includes(null)) return null;
  return engines.reduce((total, engine) => total + (engine?.kgPerS ?? 0), 0);
}

function splitOf({ engines }: FlowLook, one: number, other: number): number | null {
  const [a, b] = [engines[one], engines[other]];
  return a && b ? a.kgPerS - b.kgPerS : null;
}
