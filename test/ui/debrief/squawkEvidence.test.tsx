import { waitFor } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { debriefOf, flightA, upTo } from './deskOfFlightA.tsx';

describe('a squawk', () => {
  it('names the entries that show it, offered by its panel', async () => {
    const desk = await debriefOf(upTo(140));
    const hung = flightA.entries.find(({ line }) => line.includes('"hung":["R4"]'));
    for (const act of ['tab-forms', 'form-squawk', 'panel-R4', `evidence-${hung?.seq}`]) {
      await desk.user.click(desk.act(act));
    }
    await desk.user.type(desk.act('words'), 'cover latch hung');
    await desk.user.click(desk.act('save'));
    await waitFor(() => {
      const last = desk.journal.entries().at(-1);
      expect(last).toMatchObject({ kind: 'squawkRaised', body: { evidence: [hung?.id] } });
    });
  });
});
