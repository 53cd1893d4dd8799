import type { Entry } from '../../src/record/entry.ts';
import { parseEntry } from '../../src/record/parse.ts';
import { readTimeline } from '../../src/file/readTimeline.ts';
import { headsOf, writeTimeline } from '../../src/file/timelineFile.ts';
import { findingWords, lineRefusalWords, wholeRefusalWords } from '../../src/file/words.ts';
import { chanceOf } from '../simulation/chance.ts';
import { mutated } from './mutate.ts';
import { entriesFromElsewhere, sampleFlight } from './sampleFlight.ts';
import { gathered, type DrillSeen, type RoundSeen } from './seen.ts';

const ENTRIES = sampleFlight();
const LINES = writeTimeline(ENTRIES).trimEnd().split('\n');
const ELSEWHERE = entriesFromElsewhere();
const AUTHENTIC = new Map([...ENTRIES, ...ELSEWHERE].map((entry) => [entry.line, entry]));
const HEADS = headsOf(ENTRIES);

/**
 * Files to which up to four things happened: none stops the reader, none passes unnamed, and no line is taken for an
 * entry that nobody wrote, unless the lines that would tell went with it. Those are counted in the note.
 */
export function mutatedFiles(rounds: number, seed: number): DrillSeen {
  let untold = 0;
  const seen = gathered('files mutated', rounds, (round) => {
    const one = judged(round, seed);
    untold += one.untold;
    return one;
  });
  return { ...seen, note: `${untold} edits that no line left in the file could tell` };
}

/** The file of one round, for a failing number to be looked at. */
function mutatedFile(round: number, seed: number): string {
  const others = ELSEWHERE.map(({ line }) => line);
  return mutated(LINES, chanceOf(seed, round), others).join('\n');
}

function judged(round: number, seed: number): RoundSeen & { readonly untold: number } {
  const text = mutatedFile(round, seed);
  const lines = text
    .replace(/^\uFEFF/, '')
    .split('\n')
    .map((line) => line.replace(/\r$/, ''));
  const broken: string[] = [];
  try {
    const reading = readTimeline(text, new TextEncoder().encode(text).length);
    const prototype = Reflect.ownKeys(Object.prototype).length;
    if (prototype !== PROTOTYPE_KEYS) {
      broken.push('the prototype of all objects was changed');
    }
    if (reading.kind === 'refused') {
      return {
        faults: 1,
        lost: 0,
        untold: 0,
        broken: wordsMissing([wholeRefusalWords(reading.refusal)]),
      };
    }
    const { entries, refused, findings } = reading;
    broken.push(...wordsMissing([...refused.map(lineRefusalWords), ...findings.map(findingWords)]));
    const altered = entries.filter(({ line }) => !AUTHENTIC.has(line));
    const tellable = altered.filter((entry) => isTellable(entry, entries, lines));
    broken.push(...tellable.map(({ line }) => `took for an entry: ${line}`));
    if (refused.length + findings.length === 0 && !saysTheSame(entries, lines)) {
      broken.push('nothing was named');
    }
    const lost = soundLinesOf(lines).filter((line) => !entries.some((one) => one.line === line));
    broken.push(...lost.map((line) => `lost a sound line: ${line}`));
    const untold = altered.length - tellable.length;
    return { faults: 1, lost: lost.length + tellable.length, untold, broken };
  } catch (error) {
    return { faults: 1, lost: 0, untold: 0, broken: [`threw ${String(error)}`] };
  }
}

const PROTOTYPE_KEYS = Reflect.ownKeys(Object.prototype).length;

const wordsMissing = (sentences: readonly string[]): readonly string[] =>
  sentences.filter((sentence) => !/^[A-Z].*\.$/s.test(sentence)).map((it) => `no sentence: ${it}`);

/** Nothing is named where every entry is there and only blanks or fields unknown to this release were put in around. */
function saysTheSame(entries: readonly Entry[], lines: readonly string[]): boolean {
  return (
    entries.length === ENTRIES.length &&
    ENTRIES.every((entry) => lines.includes(entry.line)) &&
    entries.every(({ line }) => AUTHENTIC.has(line))
  );
}

/** Whether a line that was read, or a last line as it was written, speaks against this one. */
function isTellable(
  { rec, seq, prev }: Entry,
  read: readonly Entry[],
  lines: readonly string[],
): boolean {
  const witnesses = read.filter(({ line }) => AUTHENTIC.has(line));
  const wasFollowed = witnesses.some((one) => one.rec === rec && one.seq === seq + 1);
  const before = witnesses.find(({ id }) => id === prev);
  const isElsewhere = before !== undefined && (before.rec !== rec || before.seq !== seq - 1);
  const isHead = HEADS.some((head) => head.rec === rec && head.seq === seq);
  return wasFollowed || isElsewhere || (isHead && lines[endOf(lines)] === LINES.at(-1));
}

/**
 * Lines that nobody touched, but for those behind a last line, which are put aside, and those against which an edited
 * line speaks: with nothing after it, it is as good a witness as any.
 */
function soundLinesOf(lines: readonly string[]): readonly string[] {
  const end = endOf(lines);
  const before = lines.slice(0, end);
  const forged = before.flatMap((line) => {
    const read = AUTHENTIC.has(line) ? null : parseEntry(line);
    return read?.ok === true ? [read.value] : [];
  });
  const endsFalsely = end < lines.length && lines[end] !== LINES.at(-1);
  return ENTRIES.filter(
    ({ line, rec, seq }) =>
      before.includes(line) &&
      !endsFalsely &&
      !forged.some((one) => one.rec === rec && one.seq === seq + 1),
  ).map(({ line }) => line);
}

/** The first line that says what a last line says; the number of lines when there is none. */
function endOf(lines: readonly string[]): number {
  const at = lines.findIndex(
    (line, index) => index > 0 && line.startsWith('{"count":') && line.endsWith('"end"}'),
  );
  return at === -1 ? lines.length : at;
}
