import { accountOf } from '../../analysis/account/account.ts';
import { chapterWords } from '../../analysis/words/account.ts';
import type { EntryId } from '../../record/brand.ts';
import { headed, item } from './layout.ts';
import type { Paper } from './paper.ts';

/** A sentence that sums up the flight rests on most of it: the first few lead to the rest. */
const CITED_AT_MOST = 8;

/** The flight in words, each sentence with the entries that it was made from. */
export function accountSection(paper: Paper): readonly string[] {
  const chapters = accountOf(paper.view, paper.results);
  return headed(
    'The flight in words',
    chapters.flatMap(({ chapter, sentences }, place) => [
      ...(place === 0 ? [] : ['']),
      `${chapterWords(chapter)}:`,
      ...sentences.flatMap(({ text, entries }) => item(`${text} ${cited(paper, entries)}`)),
    ]),
  );
}

function cited(paper: Paper, entries: readonly EntryId[]): string {
  const more = entries.length - CITED_AT_MOST;
  return more <= 1
    ? paper.cite(entries)
    : `${paper.cite(entries.slice(0, CITED_AT_MOST))} and ${more} more`;
}
