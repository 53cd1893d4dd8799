import type { RunnerTestCase } from 'vitest';
import type { Hand } from './hand.ts';

/** One task of the newcomer's trial as a machine did it. */
export interface TrialRow {
  /** 1 to 12 of the trial. */
  readonly task: number;
  readonly words: string;
  /** Size of the tablet. */
  readonly where: string;
  readonly touches: number;
  /** By the model of a hand: no measured time. Null where the task is not timed. */
  readonly seconds: number | null;
  readonly mark: string;
  /** What was not as the task wants it; none when the task is passed. */
  readonly faults: readonly string[];
}

declare module 'vitest' {
  interface TaskMeta {
    trial?: readonly TrialRow[];
  }
}

/** What must be so, each by the words for its not being so. */
export type Claims = Readonly<Record<string, boolean>>;

/**
 * Enters a task into the table that is printed after the run.
 *
 * @returns what was not as the task wants it: a test expects nothing
 */
export function trialled(
  task: Readonly<RunnerTestCase>,
  about: Pick<TrialRow, 'task' | 'words' | 'where' | 'mark'>,
  hand: Pick<Hand, 'touches'> & { readonly seconds: number | null },
  claims: Claims,
): readonly string[] {
  const faults = Object.entries(claims).flatMap(([words, holds]) => (holds ? [] : [words]));
  const row = { ...about, touches: hand.touches, seconds: hand.seconds, faults };
  task.meta.trial = [...(task.meta.trial ?? []), row];
  return faults;
}
