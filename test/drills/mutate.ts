import { canonicalJson } from '../../src/record/canonical.ts';
import type { Chance } from '../simulation/chance.ts';

const HEX = '0123456789abcdef';
const WEIRD = [
  '__proto__',
  'constructor',
  '',
  null,
  true,
  -1,
  0,
  1e308,
  Number.MAX_SAFE_INTEGER,
  [],
  {},
  '\u202e\u0000',
] as const;

type Lines = readonly string[];
type Mutation = (lines: Lines, chance: Chance, others: Lines) => Lines;

const atLine = (lines: Lines, chance: Chance) => chance.whole(0, Math.max(0, lines.length - 1));

/** Bytes of one line, changed; the whole goes through UTF-8 as a file does. */
function inBytes(change: (bytes: number[], chance: Chance) => void): Mutation {
  return (lines, chance) => {
    const bytes = [...new TextEncoder().encode(lines.join('\n'))];
    change(bytes, chance);
    return new TextDecoder().decode(Uint8Array.from(bytes)).split('\n');
  };
}

/** One field of one line given another value, written as the record writes it: the edit of somebody who knows how. */
function inField(change: (value: unknown, chance: Chance) => unknown): Mutation {
  return (lines, chance) => {
    const at = atLine(lines, chance);
    try {
      const fields = Object.entries(JSON.parse(lines[at] ?? ''));
      const which = chance.whole(0, fields.length - 1);
      const changed = fields.map(([key, value], index) => [
        key,
        index === which ? change(value, chance) : value,
      ]);
      return lines.with(at, canonicalJson(Object.fromEntries(changed)));
    } catch {
      return lines;
    }
  };
}

function nearby(value: unknown, chance: Chance): unknown {
  if (typeof value === 'number') {
    return value + chance.oneOf([-1, 1, 1000]);
  }
  if (typeof value === 'string' && value !== '') {
    const at = chance.whole(0, value.length - 1);
    return value.slice(0, at) + (HEX[chance.whole(0, 15)] ?? '') + value.slice(at + 1);
  }
  if (typeof value === 'object' && value !== null && 'words' in value) {
    return { ...value, words: 'something else' };
  }
  return value;
}

const MUTATIONS: readonly [Mutation, ...Mutation[]] = [
  inBytes((bytes, chance) => {
    const at = chance.whole(0, bytes.length - 1);
    bytes[at] = (bytes[at] ?? 0) ^ (1 << chance.whole(0, 7));
  }),
  inBytes((bytes, chance) => {
    bytes[chance.whole(0, bytes.length - 1)] = chance.whole(0, 255);
  }),
  inBytes((bytes, chance) => {
    const extra = Array.from({ length: chance.whole(1, 8) }, () => chance.whole(0, 255));
    bytes.splice(chance.whole(0, bytes.length), 0, ...extra);
  }),
  inBytes((bytes, chance) => {
    bytes.splice(chance.whole(0, bytes.length - 1), chance.whole(1, 200));
  }),
  inBytes((bytes, chance) => {
    bytes.length = chance.whole(0, bytes.length);
  }),
  (lines, chance) => lines.toSpliced(atLine(lines, chance), 1),
  (lines, chance) => lines.toSpliced(atLine(lines, chance), 0, lines[atLine(lines, chance)] ?? ''),
  (lines, chance) => {
    const [a, b] = [atLine(lines, chance), atLine(lines, chance)];
    return lines.with(a, lines[b] ?? '').with(b, lines[a] ?? '');
  },
  (lines, chance, others) =>
    lines.toSpliced(atLine(lines, chance), 0, others[atLine(others, chance)] ?? ''),
  (lines, chance) => {
    const at = atLine(lines, chance);
    const deep = chance.whole(1, 5_000);
    return lines.toSpliced(at, 0, '['.repeat(deep) + ']'.repeat(deep));
  },
  (lines) => lines.map((line) => `${line}\r`),
  inField(nearby),
  inField(nearby),
  inField((_, chance) => chance.oneOf(WEIRD)),
];

/** A file to which one to four things happened, the same for the same draws. */
export function mutated(lines: Lines, chance: Chance, others: Lines): Lines {
  let changed = lines;
  for (let left = chance.whole(1, 4); left > 0 && changed.join('').length > 0; left -= 1) {
    changed = chance.oneOf(MUTATIONS)(changed, chance, others);
  }
  return changed.length === 0 ? [''] : changed;
}
