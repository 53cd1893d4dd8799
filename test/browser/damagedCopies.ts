import { chainOf, ENGINEER, OPENED, OTHER_FLIGHT } from '../file/smallFlight.ts';

/** A copy of a timeline file to which something happened, and what the user has to read then. */
export interface DamagedCopy {
  readonly damage: string;
  readonly text: string;
  /** In the order in which the screen shows them: about the file, then about lines. */
  readonly sentences: readonly string[];
  /** Entries that are still good. */
  readonly kept: number;
}

/** @param sound the file of a flight of one recorder: opened, recorder on, lift-off ..., a fuel reading of 840 lb/h, and more */
export function damagedCopies(sound: string): readonly DamagedCopy[] {
  const lines = sound.trimEnd().split('\n');
  const count = lines.length - 2;
  const first = JSON.parse(lines[1] ?? '');
  const [rec, flight] = [String(first.rec).slice(0, 8), String(first.flight).slice(0, 8)];
  const text = (changed: readonly string[]): string => `${changed.join('\n')}\n`;
  const edited = (at: number, from: string, to: string): string => {
    const line = lines[at] ?? '';
    if (!line.includes(from)) throw new Error(`line ${at + 1} must hold ${from}, is ${line}`);
    return text(lines.with(at, line.replace(from, to)));
  };
  /** Entry n stands on line n + 1, at index n. */
  const fuel = lines.findIndex((line) => line.includes('"value":840'));
  const stranger = chainOf([OPENED], { flight: OTHER_FLIGHT, rec: ENGINEER })[0]?.line ?? '';
  const gap = (seq: number) =>
    `Entry ${seq} of recorder ${rec} is missing. Open another copy to fill the gap.`;
  const short = `The last line speaks of ${count} entries; ${count - 1} could be read.`;
  return [
    {
      damage: 'nothing in it',
      text: '',
      sentences: ['The file is empty. Nothing was opened. Look for another copy.'],
      kept: 0,
    },
    {
      damage: 'another kind of file',
      text: 'time,altitude\n12:00,37000\n',
      sentences: [
        'Line 1 does not say that this is a flight timeline file. Nothing was opened. Choose a file that ends in .jsonl.',
      ],
      kept: 0,
    },
    {
      damage: 'a format from a newer app',
      text: edited(0, '"format":1', '"format":2'),
      sentences: [
        'The file is format 2; this app reads format 1. Nothing was opened. Update the app on the ground, then open it again.',
      ],
      kept: 0,
    },
    {
      damage: 'only its first line',
      text: text(lines.slice(0, 1)),
      sentences: [
        'The file has no entry after its first line. Nothing was opened. Look for another copy.',
      ],
      kept: 0,
    },
    {
      damage: 'cut within a line',
      text: text([...lines.slice(0, 3), lines[3]?.slice(0, 40) ?? '']),
      sentences: [
        'The file is cut: its last line is missing. 2 entries recovered; how many followed cannot be told.',
        'Line 4 was put aside: it is cut or not JSON.',
      ],
      kept: 2,
    },
    {
      damage: 'a digit of a reading edited',
      text: edited(fuel, '"value":840', '"value":940'),
      sentences: [
        gap(fuel),
        `Line ${fuel + 1} was put aside: it was changed after it was written (entry ${fuel} of recorder ${rec}; the fingerprint named after it differs).`,
      ],
      kept: count - 1,
    },
    {
      damage: 'a line taken out',
      text: text(lines.toSpliced(3, 1)),
      sentences: [short, gap(3)],
      kept: count - 1,
    },
    {
      damage: 'two lines changed places',
      text: text(lines.with(3, lines[4] ?? '').with(4, lines[3] ?? '')),
      sentences: [
        'The lines do not stand as they were saved (moved, repeated or joined by hand). Every entry was still read.',
      ],
      kept: count,
    },
    {
      damage: 'a line doubled',
      text: text(lines.toSpliced(4, 0, lines[3] ?? '')),
      sentences: ['Line 5 repeats an entry and counts once.'],
      kept: count,
    },
    {
      damage: 'a line of another flight joined in',
      text: text(lines.toSpliced(4, 0, stranger)),
      sentences: [`Line 5 was put aside: it belongs to another flight (f2f2f2f2, not ${flight}).`],
      kept: count,
    },
    {
      damage: 'spaces put in by an editor',
      text: edited(3, '"body":', '"body": '),
      sentences: [
        short,
        gap(3),
        'Line 4 was put aside: it is not spelt as the record spells it (spaces, order of fields, or a field given twice).',
      ],
      kept: count - 1,
    },
    {
      damage: 'a field that reaches for the prototype',
      text: edited(fuel, '"body":{', '"body":{"__proto__":{},'),
      sentences: [
        short,
        gap(fuel),
        `Line ${fuel + 1} was put aside: it has a field named __proto__, which no entry has.`,
      ],
      kept: count - 1,
    },
    {
      damage: 'a line nested a thousand deep',
      text: text(lines.toSpliced(4, 0, `${'['.repeat(1000)}${']'.repeat(1000)}`)),
      sentences: ['Line 5 was put aside: it is nested too deeply to be an entry.'],
      kept: count,
    },
    {
      damage: 'a line put after the end',
      text: text([...lines, stranger]),
      sentences: [
        `Line ${lines.length + 1} was put aside: it stands after the last line of the file.`,
      ],
      kept: count,
    },
    {
      damage: 'the title in the first line edited',
      text: edited(0, '"title":"In cruise"', '"title":"Record flight"'),
      sentences: [
        'Line 1 gives the title as “Record flight”; the entries say “In cruise”, and that holds.',
      ],
      kept: count,
    },
  ];
}
