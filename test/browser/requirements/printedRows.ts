import type { Row } from './rows.ts';

const WIDTH = 118;

/** The table of requirements: each with what it wants, then what was measured, at each size and theme. */
export function printedRows(rows: readonly Row[]): string {
  const groups = grouped(
    rows.toSorted((a, b) => numberOf(a) - numberOf(b)),
    ({ no, requirement, required }) => `${no.padEnd(4)} ${requirement}: ${required}`,
  );
  const met = (of: readonly Row[]): boolean => of.every(({ holds }) => holds);
  const numbers = grouped(rows, ({ no }) => no);
  const kept = [...numbers.values()].filter(met).length;
  return [
    'Requirements: number, value required; then value measured, at each size and theme',
    ...[...groups].flatMap(([head, of]) => [head, ...measuredLines(of)]),
    `${kept} of ${numbers.size} requirements measured are met`,
  ].join('\n');
}

function measuredLines(rows: readonly Row[]): readonly string[] {
  const same = grouped(rows, ({ measured, holds }) => `${measured}${holds ? '' : ' NOT MET'}`);
  return [...same].flatMap(([measured, of]) => {
    const places = [...new Set(of.map(({ where }) => where))].filter((where) => where !== '');
    return wrapped(`     ${measured}`, places);
  });
}

function wrapped(head: string, places: readonly string[]): readonly string[] {
  const lines = [places.length === 0 ? head : `${head} at`];
  for (const [index, place] of places.entries()) {
    const word = `${place}${index === places.length - 1 ? '' : ','}`;
    const last = lines.at(-1) ?? '';
    if (last.length + word.length < WIDTH) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else {
      lines.push(`       ${word}`);
    }
  }
  return lines;
}

function numberOf({ no }: Row): number {
  return Number(no.slice(1));
}

function grouped(
  rows: readonly Row[],
  by: (row: Row) => string,
): ReadonlyMap<string, readonly Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    groups.set(by(row), [...(groups.get(by(row)) ?? []), row]);
  }
  return groups;
}
