import { describe, expect, it } from 'vitest';
import { readSheetFile, sheetFileName, writeSheetFile } from '../../src/file/sheetFile.ts';
import { withBasis } from '../../src/record/sheetRevision.ts';
import { soundSheet } from '../record/soundSheet.ts';

const read = (text: string) => readSheetFile(text, text.length);
const refusal = (text: string) => {
  const reading = read(text);
  return reading.kind === 'refused' ? reading.because : null;
};

describe('a flight sheet file', () => {
  it('comes back as it was written', () => {
    expect(read(writeSheetFile(soundSheet()))).toEqual({
      kind: 'read',
      sheet: soundSheet(),
      findings: [],
    });
  });

  it('leaves on the ground what the sheet was held against', () => {
    const held = withBasis(soundSheet(), soundSheet());
    expect(read(writeSheetFile(held))).toMatchObject({ sheet: soundSheet(), findings: [] });
  });

  it('is read and told when it was changed in an editor', () => {
    const text = writeSheetFile(soundSheet()).replace('"mark": "QL-TST"', '"mark": "QL-TSU"');
    expect(read(text)).toMatchObject({
      kind: 'read',
      sheet: { aircraft: { mark: 'QL-TSU' } },
      findings: ['changedOutside'],
    });
  });

  it('says when it holds fields that would be lost', () => {
    const text = writeSheetFile(soundSheet()).replace('"mark":', '"paint": "white", "mark":');
    expect(read(text)).toMatchObject({ findings: ['changedOutside', 'unknownFields'] });
  });

  it.each([
    ['one that is cut off', writeSheetFile(soundSheet()).slice(0, 900), { reason: 'notJson' }],
    ['a timeline', '{"format":"x"}', { reason: 'notASheetFile' }],
    [
      'one of a newer release',
      writeSheetFile(soundSheet()).replace('"version": 1', '"version": 9'),
      { reason: 'newerVersion', found: 9 },
    ],
    [
      'one with nine engines',
      writeSheetFile(soundSheet()).replace('"engineCount": 2', '"engineCount": 9'),
      { reason: 'badField', path: 'aircraft.engineCount' },
    ],
  ])('refuses %s and says why', (_, text, because) => {
    expect(refusal(text)).toEqual(because);
  });

  it('is named by mark, title and revision', () => {
    expect(sheetFileName(soundSheet())).toBe(
      'flight-sheet-ql-tst-suction-at-two-weights-rev-a.json',
    );
  });
});
