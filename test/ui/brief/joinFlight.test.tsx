import { screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { epochMs } from '../../../src/record/brand.ts';
import { memoryShelf } from '../../journal/memoryJournal.ts';
import { testTime } from '../../journal/testTime.ts';
import { soundSheet } from '../../record/soundSheet.ts';
import { onBrief, type OnBrief } from './onBrief.tsx';

const STAMP = { wall: epochMs(Date.UTC(2032, 5, 2, 21, 0, 0)), mono: 0, boot: 'b0' };

/** A tablet that took in the file of a flight that is open on the scribe's. */
async function withFile(): Promise<{ readonly brief: OnBrief; readonly flight: string }> {
  const scribes = memoryShelf({ clock: testTime().clock, device: 'scribe tablet' });
  const journal = await scribes.openFlight({
    nature: 'flight',
    title: 'Suction at two weights',
    date: '2032-06-02',
    device: 'scribe tablet',
    sheet: soundSheet(),
    author: { author: 'S1', role: 'scribe' },
    stamp: STAMP,
  });
  const brief = await onBrief();
  await brief.shelf.takeIn(journal.entries());
  await brief.reload();
  return { brief, flight: journal.flight };
}

describe('joining a flight that came in a file', () => {
  it('writes the recorder under author and role, and goes on to the open flight', async () => {
    const { brief, flight } = await withFile();
    await brief.press(`days.join=${flight}`);
    await screen.findByRole('heading', { name: 'Join: Suction at two weights' });
    await brief.press('join.role=wing engineer, left');
    await brief.type('join.author', 'E2');
    await brief.type('join.device', 'engineer tablet');
    await brief.press('join.go');
    await screen.findByRole('heading', { name: /Time hack/ });
    expect(brief.journal()?.entries().at(-1)).toMatchObject({
      kind: 'recorderJoined',
      author: 'E2',
      role: 'wing engineer, left',
      body: { device: 'engineer tablet', purpose: 'inFlight' },
    });
    expect(await brief.shelf.openedFlight()).toBe(flight);
  });

  it('is not done while nobody says who and in which role', async () => {
    const { brief, flight } = await withFile();
    await brief.press(`days.join=${flight}`);
    const go = await screen.findByRole('button', { name: 'Join the flight' });
    expect(go).toBeDisabled();
    await brief.type('join.author', 'E2');
    expect(go).toBeDisabled();
    await brief.press('join.role=wing engineer, right');
    expect(go).toBeEnabled();
  });
});
