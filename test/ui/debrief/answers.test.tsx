import { screen, waitFor, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { viewOf } from '../../../src/record/flight.ts';
import { QUESTIONS } from '../../../src/ui/debrief/answers/questions.ts';
import { debriefOf, flightA, upTo, type DebriefDesk } from './deskOfFlightA.tsx';

/** Figures of `test/flights/scripts/flight-a-oracle.json`, which another program worked out from the same readings. */
const AS_WORKED_OUT = {
  1: ['28.7', '28.1 to 29.3', 'TP03'],
  3: ['23 to 44', '95 to 175'],
  4: ['86', '73 % in all air'],
  5: ['lb net', '19.7 %'],
  6: ['8 of 9', 'TP06'],
  8: ['7.9', '25.1'],
  9: ['0.9', '2 hacks'],
  10: ['all agree'],
} as const;

async function onAnswers(entries = flightA.entries): Promise<DebriefDesk> {
  const desk = await debriefOf(entries);
  await desk.user.click(desk.act('tab-answers'));
  return desk;
}

describe('the ten answers of flight A', () => {
  it('stand at a glance with the numbers that another program worked out', async () => {
    const desk = await onAnswers();
    for (const [question, told] of Object.entries(AS_WORKED_OUT)) {
      for (const words of told) {
        expect(desk.act(`answer-${question}`).textContent).toContain(words);
      }
    }
  });

  it.each(QUESTIONS)(
    'have a page each, with plot, parts, method, gates and steps: $id $name',
    async ({ id, name }) => {
      const desk = await onAnswers();
      await desk.user.click(desk.act(`answer-${id}`));
      const page = within(screen.getByRole('article', { name }));
      expect(desk.act('headline').textContent).toMatch(/\d/);
      expect(
        page.queryAllByRole('table').length + page.queryAllByRole('list').length,
      ).toBeGreaterThan(0);
      expect(page.getByRole('region', { name: 'Method' })).toBeVisible();
      expect(page.getByRole('region', { name: 'Gates' })).toBeVisible();
      const how = within(page.getByRole('region', { name: 'How this was made' }));
      const [step] = how.getAllByRole('button', { expanded: false });
      await desk.user.click(step ?? document.body);
      const entries = within(how.getByRole('list', { name: 'Entries' })).getAllByRole('listitem');
      expect(entries.length).toBeGreaterThan(0);
      await desk.user.click(desk.all('open-entry')[0] ?? document.body);
      expect(desk.act('tab-timeline')).toHaveAttribute('aria-selected', 'true');
      expect(screen.getByRole('region', { name: 'Selected entry' })).toBeVisible();
      // Back on Answers the same page stands open.
      await desk.user.click(desk.act('tab-answers'));
      expect(screen.getByRole('article', { name })).toBeVisible();
    },
    30_000,
  );

  it('rank settings by the flow saved, and say what cannot be told apart', async () => {
    const desk = await onAnswers();
    await desk.user.click(desk.act('answer-1'));
    const rows = within(screen.getByRole('table', { name: 'Ranked by flow saved at equal weight' }))
      .getAllByRole('row')
      .map(({ textContent }) => textContent);
    expect(rows[1]).toMatch(/^TP03 r1.*\+27 ± 15.*differs$/);
    expect(rows.at(-1)).toMatch(/^TP04 r2.*\u221224 ± 15.*differs$/);
    expect(rows.find((row) => row?.startsWith('TP08'))).toContain('cannot be told apart');
  });

  it('show another run when its name is touched', async () => {
    const desk = await onAnswers();
    await desk.user.click(desk.act('answer-1'));
    await desk.user.click(desk.act('point-TP02-1'));
    const how = screen.getByRole('region', { name: 'How this was made' });
    expect(how.textContent).toContain('Left out: Mach drift');
    expect(screen.getByRole('region', { name: 'TP02 run 1' }).textContent).toContain('27.3 ± 0.6');
  });

  it('let a person decide a cause beside the evidence, once and for both wings', async () => {
    const desk = await onAnswers();
    await desk.user.click(desk.act('answer-2'));
    const losses = within(screen.getByRole('region', { name: 'Losses' }));
    const [item] = losses
      .getAllByRole('listitem')
      .filter(({ textContent }) => textContent?.includes('moisture M1'));
    const inside = within(item ?? document.body);
    await desk.user.click(inside.getByRole('button', { name: 'Decide cause' }));
    await desk.user.click(inside.getByRole('button', { name: 'Write cause' }));
    expect(inside.getByRole('alert')).toHaveTextContent('Choose the cause');
    await desk.user.click(inside.getByRole('radio', { name: 'moisture' }));
    await desk.user.type(inside.getByRole('textbox'), 'cirrus over both wings, slide S-02');
    await desk.user.click(inside.getByRole('button', { name: 'Write cause' }));
    const decided = () =>
      viewOf(desk.journal.entries()).standing.find(({ entry }) => entry.kind === 'causeAssigned');
    await waitFor(() => expect(decided()).toBeDefined());
    expect(decided()?.effective).toMatchObject({
      body: {
        target: flightA.entries.find(({ kind }) => kind === 'laminarLost')?.id,
        cause: 'moisture',
        reason: 'cirrus over both wings, slide S-02',
      },
    });
    await waitFor(() => expect(document.body.textContent).toContain('Decided by scribe: moisture'));
    // The candidates stay where they were.
    expect(document.body.textContent).toContain('moisture M1, 32');
  });
});

describe('answers that cannot be given', () => {
  it('say why, each on its own page, before anything was flown', async () => {
    const desk = await onAnswers(upTo(3));
    for (const { id } of QUESTIONS) {
      expect(desk.act(`answer-${id}`).textContent?.length).toBeGreaterThan(12);
    }
    expect(desk.act('answer-1').textContent).toContain('No test point was started.');
    expect(desk.act('answer-3').textContent).toContain('No moisture was written down.');
    expect(desk.act('answer-5').textContent).toContain('Suction was never on.');
    for (const { id, name } of QUESTIONS) {
      await desk.user.click(desk.act(`answer-${id}`));
      expect(screen.getByRole('article', { name })).toBeVisible();
    }
  });
});
