import { describe, expect, it } from 'vitest';
import { entriesTable, readingsTable } from '../../src/file/tables.ts';
import { viewOf } from '../../src/record/flight.ts';
import { scriptA } from '../flights/flightA.ts';
import { entriesOfScript } from '../flights/scriptToEntries.ts';

const view = viewOf(entriesOfScript(scriptA));
const rowsOf = (text: string): readonly string[] => text.trimEnd().split('\r\n').slice(1);

describe('tables of the scripted flight', () => {
  it('give every entry a row, the one struck out too', () => {
    const rows = rowsOf(entriesTable(view.standing, view.state.sheet));
    expect(rows).toHaveLength(view.standing.length);
    expect(rows.filter((row) => row.includes('"withdrawn"'))).toHaveLength(1);
    expect(rows.filter((row) => row.includes('"late"'))).toHaveLength(1);
  });

  it('show a reading as read beside as amended', () => {
    // The script: engine 2 keyed 910, put right to 810 from the photo panel (lines 51 and 52).
    const rows = rowsOf(readingsTable(view.standing, view.state.sheet));
    expect(rows.filter((row) => row.includes('"FF2","fuelFlow","lb/h","910","810"'))).toHaveLength(
      1,
    );
  });
});
