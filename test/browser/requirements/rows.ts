import type { RunnerTestCase } from 'vitest';

/** One line of the table of requirements: what is wanted, and what was measured where. */
export interface Row {
  /** `R1` to `R42` of the cockpit requirements. */
  readonly no: string;
  readonly requirement: string;
  readonly required: string;
  readonly measured: string;
  /** Size, millimetre scale or theme; empty where none of them matters. */
  readonly where: string;
  readonly holds: boolean;
}

declare module 'vitest' {
  interface TaskMeta {
    /** What the test measured, for the table that is printed after the run. */
    rows?: readonly Row[];
  }
}

/**
 * Enters rows into the table that is printed after the run.
 *
 * @returns those that do not hold: a test expects none
 */
export function tabled(task: Readonly<RunnerTestCase>, rows: readonly Row[]): readonly Row[] {
  task.meta.rows = [...(task.meta.rows ?? []), ...rows];
  return rows.filter(({ holds }) => !holds);
}

type About = Pick<Row, 'no' | 'requirement' | 'required'>;

/** A row for what either is so or not: measured in the words of what was seen. */
export function seen(about: About, measured: string, holds: boolean, where = ''): Row {
  return { ...about, measured, holds, where };
}

/** A row for a figure that must not be below a limit. */
export function atLeast(
  about: Omit<About, 'required'>,
  given: {
    readonly limit: number;
    readonly value: number;
    readonly unit: string;
    readonly decimals?: number;
    /** What the measuring itself may be off by. */
    readonly within?: number;
    readonly where?: string;
  },
): Row {
  const { limit, value, unit, decimals = 1, within = 0, where = '' } = given;
  return {
    ...about,
    required: `at least ${limit} ${unit}`,
    measured: `${value.toFixed(decimals)} ${unit}`,
    where,
    holds: value >= limit - within,
  };
}

/** A row for a figure that must not be above a limit. */
export function atMost(
  about: Omit<About, 'required'>,
  given: {
    readonly limit: number;
    readonly value: number;
    readonly unit: string;
    readonly decimals?: number;
    readonly where?: string;
  },
): Row {
  const { limit, value, unit, decimals = 1, where = '' } = given;
  return {
    ...about,
    required: `at most ${limit} ${unit}`,
    measured: `${value.toFixed(decimals)} ${unit}`,
    where,
    holds: value <= limit,
  };
}
