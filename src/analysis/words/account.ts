import type { Chapter } from '../account/sentence.ts';

const CHAPTERS: Readonly<Record<Chapter, string>> = {
  before: 'Before take-off',
  airborne: 'In the air',
  after: 'After landing',
  sum: 'What it came to',
};

export function chapterWords(chapter: Chapter): string {
  return CHAPTERS[chapter];
}
