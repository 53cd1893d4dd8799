import { describe, expect, it } from 'vitest';
import { sheetChanges } from '../../src/record/sheetDiff.ts';
import { withValue, type SheetPath } from '../../src/record/sheetEdit.ts';
import {
  changesSinceBasis,
  isSigned,
  nextRevision,
  signedBy,
  withBasis,
  withoutBasis,
} from '../../src/record/sheetRevision.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { soundSheet } from './soundSheet.ts';

function edited(sheet: FlightSheet, path: SheetPath, value: unknown): FlightSheet {
  const next = withValue(sheet, path, value);
  if (next === null) throw new Error(`the record refuses ${path}`);
  return next;
}
const told = (path: SheetPath, value: unknown) =>
  sheetChanges(soundSheet(), edited(soundSheet(), path, value)).map((words) =>
    words.replaceAll('\u00a0', ' '),
  );

describe('what changed between two flight sheets', () => {
  it('is nothing where they are alike', () => {
    expect(sheetChanges(soundSheet(), soundSheet())).toEqual([]);
  });

  it.each<readonly [SheetPath, unknown, string]>([
    ['title', 'Light', 'Title: Light, was Suction at two weights.'],
    ['aircraft.engineCount', 4, 'Aircraft, engine count: 4, was 2.'],
    [
      'aircraft.wingArea',
      { value: 46.5, unit: 'm2' },
      'Aircraft, wing area: 46.5 m², was 500 ft².',
    ],
    ['instruments.0.resolution', 20, 'Instrument FF1, resolution: 20, was 10.'],
    [
      'instruments.0.calibration.dueOn',
      undefined,
      'Instrument FF1, calibration, due on: taken away, was 2032-12-01.',
    ],
    ['instruments.1.serviceable', false, 'Instrument FF2, serviceable: no, was yes.'],
    ['limits.joker', { value: 4500, unit: 'lb' }, 'Limits, joker: 4500 lb, was 4000 lb.'],
    ['legs', ['Out', 'Back'], 'Legs: Out / Back, was none.'],
    [
      'engineMap',
      undefined,
      'Engine map: taken away, was idle flow 120 lb/h, idle doubt 20 lb/h, flow per thrust 0.7 lb/h per lbf.',
    ],
  ] as const)('names %s in words', (path, value, words) => {
    expect(told(path, value)).toEqual([words]);
  });

  it('tells a row that is new and one that is gone by its id', () => {
    expect(told('testCards.1.id', 'TP07')).toEqual([
      'Test card TP07 is new.',
      'Test card TP02 is gone.',
    ]);
  });
});

describe('a revision', () => {
  const first = signedBy({ ...soundSheet(), revisions: [] }, { person: 'P1', today: '2032-06-01' });

  it('is signed by a person on a day, and stays signed while nothing changes', () => {
    expect(first.revisions).toEqual([
      { revision: 'A', signedBy: 'P1', signedOn: '2032-06-01', changes: [] },
    ]);
    expect(isSigned(first)).toBe(true);
  });

  it('is not signed any more once something changed', () => {
    const changed = edited(first, 'limits.joker', { value: 4500, unit: 'lb' });
    expect(isSigned(changed)).toBe(false);
    expect(changesSinceBasis(changed)?.changes).toHaveLength(1);
  });

  it('keeps with the next signature what changed since the one before', () => {
    const changed = edited(
      edited(first, 'limits.joker', { value: 4500, unit: 'lb' }),
      'revision',
      nextRevision('A'),
    );
    const second = signedBy(changed, { person: 'S1', today: '2032-06-02' });
    expect(second.revisions?.map((one) => one.revision)).toEqual(['A', 'B']);
    expect(second.revisions?.[1]?.changes.map((words) => words.replaceAll('\u00a0', ' '))).toEqual([
      'Revision: B, was A.',
      'Limits, joker: 4500 lb, was 4000 lb.',
    ]);
    expect(isSigned(second)).toBe(true);
  });

  it('leaves what it was held against on the ground', () => {
    const { basis: _, ...plain } = withBasis(soundSheet(), soundSheet());
    expect(withoutBasis(withBasis(soundSheet(), soundSheet()))).toEqual(plain);
  });

  it.each([
    ['A', 'B'],
    ['Z', 'AA'],
    ['AZ', 'BA'],
    ['9', '10'],
    ['draft', 'draft2'],
  ])('%s is followed by %s', (revision, next) => {
    expect(nextRevision(revision)).toBe(next);
  });
});
