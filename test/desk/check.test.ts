import { describe, expect, it } from 'vitest';
import { FILE_BYTES_MAX } from '../../src/file/limits.ts';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import type { Entry } from '../../src/record/entry.ts';
import { damagedCopies } from '../browser/damagedCopies.ts';
import { chainOf, ENGINEER, mark, note, OPENED, smallFlight } from '../file/smallFlight.ts';
import { DEMO, typed } from './typed.ts';

const sound = writeTimeline(smallFlight());

/** A flight of the form that the damaged copies are made from: its tenth entry is a fuel reading. */
const inCruise = writeTimeline(
  chainOf([
    { ...OPENED, body: { ...OPENED.body, title: 'In cruise' } } as typeof OPENED,
    note('recorder on'),
    mark,
    ...['gear up', 'covers', 'level', 'suction', 'wait', 'now'].map(note),
    {
      kind: 'fuelRead',
      body: { readings: [{ instrument: 'FF1', value: 840, unit: 'lb/h' }] },
    },
    mark,
  ]),
);

describe('a sound file', () => {
  it('is called sound, with code 0 and nothing on standard error', () => {
    const { code, out, err } = typed('check a.jsonl', { 'a.jsonl': sound });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^a\.jsonl: sound\n/);
    expect(out).toContain('“Slot check” of 2031-05-06 (f1f1f1f1)');
    expect(out).toContain('Recorder   a1a1a1a1, newest entry 6');
  });

  it('counts what was withdrawn and amended in the demonstration flight', () => {
    // Its script strikes out one wrong button and amends two readings.
    expect(typed('check a.jsonl', { 'a.jsonl': DEMO }).out).toMatch(
      /Entries {4}157, 1 withdrawn, 2 amended\n/,
    );
  });
});

describe('a damaged file', () => {
  it.each(damagedCopies(inCruise))(
    'with $damage is told from a sound one, in the words of the app',
    ({ text, sentences, kept }) => {
      const { code, out, err } = typed('check a.jsonl', { 'a.jsonl': text });
      expect(code).toBe(1);
      for (const sentence of sentences) expect(out + err).toContain(sentence);
      if (kept > 0) expect(out).toMatch(new RegExp(`Entries {4}${kept}\\b`));
      else expect(out).toBe('');
    },
  );

  it('is named with line and field', () => {
    const lines = DEMO.split('\n');
    const at = lines.findIndex((line) => line.includes('"kind":"liftedOff"'));
    const text = lines
      .with(at, (lines[at] ?? '').replace(/"wall":\d+/, '"wall":"noon"'))
      .join('\n');
    const { code, out } = typed('check a.jsonl', { 'a.jsonl': text });
    expect(code).toBe(1);
    expect(out).toContain(`Line ${at + 1} was put aside: its field wall is missing or unfit.`);
  });
});

describe('what is no timeline file', () => {
  it.each([
    ['is not there', { fault: 'missing' }, 3, 'a: there is no such file.'],
    ['is a folder', { fault: 'folder' }, 3, 'a: this is a folder; name the files in it.'],
    ['may not be read', { fault: 'notAllowed' }, 3, 'a: you may not read this file.'],
    ['fails', { fault: 'failed', said: 'EIO' }, 3, 'a: it could not be read (EIO).'],
    [
      'is too large',
      { fault: 'tooLarge', bytes: FILE_BYTES_MAX + 1 },
      3,
      'a: The file has 65 MiB; a timeline file has at most 64 MiB.',
    ],
    ['is empty', '', 1, 'a: The file is empty.'],
    [
      'is a picture',
      Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0, 0),
      1,
      'this is not text',
    ],
    ['is packed by gzip', Uint8Array.of(0x1f, 0x8b, 8, 0), 1, 'a compressed file (gzip)'],
    ['is packed by zip', Uint8Array.of(0x50, 0x4b, 3, 4), 1, 'a compressed file (zip)'],
    ['is another text', 'time,altitude\n', 1, 'a: Line 1 does not say that'],
  ] as const)('%s', (_, content, code, words) => {
    const outcome = typed('check a', { a: content });
    expect(outcome.code).toBe(code);
    expect(outcome.out).toBe('');
    expect(outcome.err).toContain(words);
  });

  it('keeps no sound file from being looked at', () => {
    const { code, out, err } = typed('check gone a.jsonl', { 'a.jsonl': sound });
    expect(code).toBe(3);
    expect(out).toContain('a.jsonl: sound');
    expect(err).toBe('gone: there is no such file.\n');
  });
});

describe('copies of one flight', () => {
  const opened = smallFlight();
  const after = (entry: Entry | undefined, words: string) =>
    chainOf([note(words), mark], { after: entry, startMs: Date.UTC(2031, 4, 6, 12, 1) });

  it('are whole together when one fills the gap of the other', () => {
    const files = {
      a: writeTimeline(opened.filter(({ seq }) => seq !== 4)),
      b: writeTimeline(opened),
    };
    const { code, out } = typed('check a b', files);
    expect(code).toBe(1);
    expect(out).toContain('Entry 4 of recorder a1a1a1a1 is missing.');
    expect(out).toContain('Together, a, b: the chain is whole');
  });

  it('show a fork that neither shows alone', () => {
    const files = {
      a: writeTimeline([...opened, ...after(opened.at(-1), 'one')]),
      b: writeTimeline([...opened, ...after(opened.at(-1), 'other')]),
    };
    expect(typed('check a', files).code).toBe(0);
    expect(typed('check b', files).code).toBe(0);
    const { code, out } = typed('check a b', files);
    expect(code).toBe(1);
    expect(out).toContain('Recorder a1a1a1a1 was used twice: entry 7 exists in 2 versions.');
  });

  it('of two recorders are told recorder by recorder', () => {
    const theirs = chainOf([note('seen')], { rec: ENGINEER, startMs: Date.UTC(2031, 4, 6, 13) });
    const { code, out } = typed('check a b', {
      a: writeTimeline(opened),
      b: writeTimeline([...opened, ...theirs]),
    });
    expect(code).toBe(0);
    expect(out).toMatch(/Recorder {3}b2b2b2b2, newest entry 1/);
  });
});

describe('what a file says', () => {
  it('cannot move the cursor of a terminal or turn its writing', () => {
    const title = 'Slot\u001b[2Jcheck\u0007\u202egnorw\u009b31m';
    const opening = { ...OPENED, body: { ...OPENED.body, title } } as typeof OPENED;
    const { out } = typed('check a', { a: writeTimeline(chainOf([opening, mark])) });
    expect(out).toContain('Slot\ufffd[2Jcheck');
    expect(out.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u);
  });
});
