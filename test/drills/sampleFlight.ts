import type { Entry } from '../../src/record/entry.ts';
import { union } from '../../src/record/merge.ts';
import { chainOf, ENGINEER, mark, note, OPENED } from '../file/smallFlight.ts';

const NOON = Date.UTC(2031, 4, 6, 12, 0, 0);

/** A short flight of two recorders, the engineer's entries between the scribe's. */
export function sampleFlight(): readonly Entry[] {
  const scribe = chainOf([OPENED, note('haze'), mark, note('zürich café ✓'), mark, note('=1+1')]);
  const joined = {
    kind: 'recorderJoined',
    body: { device: 'engineer tablet', purpose: 'inFlight' },
  } as const;
  return union(
    scribe,
    chainOf([joined, mark, note('left wing'), mark], { rec: ENGINEER, startMs: NOON + 1_500 }),
  );
}

/** Entries that no copy of the sample flight has: of a third recorder, and further ones of the engineer. */
export function entriesFromElsewhere(): readonly Entry[] {
  const engineers = sampleFlight().filter(({ rec }) => rec === ENGINEER);
  return [
    ...chainOf([note('later')], { rec: ENGINEER, startMs: NOON + 60_000, after: engineers.at(-1) }),
    ...chainOf([mark], { rec: ENGINEER, startMs: NOON + 61_000, after: engineers[1] }),
  ];
}
