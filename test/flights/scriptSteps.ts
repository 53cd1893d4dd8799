import { entryId, type EntryId, type EpochMs } from '../../src/record/brand.ts';
import type { Script } from './script.ts';
import { sayingsOf, type Saying } from './scriptBodies.ts';
import { tabletClock } from './scriptToEntries.ts';

/** What one line of a script makes the scribe write, and when by the tablet's clock. */
export interface FlownStep extends Saying {
  readonly line: number;
  /** Tablet time of the event itself. */
  readonly atMs: EpochMs;
  /** Tablet time of the writing; later than the event of a late line. */
  readonly writtenMs: EpochMs;
}

/**
 * The lines of a script as things to be done at a tablet. An entry that a body names stands there as `lineId`. Turning a
 * page of tiles is no line of the script: whoever touches finds his own way to a tile.
 */
export function stepsOfScript(script: Script): readonly FlownStep[] {
  const tabletAt = tabletClock(script);
  return script.entries.flatMap((line) => {
    const atMs = tabletAt(Date.parse(line.utc));
    const writtenMs = tabletAt(Date.parse(line.enteredUtc ?? line.utc));
    const context = {
      at: atMs,
      wall: writtenMs,
      idOf: lineId,
      head: { rec: 'own', seq: 0, hash: lineId(0) },
    };
    return sayingsOf(line, context)
      .filter((saying) => saying.kind !== 'phaseChosen')
      .map((saying) => ({ ...saying, line: line.n, atMs, writtenMs }));
  });
}

/** Stands for the entry of a line before anybody wrote it. */
function lineId(line: number): EntryId {
  return entryId(line.toString(16).padStart(64, '0'));
}

export function lineOfId(id: EntryId): number {
  return Number.parseInt(id, 16);
}

/** Steps of one line together: some lines say two things. */
export function byLine(steps: readonly FlownStep[]): readonly (readonly FlownStep[])[] {
  const lines = [...new Set(steps.map(({ line }) => line))];
  return lines.map((line) => steps.filter((step) => step.line === line));
}
