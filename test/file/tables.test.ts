import { describe, expect, it } from 'vitest';
import { writeCsv, type Table } from '../../src/file/csv.ts';
import { entriesTable, readingsTable, type Meaning } from '../../src/file/tables.ts';
import { epochMs } from '../../src/record/brand.ts';
import { viewOf } from '../../src/record/flight.ts';
import { scriptA } from '../flights/flightA.ts';
import { entriesOfScript } from '../flights/scriptToEntries.ts';

const view = viewOf(entriesOfScript(scriptA));
/** As if the tablet ran a second fast and every gauge read ten low. */
const meaning: Meaning = {
  toBase: (at) => epochMs(at - 1000),
  corrected: (reading) => ('value' in reading ? reading.value + 10 : null),
};
const rowsOf = (table: Table): readonly string[] =>
  writeCsv(table).trimEnd().split('\r\n').slice(1);

describe('tables of the scripted flight', () => {
  it('give every entry a row, the one struck out too', () => {
    const rows = rowsOf(entriesTable(view.standing, view.state.sheet, meaning));
    expect(rows).toHaveLength(view.standing.length);
    expect(rows.filter((row) => row.includes('"withdrawn"'))).toHaveLength(1);
    expect(rows.filter((row) => row.includes('"late"'))).toHaveLength(1);
  });

  it('show a reading as read beside as amended beside as corrected', () => {
    // The script: engine 2 keyed 910, put right to 810 from the photo panel (lines 51 and 52).
    const rows = rowsOf(readingsTable(view.standing, view.state.sheet, meaning));
    expect(
      rows.filter((row) => row.includes('"FF2","fuelFlow","lb/h","910","810","820"')),
    ).toHaveLength(1);
  });

  it('give the time of the aircraft beside that of the tablet', () => {
    const [row = ''] = rowsOf(entriesTable(view.standing, view.state.sheet, meaning));
    const [, tablet = '', base = ''] = /^"([^"]+)","([^"]+)"/.exec(row) ?? [];
    expect(Date.parse(tablet) - Date.parse(base)).toBe(1000);
  });
});
