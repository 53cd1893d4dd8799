import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { writeTimeline } from '../../../src/file/timelineFile.ts';
import { viewOf } from '../../../src/record/flight.ts';
import { debriefOf, flightA } from './deskOfFlightA.tsx';

const idOfLine = (n: number) => flightA.idOf.get(n);

describe('the debrief of flight A', () => {
  it('selects in the table what was selected on the chart, and the reverse', async () => {
    const desk = await debriefOf(flightA.entries);
    const markOf = (n: number) =>
      desk.all('mark').find((one) => one.dataset['entry'] === idOfLine(n));
    const rowOf = (n: number) =>
      desk.all('row').find((one) => one.dataset['entry'] === idOfLine(n));
    fireEvent.click(markOf(12) ?? document.body);
    expect(rowOf(12)).toHaveAttribute('aria-pressed', 'true');
    fireEvent.click(rowOf(20) ?? document.body);
    expect(markOf(20)).toHaveAttribute('aria-selected', 'true');
    expect(markOf(12)).toHaveAttribute('aria-selected', 'false');
  });

  it('is walked by the keyboard: along time, Enter to the entry, Escape out', async () => {
    const desk = await debriefOf(flightA.entries);
    const list = screen.getByRole('listbox', { name: 'Entries in order of time' });
    within(list).getAllByRole('option')[0]?.focus();
    await desk.user.keyboard('{End}{Home}{ArrowRight}');
    const [first, second] = within(list).getAllByRole('option');
    expect(first).toHaveAttribute('aria-selected', 'false');
    expect(second).toHaveFocus();
    await desk.user.keyboard('{Enter}');
    expect(document.activeElement?.id).toBe('entry-detail');
    second?.focus();
    await desk.user.keyboard('{Escape}');
    expect(desk.act('tab-timeline')).toHaveFocus();
  });

  it('moves the result of a point as soon as a digit is amended, and back when that is withdrawn', async () => {
    const desk = await debriefOf(flightA.entries);
    const result = () => desk.act('result-TP05-1').textContent;
    const before = result();
    const mark = desk.all('mark').find((one) => one.dataset['entry'] === idOfLine(80));
    fireEvent.click(mark ?? document.body);
    await desk.user.click(desk.act('detail-amend'));
    await desk.user.clear(desk.act('field-readings.FF1.value'));
    await desk.user.type(desk.act('field-readings.FF1.value'), '860');
    await desk.user.click(desk.act('save'));
    expect(document.body.textContent).toContain('Say why: choose a reason.');
    await desk.user.click(desk.act('code-misKeyed'));
    await desk.user.click(desk.act('save'));
    await waitFor(() => expect(result()).not.toBe(before));
    expect(desk.said()).toContain('Amended');

    // The old value stays readable beside the new one.
    const facts = screen.getByRole('table', { name: 'As read, and as it stands' });
    expect(facts.querySelector('del')).toHaveTextContent('840');

    await desk.user.click(desk.act('open-link'));
    await desk.user.click(desk.act('detail-withdraw'));
    await desk.user.click(desk.act('reason-entered-twice'));
    await desk.user.click(desk.act('save'));
    await waitFor(() => expect(result()).toBe(before));
  });

  it('shows what was withdrawn in the audit alone, struck through', async () => {
    const desk = await debriefOf(flightA.entries);
    expect(desk.all('mark').some((one) => one.dataset['entry'] === idOfLine(60))).toBe(false);
    await desk.user.click(desk.act('tab-audit'));
    const struck = [...document.querySelectorAll('del')].map(({ textContent }) => textContent);
    expect(struck.some((words) => words?.includes('M1'))).toBe(true);
    expect(document.body.textContent).toContain('wrong button, meant sampler open');
  });

  it('closes an interval late, with its doubt and what it is known from', async () => {
    const desk = await debriefOf(flightA.entries);
    const chop = desk.all('mark').find((one) => one.dataset['entry'] === idOfLine(90));
    fireEvent.click(chop ?? document.body);
    await desk.user.click(desk.act('detail-close-late'));
    await desk.user.type(desk.act('time'), '23:51:30');
    await desk.user.type(desk.act('basis-words'), 'pilot');
    await desk.user.click(desk.act('save'));
    const last = () =>
      viewOf(desk.journal.entries()).standing.find(
        ({ entry }) => entry.kind === 'turbulenceExited',
      );
    await waitFor(() => expect(last()).toBeDefined());
    expect(last()?.effective).toMatchObject({
      body: { basis: 'late', doubtS: 20, basisWords: 'pilot' },
    });
    expect(desk.all('detail-close-late')).toHaveLength(0);
  });

  it('adds an event after the fact with its own time', async () => {
    const desk = await debriefOf(flightA.entries);
    await desk.user.click(desk.act('tab-forms'));
    await desk.user.click(desk.act('form-late'));
    await desk.user.selectOptions(desk.act('kind'), 'engineerCalled');
    await desk.user.clear(desk.act('date'));
    await desk.user.type(desk.act('date'), '2032-06-02');
    await desk.user.type(desk.act('time'), '23:30:05');
    await desk.user.type(desk.act('field-words'), 'R4 rough again');
    await desk.user.click(desk.act('save'));
    const own = () => desk.journal.entries().find(({ kind }) => kind === 'engineerCalled');
    await waitFor(() => expect(own()).toBeDefined());
    expect(own()).toMatchObject({
      body: {
        at: Date.parse('2032-06-02T23:30:05Z'),
        basis: 'late',
        doubtS: 20,
        words: 'R4 rough again',
      },
    });
  });

  it('sorts by a head that says so, and filters by lane', async () => {
    const desk = await debriefOf(flightA.entries);
    const head = () => screen.getByRole('columnheader', { name: /^Doubt/ });
    expect(head()).toHaveAttribute('aria-sort', 'none');
    await desk.user.click(desk.act('sort-doubt'));
    expect(head()).toHaveAttribute('aria-sort', 'ascending');
    await desk.user.click(desk.act('sort-doubt'));
    expect(head()).toHaveAttribute('aria-sort', 'descending');
    expect(desk.all('row')[0]?.dataset['entry']).toBe(idOfLine(101));
    await desk.user.click(desk.act('filters'));
    await desk.user.selectOptions(desk.act('filter-lane'), 'moisture');
    expect(desk.all('row')).toHaveLength(6);
  });

  it('narrows chart, table and steps to one lane, kind and author alike, and keeps the cursor', async () => {
    const desk = await debriefOf(flightA.entries);
    const entriesOf = (act: string) => desk.all(act).map((one) => one.dataset['entry']);
    fireEvent.click(
      desk.all('mark').find((one) => one.dataset['entry'] === idOfLine(12)) ?? document,
    );
    await desk.user.click(desk.act('filters'));
    await desk.user.selectOptions(desk.act('filter-kind'), 'moistureEntered');
    const entered = viewOf(flightA.entries).standing.filter(
      ({ entry, standing }) => entry.kind === 'moistureEntered' && standing === 'stands',
    );
    const ids = entered.map(({ entry }) => entry.id);
    expect(new Set(entriesOf('row'))).toEqual(new Set(ids));
    await waitFor(() =>
      expect(new Set(entriesOf('mark'))).toEqual(new Set([...ids, idOfLine(12)])),
    );
    expect(desk.act('filters')).toHaveTextContent('Filter 1');
    await desk.user.type(desk.act('filter-words'), '{Enter}');
    const pressed = () =>
      desk.all('row').filter((one) => one.getAttribute('aria-pressed') === 'true');
    expect(pressed().map((one) => one.dataset['entry'])).toEqual([ids[0]]);
    await desk.user.selectOptions(desk.act('filter-author'), 'S1');
    expect(desk.act('filters')).toHaveTextContent('Filter 2');
    expect(desk.all('row').length).toBeLessThanOrEqual(ids.length);
  });

  it('jumps to an event that the filter leaves out', async () => {
    const desk = await debriefOf(flightA.entries);
    await desk.user.click(desk.act('filters'));
    await desk.user.selectOptions(desk.act('filter-lane'), 'moisture');
    const lift = flightA.entries.find(({ kind }) => kind === 'liftedOff');
    await desk.user.selectOptions(desk.act('jump'), lift?.id ?? '');
    const mark = desk.all('mark').find((one) => one.dataset['entry'] === lift?.id);
    expect(mark).toHaveAttribute('aria-selected', 'true');
    expect(screen.getByRole('heading', { name: /Lift-off/ })).toBeVisible();
  });

  it('says every time as the axis was chosen, and remembers the choice', async () => {
    const desk = await debriefOf(flightA.entries);
    const lift = () =>
      desk.all('row').find((one) => one.dataset['kind'] === 'liftedOff')?.textContent;
    const spoken = () =>
      desk.all('mark').find((one) => one.dataset['kind'] === 'liftedOff')?.textContent;
    const utc = lift();
    await desk.user.selectOptions(desk.act('axis-time'), 'fromTakeOff');
    expect(lift()).toBe('+0:00');
    expect(spoken()).toMatch(/^0 seconds after take-off, Phase, /);
    expect(screen.getByRole('columnheader', { name: /Take-off, min/ })).toBeVisible();
    await desk.user.selectOptions(desk.act('axis-time'), 'dayOfYear');
    // 2 June is day 154 of the leap year 2032.
    expect(lift()).toBe(`154:${utc}`);
    cleanup();
    const again = await debriefOf(flightA.entries);
    expect(again.act('axis-time')).toHaveValue('dayOfYear');
    await again.user.selectOptions(again.act('axis-time'), 'utc');
  });
});

describe('a file opened on Debrief', () => {
  const open = async (text: string) => {
    const desk = await debriefOf(flightA.entries);
    await desk.user.click(desk.act('tab-files'));
    await desk.user.upload(desk.act('open-file'), new File([text], 'other.jsonl'));
    return desk;
  };

  it('keeps the sound lines of a damaged file, names the others, and leaves the own record as it was', async () => {
    const lines = writeTimeline(flightA.entries).split('\n');
    lines[40] = (lines[40] ?? '').slice(0, 100);
    const desk = await open(lines.join('\n'));
    const head = desk.journal.status().head;
    await waitFor(() =>
      expect(desk.act('file-read')).toHaveTextContent(
        'Line 41 was put aside: it is cut or not JSON.',
      ),
    );
    expect(desk.act('file-read')).toHaveTextContent(`${flightA.entries.length - 1} entries kept`);
    await desk.user.click(desk.act('take-in'));
    await waitFor(() =>
      expect(desk.said()).toContain(`0 added, ${flightA.entries.length - 1} known`),
    );
    expect(desk.journal.entries()).toEqual(flightA.entries);
    expect(desk.journal.status().head).toEqual(head);
  });

  it('refuses a foreign file in words', async () => {
    const desk = await open('%PDF-1.7 not a flight');
    await waitFor(() =>
      expect(desk.act('file-refused')).toHaveTextContent(
        'Nothing was opened. Choose a file that ends in .jsonl.',
      ),
    );
  });

  it('offers the flight under a name that says it is a demonstration, bytes ready', async () => {
    const desk = await debriefOf(flightA.entries);
    await desk.user.click(desk.act('tab-files'));
    const link = desk.act('save-file');
    expect(link.getAttribute('download')).toMatch(/^demo-2032-06-02-.*\.jsonl$/);
    expect(link.getAttribute('href')).toMatch(/^blob:/);
  });
});
