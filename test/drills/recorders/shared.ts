import { readTimeline } from '../../../src/file/readTimeline.ts';
import { writeTimeline } from '../../../src/file/timelineFile.ts';
import type { Entry } from '../../../src/record/entry.ts';
import type { Chance } from '../../simulation/chance.ts';

/** What may happen to a file on its way. */
export const MISHAPS = ['none', 'cut', 'bit', 'dropped', 'doubled', 'swapped', 'late'] as const;
type Mishap = (typeof MISHAPS)[number];

/** The entries as they come out of a file that was handed over, after one mishap on the way. */
export function handedOver(
  entries: readonly Entry[],
  mishap: Mishap,
  chance: Chance,
): readonly Entry[] {
  const reading = readTimeline(damaged(writeTimeline(entries), mishap, chance), 0);
  return reading.kind === 'read' ? reading.entries : [];
}

function damaged(text: string, mishap: Mishap, chance: Chance): string {
  const lines = text.trimEnd().split('\n');
  const at = chance.whole(0, lines.length - 1);
  const other = chance.whole(0, lines.length - 1);
  const [line = '', second = ''] = [lines[at], lines[other]];
  const joined = (changed: readonly string[]) => `${changed.join('\n')}\n`;
  switch (mishap) {
    case 'cut':
      return text.slice(0, chance.whole(0, text.length));
    case 'bit': {
      const bytes = new TextEncoder().encode(text);
      const byte = chance.whole(0, bytes.length - 2);
      bytes[byte] = (bytes[byte] ?? 0) ^ (1 << chance.whole(0, 7));
      return new TextDecoder().decode(bytes);
    }
    case 'dropped':
      return joined(lines.toSpliced(at, 1));
    case 'doubled':
      return joined(lines.toSpliced(other, 0, line));
    case 'swapped':
      return joined(lines.with(at, second).with(other, line));
    case 'none':
    case 'late':
      return text;
  }
}
