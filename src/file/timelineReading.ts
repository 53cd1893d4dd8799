import type { ChainFinding } from '../record/chain.ts';
import type { Entry } from '../record/entry.ts';
import type { EntryFault } from '../record/envelope.ts';
import type { TimelineHead, TimelineHeader } from './timelineFile.ts';

/** Nothing of the file could be used, and why. */
export type WholeRefusal =
  | { readonly reason: 'empty' }
  | { readonly reason: 'tooLarge'; readonly bytes: number }
  | { readonly reason: 'tooManyLines'; readonly lines: number }
  | { readonly reason: 'notTimeline'; readonly starts: string }
  | { readonly reason: 'newerFormat'; readonly found: number }
  | { readonly reason: 'noEntry'; readonly refused: readonly LineRefusal[] };

/** One line that was put aside. Its text is kept so that a person can still read it. */
export interface LineRefusal {
  /** Counted from 1, the first line included. */
  readonly line: number;
  readonly text: string;
  readonly fault: EntryFault | LineFault;
}

/** What only its neighbours can tell about a line. */
export type LineFault =
  /** Its fingerprint is not the one that the next line of its recorder, or the last line of the file, names. */
  | { readonly reason: 'altered'; readonly rec: string; readonly seq: number }
  /** What it says of its recorder and number, other lines contradict. */
  | { readonly reason: 'outOfPlace'; readonly rec: string; readonly seq: number }
  | { readonly reason: 'otherFlight'; readonly found: string; readonly expected: string }
  | { readonly reason: 'afterEnd' };

/** What is doubtful about the file as a whole, though its entries were kept. */
export type FileFinding =
  | ChainFinding
  | { readonly kind: 'noEnd'; readonly entries: number }
  | { readonly kind: 'countDiffers'; readonly said: number; readonly found: number }
  | {
      readonly kind: 'headMissing';
      readonly rec: string;
      readonly seq: number;
      readonly lastFound: number;
    }
  | { readonly kind: 'orderDiffers' }
  /** The first line does not say what the file is. */
  | { readonly kind: 'noStart' }
  /** The last line was changed; the entries that it speaks of are whole. */
  | { readonly kind: 'endDiffers' }
  | { readonly kind: 'repeated'; readonly lines: readonly number[] }
  | {
      readonly kind: 'headerDiffers';
      readonly field: string;
      readonly said: string;
      readonly found: string;
    };

export type TimelineReading =
  | { readonly kind: 'refused'; readonly refusal: WholeRefusal }
  | {
      readonly kind: 'read';
      readonly header: TimelineHeader;
      /** Sound entries by (ord, rec, seq, id), each once. */
      readonly entries: readonly Entry[];
      readonly refused: readonly LineRefusal[];
      readonly findings: readonly FileFinding[];
    };

/** A line that is an entry by itself. */
export interface Row {
  readonly line: number;
  readonly entry: Entry;
}

/** The lines of a file, each judged by itself. */
export interface SortedLines {
  readonly good: readonly Row[];
  readonly refused: readonly LineRefusal[];
  readonly repeated: readonly number[];
  readonly end: { readonly line: number; readonly end: TimelineEnd } | null;
}

/** What the last line says. */
export interface TimelineEnd {
  readonly count: number;
  readonly heads: readonly TimelineHead[];
  readonly digest: string;
}
