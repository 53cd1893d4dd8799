import { entryId } from '../../src/record/brand.ts';
import type { Entry } from '../../src/record/entry.ts';
import { headCode } from '../../src/record/headCode.ts';
import { union } from '../../src/record/merge.ts';
import { headsOf, writeTimeline } from '../../src/file/timelineFile.ts';
import { chainOf, note } from '../file/smallFlight.ts';
import { recorderId } from '../../src/record/brand.ts';
import { chanceOf, type Chance } from '../simulation/chance.ts';
import { entriesFromElsewhere, sampleFlight } from './sampleFlight.ts';
import { gathered, type DrillSeen } from './seen.ts';

/** Two recorders, one of them used twice, and a third whose clock is half an hour behind. */
const POOL: readonly Entry[] = [
  ...sampleFlight(),
  ...entriesFromElsewhere(),
  ...chainOf(
    Array.from({ length: 8 }, (_, index) => note(`behind ${index}`)),
    { rec: recorderId('c3'.repeat(16)), startMs: Date.UTC(2031, 4, 6, 11, 30, 0) },
  ),
];
const LINES = new Set(POOL.map(({ line }) => line));

/** Copies of a flight merged in any order, in any grouping, some more than once: one set, one file, one head code. */
export function merges(rounds: number, seed: number): DrillSeen {
  const whole = fileAndCode(POOL);
  return gathered('merges', rounds, (round) => {
    const chance = chanceOf(seed, round);
    const merged = grouped(copiesOf(chance), chance);
    const lines = new Set(merged.map(({ line }) => line));
    const gone = [...LINES].filter((line) => !lines.has(line)).length;
    const doubled = merged.length - lines.size;
    const broken: string[] = [];
    if (gone + doubled > 0) broken.push(`${gone} entries gone, ${doubled} doubled`);
    if (fileAndCode(merged) !== whole) broken.push('another file or head code');
    return { faults: 0, lost: gone + doubled, broken };
  });
}

/** Two to six copies, each of some of the entries in any order; every entry is in one of them at least. */
function copiesOf(chance: Chance): Entry[][] {
  const copies = Array.from({ length: chance.whole(2, 6) }, (): Entry[] => []);
  for (const entry of POOL) {
    const least = chance.whole(0, copies.length - 1);
    for (const [index, copy] of copies.entries()) {
      if (index === least || chance.happens(0.4)) {
        copy.splice(chance.happens(0.7) ? copy.length : chance.whole(0, copy.length), 0, entry);
      }
    }
  }
  return copies;
}

function grouped(copies: readonly (readonly Entry[])[], chance: Chance): readonly Entry[] {
  let left = [...copies];
  while (left.length > 1) {
    const a = left[chance.whole(0, left.length - 1)] ?? [];
    const others = left.filter((one) => one !== a);
    const b = others[chance.whole(0, others.length - 1)] ?? [];
    const both = union(a, b);
    left = [...others.filter((one) => one !== b), chance.happens(0.2) ? union(both, a) : both];
  }
  return left[0] ?? [];
}

function fileAndCode(entries: readonly Entry[]): string {
  const code = headCode(headsOf(entries).map(({ hash }) => entryId(hash)));
  return `${code}\n${writeTimeline(entries)}`;
}
