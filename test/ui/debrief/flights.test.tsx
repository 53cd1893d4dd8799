import { screen, waitFor, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { writeTimeline } from '../../../src/file/timelineFile.ts';
import type { Entry } from '../../../src/record/entry.ts';
import { readFlights } from '../../../src/ui/debrief/flights/readFlights.ts';
import { sheetA } from '../../analysis/flights.ts';
import { laterFlight } from '../../analysis/laterFlight.ts';
import { debriefOf, flightA, type DebriefDesk } from './deskOfFlightA.tsx';

const second = laterFlight(flightA.entries, { days: 7, hex: 'b' });
const third = laterFlight(flightA.entries, { days: 14, hex: 'c' });
const stranger = laterFlight(flightA.entries, {
  days: 21,
  hex: 'd',
  sheet: { ...sheetA, aircraft: { ...sheetA.aircraft, mark: 'QL-OTH' } },
});

const fileOf = (entries: readonly Entry[], name: string) =>
  new File([writeTimeline(entries)], name);

async function onFlights(): Promise<DebriefDesk> {
  const desk = await debriefOf(flightA.entries);
  await desk.user.click(desk.act('tab-flights'));
  return desk;
}

const rows = () =>
  within(screen.getByRole('table', { name: 'Flight by flight' }))
    .getAllByRole('row')
    .slice(1)
    .map(({ textContent }) => textContent ?? '');

describe('several flights', () => {
  it('stand side by side from chosen files, each with the numbers of its own record', async () => {
    const desk = await onFlights();
    expect(rows()).toHaveLength(1);
    const before = desk.journal.entries();
    await desk.user.upload(desk.act('flight-files'), [
      fileOf(third, 'third.jsonl'),
      fileOf(second, 'second.jsonl'),
    ]);
    await waitFor(() => expect(rows()).toHaveLength(3));
    expect(desk.act('flights-count')).toHaveTextContent('3 flights of QL-SMT');
    // In order of time, not of choosing. The figures are those of `flight-a-oracle.json`: flown again, nothing moves.
    expect(rows().map((row) => row.slice(0, 10))).toEqual([
      '2032-06-02',
      '2032-06-02',
      '2032-06-02',
    ]);
    for (const row of rows()) {
      expect(row).toContain('27.3 (26.7 to 27.8), TP02 r1');
      expect(row).toContain('86, 100 % called');
    }
    expect(rows()[1]).toMatch(/second\.jsonl.*\+0\.00 ± .*cannot be told apart$/);
    expect(screen.getByRole('img', { name: /^Labour/ })).toHaveAccessibleName(/7\.9; .* 7\.9; /);
    expect(document.body.textContent).toMatch(/n 3/);
    // Looking took nothing in.
    expect(desk.journal.entries()).toBe(before);
  });

  it('leave out and name what is not comparable, and say what could not be read', async () => {
    const desk = await onFlights();
    await desk.user.upload(desk.act('flight-files'), [
      fileOf(stranger, 'stranger.jsonl'),
      fileOf(flightA.entries, 'same.jsonl'),
      new File(['no flight at all'], 'broken.jsonl'),
    ]);
    await waitFor(() => expect(desk.said()).toContain('stranger.jsonl): another aircraft.'));
    expect(desk.said()).toContain('same.jsonl): on this device already');
    expect(desk.said()).toContain('broken.jsonl:');
    expect(rows()).toHaveLength(1);
  });

  it('passes over what is no timeline file by its name, and says when nothing is left', async () => {
    const { flights, said } = await readFlights([new File(['x'], 'notes.md')]);
    expect(flights).toEqual([]);
    expect(said).toEqual(['No timeline file was among them: choose files that end in .jsonl.']);
    const mixed = await readFlights([new File(['x'], 'notes.md'), fileOf(second, 'b.jsonl')]);
    expect(mixed.said).toEqual([]);
    expect(mixed.flights.map(({ files }) => files)).toEqual([['b.jsonl']]);
  });

  it('makes one view of the files of one flight, and never of two', async () => {
    const half = second.slice(0, 60);
    const { flights } = await readFlights([
      fileOf(half, 'half.jsonl'),
      fileOf(third, 'third.jsonl'),
      fileOf(second, 'whole.jsonl'),
    ]);
    expect(flights.map(({ files, view }) => [files.join(' '), view.standing.length])).toEqual([
      ['half.jsonl whole.jsonl', second.length],
      ['third.jsonl', third.length],
    ]);
  });
});
