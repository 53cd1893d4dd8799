import { fireEvent, screen, waitFor, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { losses } from '../../../src/analysis/encounters/losses.ts';
import { recorderId } from '../../../src/record/brand.ts';
import { viewOf } from '../../../src/record/flight.ts';
import { chainOf } from '../../file/smallFlight.ts';
import { debriefOf, flightA } from './deskOfFlightA.tsx';

const ENGINEER = recorderId('b2'.repeat(16));

/** Flight A, and a second tablet that saw the first cloud some seconds after the scribe did. */
function withEngineer(afterMs: number) {
  const [first] = flightA.entries;
  const scribes = viewOf(flightA.entries).standing.find(
    ({ entry, standing }) => entry.kind === 'moistureEntered' && standing === 'stands',
  );
  if (first === undefined || scribes === undefined) {
    throw new RangeError('flight A must enter cloud');
  }
  const engineers = chainOf(
    [
      { kind: 'recorderJoined', body: { device: 'engineer tablet', purpose: 'inFlight' } },
      { kind: 'moistureEntered', body: { look: 'thin' } },
    ],
    {
      flight: first.flight,
      rec: ENGINEER,
      startMs: scribes.at + afterMs - 1000,
      author: { author: 'E2', role: 'wing engineer, left' },
    },
  );
  const seen = engineers.at(-1);
  if (seen === undefined) {
    throw new RangeError('the engineer must have seen it');
  }
  return { entries: [...flightA.entries, ...engineers], scribes: scribes.entry, engineers: seen };
}

describe('one thing seen by two recorders', () => {
  it('is decided by a person with a reason; the other gives way and stays readable in the audit', async () => {
    const { entries, scribes, engineers } = withEngineer(8_000);
    const desk = await debriefOf(entries);
    const markOf = (id: string) => desk.all('mark').find((one) => one.dataset['entry'] === id);
    fireEvent.click(markOf(engineers.id) ?? document);
    const block = () => screen.getByRole('region', { name: 'Seen by two recorders' });
    // 8 s by the tablets; the hacks of the scribe's (0.6 s and 1.1 s fast) put its time 0.85 s earlier.
    expect(block()).toHaveTextContent('9 seconds apart; Encounter: M1 against none; Look: ');
    expect(block()).toHaveTextContent('Nobody has decided; both count.');

    await desk.user.click(desk.act('pair-decide'));
    await desk.user.click(within(desk.act('verdict=first')).getByRole('radio'));
    await desk.user.click(desk.act('save'));
    expect(block()).toHaveTextContent('Say why, in a few words.');
    await desk.user.type(desk.act('verdict-reason'), 'seen from the front');
    await desk.user.click(desk.act('save'));
    await waitFor(() => expect(markOf(engineers.id)).toBeUndefined());
    expect(markOf(scribes.id)).toBeDefined();
    const resolved = desk.journal.entries().find(({ kind }) => kind === 'observationsResolved');
    expect(resolved).toMatchObject({
      kind: 'observationsResolved',
      author: 'S1',
      body: {
        target: engineers.id,
        other: scribes.id,
        verdict: 'otherStands',
        reason: 'seen from the front',
      },
    });

    await desk.user.click(desk.act('tab-audit'));
    await desk.user.click(desk.act('audit-pairs'));
    expect(desk.act('pair').querySelector('del')).toHaveTextContent('thin');
    expect(desk.act('pair')).toHaveTextContent(
      /Decided by S1, scribe: .* stands. seen from the front/,
    );
    await desk.user.click(desk.act('audit-changed'));
    expect(screen.getByRole('region', { name: 'Audit' })).toHaveTextContent(
      /Gives way to entry \d+ by S1: seen from the front/,
    );
  });

  it('both stand where a person calls them two events', async () => {
    const { entries, engineers, scribes } = withEngineer(8_000);
    const desk = await debriefOf(entries);
    await desk.user.click(desk.act('tab-audit'));
    await desk.user.click(desk.act('audit-pairs'));
    await desk.user.click(desk.act('pair-decide'));
    await desk.user.click(within(desk.act('verdict=both')).getByRole('radio'));
    await desk.user.type(desk.act('verdict-reason'), 'two layers');
    await desk.user.click(desk.act('save'));
    await waitFor(() => expect(desk.act('pair')).toHaveTextContent('both stand, two events'));
    const view = viewOf(desk.journal.entries());
    expect([engineers, scribes].map(({ id }) => view.byId(id)?.standing)).toEqual([
      'stands',
      'stands',
    ]);
  });
});

describe('the cause of a loss', () => {
  it('is chosen from its evidence at the mark, and said there and to a reader', async () => {
    const [loss] = losses(viewOf(flightA.entries)).filter(({ kind }) => kind === 'lost');
    const desk = await debriefOf(flightA.entries);
    const mark = () => desk.all('mark').find((one) => one.dataset['entry'] === loss?.seen.by);
    fireEvent.click(mark() ?? document);
    const block = () => screen.getByRole('region', { name: 'Cause of the loss' });
    expect(block()).toHaveTextContent('Speaks for:');
    await desk.user.click(desk.act('detail-cause'));
    // Candidates stand in the one order in which the evidence is tried, the open one last.
    const offered = within(screen.getByRole('group', { name: 'Cause' })).getAllByRole('radio');
    expect(offered).toHaveLength((loss?.evidence.length ?? 0) + 1);
    const [first] = offered;
    const chosen = first?.getAttribute('value') ?? '';
    await desk.user.click(first ?? document.body);
    await desk.user.type(desk.act('cause-reason'), 'cloud all round');
    await desk.user.click(desk.act('save'));
    await waitFor(() => expect(block()).toHaveTextContent(`Decided by scribe: ${chosen}.`));
    expect(mark()).toHaveTextContent(`cause decided: ${chosen}`);
  });
});

describe('the audit', () => {
  it('sets the struck original beside what stands, with who, when and why', async () => {
    const desk = await debriefOf(flightA.entries);
    await desk.user.click(desk.act('tab-audit'));
    const amended = viewOf(flightA.entries).standing.filter(
      ({ amendedBy, standing }) => amendedBy.length > 0 && standing === 'stands',
    );
    const rows = screen
      .getAllByRole('listitem')
      .filter((row) => row.textContent?.includes('as it stands'));
    expect(rows).toHaveLength(amended.length);
    for (const row of rows) {
      expect(row.querySelector('del')).not.toBeNull();
      expect(row).toHaveTextContent(/as read, \d\d:\d\d:\d\d, S1, entry \d+/);
    }
  });
});
