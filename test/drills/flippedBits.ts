import { readTimeline } from '../../src/file/readTimeline.ts';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import type { TimelineReading } from '../../src/file/timelineReading.ts';
import { chanceOf } from '../simulation/chance.ts';
import { sampleFlight } from './sampleFlight.ts';
import { gathered, type DrillSeen, type RoundSeen } from './seen.ts';

const NEWLINE = 0x0a;
const LINES = writeTimeline(sampleFlight()).trimEnd().split('\n');
const BYTES = new TextEncoder().encode(`${LINES.join('\n')}\n`);

function readBytes(bytes: Uint8Array): TimelineReading {
  return readTimeline(new TextDecoder().decode(bytes), bytes.length);
}

/**
 * One bit of a sound file flipped: the damage is named, with its line where it is in an entry, and every entry outside
 * of the damaged line is kept as it was.
 */
export function flippedBits(rounds: number, seed: number): DrillSeen {
  return gathered('bits flipped', rounds, (round) => {
    const chance = chanceOf(seed, round);
    return flip(chance.whole(0, BYTES.length - 2), chance.whole(0, 7));
  });
}

function flip(at: number, bit: number): RoundSeen {
  const damaged = BYTES.slice();
  damaged[at] = (damaged[at] ?? 0) ^ (1 << bit);
  const reading = readBytes(damaged);
  const broken: string[] = [];
  const line = 1 + BYTES.subarray(0, at).filter((byte) => byte === NEWLINE).length;
  const where = `bit ${bit} of byte ${at} in line ${line}`;
  if (reading.kind === 'refused') {
    // The number of the format is all that the first line decides.
    const isFormat = line === 1 && reading.refusal.reason === 'newerFormat';
    return { faults: 1, lost: 0, broken: isFormat ? [] : [`${where} cost the whole file`] };
  }
  if (reading.refused.length + reading.findings.length === 0) {
    broken.push(`${where} was not named`);
  }
  const isEntry = line > 1 && line < LINES.length;
  if (isEntry && !reading.refused.some((refusal) => refusal.line === line)) {
    broken.push(`${where} was not named by its line`);
  }
  const hurt = new Set([LINES[line - 1], BYTES[at] === NEWLINE ? LINES[line] : null]);
  const kept = reading.entries.map((entry) => entry.line);
  const missing = LINES.slice(1, -1).filter((text) => !hurt.has(text) && !kept.includes(text));
  if (missing.length > 0) {
    broken.push(`${where} cost ${missing.length} sound entries`);
  }
  const altered = kept.filter((text) => !LINES.includes(text));
  if (altered.length > 0) {
    broken.push(`${where} was taken for an entry`);
  }
  return { faults: 1, lost: missing.length + altered.length, broken };
}

/** A file cut at every byte: every whole line comes back, none is made up, and the cut is named. */
export function cutEverywhere(): DrillSeen {
  return gathered('cut at every byte', BYTES.length - 1, (length) => {
    const reading = readBytes(BYTES.slice(0, length));
    const whole = LINES.slice(1, -1).filter((_, index) => endOf(index + 1) <= length);
    const kept = reading.kind === 'read' ? reading.entries.map(({ line }) => line) : [];
    const broken: string[] = [];
    if (kept.length !== whole.length || !whole.every((line) => kept.includes(line))) {
      broken.push(`${whole.length} whole lines, ${kept.length} kept`);
    }
    // Without its last line feed the file is whole.
    if (reading.kind === 'read' && !reading.findings.some(({ kind }) => kind === 'noEnd')) {
      broken.push('the cut was not named');
    }
    return { faults: 1, lost: whole.filter((line) => !kept.includes(line)).length, broken };
  });
}

/** Bytes up to the end of a line, its line feed not counted. */
function endOf(index: number): number {
  return new TextEncoder().encode(LINES.slice(0, index + 1).join('\n')).length;
}
