import { describe, expect, it } from 'vitest';
import { epochMs } from '../../../src/record/brand.ts';
import { viewOf } from '../../../src/record/flight.ts';
import {
  amendFields,
  changesOf,
  keepChange,
  unfitField,
} from '../../../src/ui/debrief/detail/amendment.ts';
import { fieldFormsOf } from '../../../src/ui/debrief/fields/fieldForms.ts';
import type { TypedTime } from '../../../src/ui/debrief/fields/typed.ts';
import { lateBody } from '../../../src/ui/debrief/forms/lateEntry.ts';
import { scriptA } from '../../flights/flightA.ts';
import { flightOfScript } from '../../flights/scriptToEntries.ts';

const { entries, idOf } = flightOfScript(scriptA);
const view = viewOf(entries);
const { sheet } = view.state;
const NEAR = epochMs(Date.parse('2032-06-03T00:16:00Z'));
const time: TypedTime = { near: NEAR, shown: (raw) => raw, raw: (shown) => shown };

function effectiveOf(n: number) {
  const id = idOf.get(n);
  const standing = id === undefined ? undefined : view.byId(id);
  if (standing === undefined) {
    throw new RangeError(`the script has no line ${n}`);
  }
  return standing.effective;
}

const typedOver = (n: number, typed: Readonly<Record<string, string>>) => {
  const { present, absent } = amendFields(effectiveOf(n), sheet);
  return changesOf([...present, ...absent], new Map(Object.entries(typed)), time);
};

describe('an amendment', () => {
  it('holds only the fields that were typed over, with the value that stood', () => {
    const { changes, faults } = typedOver(107, {
      'readings.FF1.value': '830',
      'readings.FF2.value': '780',
    });
    expect(faults.size).toBe(0);
    expect(changes).toEqual([{ field: 'readings.FF1.value', old: 840, new: 830 }]);
  });

  it('turns a reading typed empty into not read, never into zero', () => {
    const { changes } = typedOver(107, { 'readings.FF1.value': '' });
    expect(changes).toEqual([
      {
        field: 'readings.FF1',
        old: { instrument: 'FF1', value: 840, unit: 'lb/h', method: 'digits' },
        new: { instrument: 'FF1', blank: 'notRead' },
      },
    ]);
  });

  it('says what cannot be read as a figure, and changes nothing by it', () => {
    const { changes, faults } = typedOver(107, { 'readings.FF1.value': '8x0' });
    expect(changes).toEqual([]);
    expect(faults.get('readings.FF1.value')).toBe('Give the figure as the gauge shows it.');
  });

  it('puts a bare clock time on the day nearest to the entry', () => {
    const { changes } = typedOver(107, { at: '23:58:30' });
    expect(changes).toEqual([{ field: 'at', old: null, new: Date.parse('2032-06-02T23:58:30Z') }]);
  });

  it('takes the query off a reading that is kept as read', () => {
    const row = { instrument: 'FF1', value: 910, unit: 'lb/h', queried: 'outsideBand' };
    const field = {
      kind: 'reading',
      path: 'readings.FF1.value',
      instrument: 'FF1',
      unit: 'lb/h',
      row,
      value: 910,
      isQueried: true,
    } as const;
    expect(keepChange(field)).toEqual({
      field: 'readings.FF1.queried',
      old: 'outsideBand',
      new: null,
    });
    expect(changesOf([field], new Map([['readings.FF1.value', '810']]), time).changes).toEqual([
      { field: 'readings.FF1.value', old: 910, new: 810 },
      { field: 'readings.FF1.queried', old: 'outsideBand', new: null },
    ]);
  });

  it('names the field that its kind would not hold so', () => {
    const start = effectiveOf(104);
    expect(unfitField(start, [{ field: 'run', old: 1, new: 'two' }])).toBe('run');
    expect(unfitField(start, [{ field: 'run', old: 1, new: 2 }])).toBeNull();
  });
});

describe('the fields of a kind', () => {
  it('come from its schema: own ones first, what every entry may carry after', () => {
    const forms = fieldFormsOf('coversReleased');
    expect(forms.map(({ path }) => path)).toEqual([
      'wing',
      'clear',
      'hung',
      'command',
      'altitude',
      'at',
      'doubtS',
      'basis',
      'basisWords',
      'calledBy',
      'note',
    ]);
    expect(forms[0]).toEqual({
      path: 'wing',
      isRequired: true,
      form: 'choice',
      choices: ['L', 'R', 'both'],
    });
    expect(forms[4]).toMatchObject({ form: 'measure' });
  });
});

describe('a late entry', () => {
  it('is checked like any other and names the field at fault', () => {
    const body = (typed: Readonly<Record<string, string>>) =>
      lateBody({
        kind: 'coversReleased',
        typed: new Map(Object.entries(typed)),
        fixed: { at: NEAR, basis: 'late', doubtS: 20 },
        time,
      });
    expect(body({})).toEqual({ ok: false, error: { path: 'wing', words: 'This is needed.' } });
    expect(body({ wing: 'L', altitude: '4100' })).toMatchObject({
      ok: false,
      error: { path: 'altitude' },
    });
    expect(body({ wing: 'L', clear: 'L1 L2', altitude: '4100 ft' })).toEqual({
      ok: true,
      value: {
        at: NEAR,
        basis: 'late',
        doubtS: 20,
        wing: 'L',
        clear: ['L1', 'L2'],
        altitude: { value: 4100, unit: 'ft' },
      },
    });
  });
});
