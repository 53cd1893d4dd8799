import { epochMs, recorderId, type EntryId } from '../../src/record/brand.ts';
import { sealEntry } from '../../src/record/chain.ts';
import type { Draft, Entry } from '../../src/record/entry.ts';
import { FLIGHT, OPENED } from '../file/smallFlight.ts';

const START = Date.UTC(2031, 4, 6, 12, 0, 0);

/** A long flight of one recorder: opened, then fuel readings, notes and marks a second apart. */
export function manyEntries(count: number, recorder = 1): readonly Entry[] {
  const rec = recorderId(recorder.toString(16).padStart(32, '0'));
  const entries: Entry[] = [];
  let prev: EntryId | null = null;
  for (let index = 0; index < count; index += 1) {
    const wall = epochMs(START + index * 1000 + recorder);
    const entry = sealEntry({
      flight: FLIGHT,
      rec,
      seq: index + 1,
      prev,
      ord: wall,
      draft: { ...contentAt(index), stamp: { wall, mono: index * 1000, boot: 'boot-1' } } as Draft,
      author: { author: 'S1', role: 'scribe' },
    });
    entries.push(entry);
    prev = entry.id;
  }
  return entries;
}

function contentAt(index: number): Omit<Draft, 'stamp'> {
  if (index === 0) {
    return OPENED;
  }
  switch (index % 3) {
    case 0:
      return {
        kind: 'fuelRead',
        body: {
          readings: [
            { instrument: 'FF1', value: 400 + (index % 40), unit: 'kg/h' },
            { instrument: 'FF2', value: 402 + (index % 38), unit: 'kg/h' },
          ],
        },
      };
    case 1:
      return { kind: 'noted', body: { words: `haze ahead, ${index} of the day` } };
    default:
      return { kind: 'markMade', body: {} };
  }
}
