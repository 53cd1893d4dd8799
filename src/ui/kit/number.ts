const MINUS = '\u2212';

/** A figure for the eye: true minus, digits in groups of three parted by `group`, `decimals` places. */
export function figure(value: number, decimals: number, group = '\u00a0'): string {
  const fixed = Math.abs(value).toFixed(decimals);
  const [whole = '0', part] = fixed.split('.');
  const grouped =
    whole.length > 4 || group === '\u00a0' ? whole.replace(/\B(?=(\d{3})+$)/g, group) : whole;
  const sign = value < 0 && Number(fixed) !== 0 ? MINUS : '';
  return `${sign}${grouped}${part === undefined ? '' : `.${part}`}`;
}

/** With its sign always: a change. */
export function change(value: number, decimals: number): string {
  const words = figure(value, decimals);
  return words.startsWith(MINUS) ? words : `+${words}`;
}

/** Places that a doubt allows: two significant digits below 1 %, one from there on. */
export function decimalsFor(halfWidth: number): number {
  if (!(halfWidth > 0)) {
    return 1;
  }
  return halfWidth >= 10 ? 0 : halfWidth < 0.1 ? 2 : 1;
}
