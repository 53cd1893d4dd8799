import { describe, expect, it } from 'vitest';
import { writeCsv } from '../../src/file/csv.ts';
import { readTimeline } from '../../src/file/readTimeline.ts';
import { entriesTable } from '../../src/file/tables.ts';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import { findingWords, lineRefusalWords, wholeRefusalWords } from '../../src/file/words.ts';
import { viewOf } from '../../src/record/flight.ts';
import { HOSTILE_FILES, type HostileFile } from '../flights/hostile/hostileFiles.ts';

const read = ({ bytes }: HostileFile) =>
  readTimeline(new TextDecoder().decode(bytes), bytes.length);

describe('a file made to do harm', () => {
  it.each(HOSTILE_FILES.map((file) => [file.name, file] as const))('%s', (_name, file) => {
    const reading = read(file);
    const sentences =
      reading.kind === 'refused'
        ? [wholeRefusalWords(reading.refusal)]
        : [...reading.refused.map(lineRefusalWords), ...reading.findings.map(findingWords)];
    expect(sentences).toEqual(file.sentences);
    expect(reading.kind === 'read' ? reading.entries.length : 0).toBe(file.kept);
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
  });

  it('says in a note what it likes: it stays text, the same bytes again, and no formula', () => {
    for (const file of HOSTILE_FILES.filter(({ name }) => name.startsWith('a note of'))) {
      const reading = read(file);
      const entries = reading.kind === 'read' ? reading.entries : [];
      expect(writeTimeline(entries)).toBe(new TextDecoder().decode(file.bytes));
      const { standing, state } = viewOf(entries);
      const table = entriesTable(standing, state.sheet, {
        toBase: (at) => at,
      });
      // The opening characters are those of the OWASP page on CSV injection.
      expect(writeCsv(table)).not.toMatch(/(?:^|,|\n)"[=+\-@\t\r](?!\d+")/);
    }
  });
});
