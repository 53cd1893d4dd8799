/** Words that fit a column; what was cut off says so. Cut between words: half a figure would be another figure. */
export function cut(words: string, letters: number): string {
  if (words.length <= letters) return words;
  const fits = words.slice(0, letters - 1);
  const isWhole = words[letters - 1] === ' ';
  const whole = isWhole ? fits : fits.slice(0, Math.max(0, fits.lastIndexOf(' ')));
  return `${(whole === '' ? fits : whole).trimEnd()}…`;
}
