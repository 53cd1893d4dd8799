const TOLD_AT_MOST = 8;

/** Names in a row; of many only the first few, and how many more. */
export function namesWords(names: readonly string[]): string {
  const more = names.length - TOLD_AT_MOST;
  return more <= 1 ? names.join(' ') : `${names.slice(0, TOLD_AT_MOST).join(' ')} and ${more} more`;
}
