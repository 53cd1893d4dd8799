import type { EntryId } from '../../src/record/brand.ts';
import { blankSheet } from '../../src/record/blankSheet.ts';
import type { Draft, Stamp } from '../../src/record/entry.ts';
import type { FlightOpening } from '../../src/journal/journal.ts';

export const sheet = blankSheet({
  id: 'sheet-1',
  massUnit: 'lb',
  heightUnit: 'ft',
  tilePages: { ground: [], climb: [], cruise: [], descent: [] },
});

export const SCRIBE = { author: 'A. Example', role: 'scribe' };

export function opening(stamp: Stamp): FlightOpening {
  return {
    nature: 'flight',
    title: 'Wing sweep 3',
    date: '2031-05-06',
    device: 'tablet 1',
    sheet,
    author: SCRIBE,
    stamp,
  };
}

export const gearMoved = (stamp: Stamp, to: 'up' | 'down' = 'up'): Draft => ({
  kind: 'gearMoved',
  body: { to },
  stamp,
});

/** An entry that carries words, so that two of them differ. */
export const noted = (stamp: Stamp, words: string): Draft => ({
  kind: 'deviceNoted',
  body: { what: 'started', words },
  stamp,
});

export const closing = (stamp: Stamp, how: 'complete' | 'aborted' = 'complete'): Draft => ({
  kind: 'flightClosed',
  body: { how },
  stamp,
});

export const withdrawing = (stamp: Stamp, target: EntryId): Draft => ({
  kind: 'entryWithdrawn',
  body: { target, reason: 'wrong key' },
  stamp,
});
