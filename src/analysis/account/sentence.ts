import type { EntryId, EpochMs } from '../../record/brand.ts';

/** Where a sentence stands in the account. */
export const CHAPTERS = ['before', 'airborne', 'after', 'sum'] as const;
export type Chapter = (typeof CHAPTERS)[number];

/** One sentence of the account, and the entries that it was made from: at least one, in order of writing it down. */
export interface Sentence {
  readonly text: string;
  readonly entries: readonly EntryId[];
}

/** A sentence before it is put in its place. */
export interface Told extends Sentence {
  /** On the flight's timeline; what sums up the flight comes last. */
  readonly at: EpochMs | 'sum';
}

export interface AccountChapter {
  readonly chapter: Chapter;
  readonly sentences: readonly Sentence[];
}
