import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { Debrief } from '../../../../src/ui/debrief/Debrief.tsx';
import { keepMapping, keptMapping } from '../../../../src/ui/debrief/recorder/keptMappings.ts';
import { guessedMapping, lacking, planOf } from '../../../../src/ui/debrief/recorder/mapping.ts';
import { recorderTask } from '../../../../src/ui/debrief/recorder/recorderTask.ts';
import { recorderHead } from '../../../../src/file/recorder/recorderHead.ts';
import { scriptA } from '../../../flights/flightA.ts';
import { flightOfScript } from '../../../flights/scriptToEntries.ts';
import { memoryShelf } from '../../../journal/memoryJournal.ts';
import { testTime } from '../../../journal/testTime.ts';

const TRACE = gunzipSync(
  readFileSync(join(import.meta.dirname, '../../../flights/scripts/flight-a-recorder.csv.gz')),
);
const head = recorderHead(TRACE.toString('utf8').slice(0, 4000));
if (typeof head === 'string') throw new RangeError(head);
const UNITS = { flow: 'lb/h', height: 'ft' } as const;

function storage(): Pick<Storage, 'getItem' | 'setItem'> {
  const kept = new Map<string, string>();
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => void kept.set(key, text),
  };
}

describe('what the columns of a recorder are', () => {
  const mapping = guessedMapping(head, UNITS);

  it('is guessed from their names, units too', () => {
    expect(mapping.channels.map(({ use, engine, unit }) => [use, engine, unit])).toEqual([
      ['mach', null, '1'],
      ['pressureAltitude', null, 'ft'],
      ['staticAirTemp', null, 'degC'],
      ['fuelFlow', 1, 'lb/h'],
      ['fuelFlow', 2, 'lb/h'],
      ['suctionFuelFlow', null, 'lb/h'],
    ]);
    expect(lacking(mapping, 2)).toEqual([]);
    expect(lacking(mapping, 3)).toEqual(['fuel flow of engine 3']);
  });

  it('goes to SI by the exact factors of NIST SP 811', () => {
    const { columns } = planOf(mapping, 0);
    expect(columns[1]).toEqual({ column: 2, factor: 0.3048, zero: 0 });
    expect(columns[2]?.zero).toBeCloseTo(273.15, 10);
    expect(columns[3]?.factor).toBeCloseTo(0.45359237 / 3600, 12);
  });

  it('is kept for the next file with the same names, and for no other', () => {
    const kept = storage();
    keepMapping(kept, head, mapping);
    expect(keptMapping(kept, head)).toEqual(mapping);
    expect(keptMapping(kept, { ...head, headers: [...head.headers, 'more'] })).toBeNull();
    kept.setItem('kneeline-recorders', 'no JSON');
    expect(keptMapping(kept, head)).toBeNull();
  });
});

describe('the Recorder view of Debrief', () => {
  it('reads a trace, ties the clock, compares every run and names the file in the record', async () => {
    const time = testTime(Date.parse('2032-06-03T01:20:00Z'));
    const shelf = memoryShelf({ clock: time.clock, device: 'scribe tablet' });
    const { flight } = await shelf.takeIn(flightOfScript(scriptA).entries);
    const journal = await shelf.journalOf(flight);
    journal.setAuthor({ author: 'S1', role: 'scribe' });
    const user = userEvent.setup();
    render(
      <Debrief
        journal={journal}
        shelf={shelf}
        clock={time.clock}
        build="test"
        openRecorder={() => ({ ...recorderTask(), close: () => {} })}
        onBrief={() => {}}
        onFly={() => {}}
      />,
    );
    await user.click(screen.getByRole('tab', { name: 'Recorder' }));
    await user.upload(
      screen.getByLabelText('Choose a recorder file'),
      new File([TRACE], 'trace.csv', { type: 'text/csv' }),
    );
    await user.click(await screen.findByRole('button', { name: 'Read the file' }));
    await screen.findByText('All 10 runs agree within both doubts.', {}, { timeout: 30_000 });
    expect(screen.getByText(/^Recorder clock .* against the time base\.$/)).toBeInTheDocument();
    await user.click(screen.getByRole('button', { name: 'Name this file in the record' }));
    await waitFor(() =>
      expect(screen.getByText('The record names this file by its hash.')).toBeInTheDocument(),
    );
    const named = journal.entries().find(({ kind }) => kind === 'recorderReferenced');
    expect(named?.kind === 'recorderReferenced' ? named.body : null).toMatchObject({
      file: 'trace.csv',
      rows: 13_201,
      bytes: TRACE.length,
    });
  });
});
