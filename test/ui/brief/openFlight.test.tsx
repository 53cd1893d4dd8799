import { screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import type { Journal, Shelf } from '../../../src/journal/journal.ts';
import { epochMs } from '../../../src/record/brand.ts';
import type { KnownKind } from '../../../src/record/kinds.ts';
import { soundSheet } from '../../record/soundSheet.ts';
import { nothingKept } from '../../journal/memoryJournal.ts';
import { onBrief, type OnBrief } from './onBrief.tsx';

const STAMP = { wall: epochMs(Date.UTC(2032, 5, 2, 21, 0, 0)), mono: 0, boot: 'b0' };

/** A tablet on which the sound sheet is kept and its flight is open. */
async function withFlight(): Promise<OnBrief> {
  const kept = nothingKept();
  kept.sheets.set('sound', soundSheet());
  const opened = async (shelf: Shelf): Promise<Journal> =>
    shelf.openFlight({
      nature: 'flight',
      title: 'Suction at two weights',
      date: '2032-06-02',
      device: 'scribe tablet',
      sheet: soundSheet(),
      author: { author: 'S1', role: 'scribe' },
      stamp: STAMP,
    });
  return onBrief({ kept, journal: opened });
}

const written = (brief: OnBrief, kind: KnownKind) =>
  brief
    .journal()
    ?.entries()
    .filter((entry) => entry.kind === kind) ?? [];

describe('opening a flight', () => {
  it('writes who, what and that it is practice, and goes on to the open flight', async () => {
    const kept = nothingKept();
    kept.sheets.set('sound', soundSheet());
    const brief = await onBrief({ kept });
    await brief.press('days.sheet=sound');
    await brief.press('sheet.toOpen');
    await brief.press('open.nature=practice');
    await brief.type('open.title', 'Dry run');
    await brief.press('open.person=P1');
    await brief.press('open.go');
    expect(await screen.findByText('PRACTICE: never a flight record.')).toBeVisible();
    expect(written(brief, 'flightOpened')).toMatchObject([
      {
        author: 'P1',
        role: 'pilot',
        body: { nature: 'practice', title: 'Dry run', date: '2032-06-02', sheet: soundSheet() },
      },
    ]);
  });

  it('is not done while nobody writes, and says so', async () => {
    const kept = nothingKept();
    kept.sheets.set('sound', soundSheet());
    const brief = await onBrief({ kept });
    await brief.press('days.sheet=sound');
    await brief.press('sheet.toOpen');
    await brief.type('open.author', '');
    expect(screen.getByRole('button', { name: 'Open the flight' })).toBeDisabled();
    expect(brief.field('open.author')).toHaveAccessibleDescription(
      'Say who writes: initials are enough.',
    );
  });
});

describe('an open flight on Brief', () => {
  it('takes the touch as the tablet\u2019s time of a hack, and what the other clocks showed', async () => {
    const brief = await withFlight();
    brief.time.setWall(Date.UTC(2032, 5, 2, 21, 36, 0, 600));
    await brief.press('hack.touch');
    brief.time.advance(20_000);
    expect(await screen.findByText(/0\.6 s ahead ± 0\.3 s/)).toBeVisible();
    await brief.press('hack.write');
    expect(written(brief, 'timeHackTaken')).toMatchObject([
      {
        wall: Date.UTC(2032, 5, 2, 21, 36, 0, 600),
        body: {
          hack: 1,
          masterClock: 'master',
          master: Date.UTC(2032, 5, 2, 21, 36, 0),
          shown: [],
          doubtS: 0.3,
          method: 'read aloud, all clocks at once; master shows UTC',
        },
      },
    ]);
  });

  it('keeps a hack that is not written yet over a reload', async () => {
    const brief = await withFlight();
    brief.time.setWall(Date.UTC(2032, 5, 2, 21, 36, 0, 600));
    await brief.press('hack.touch');
    await brief.type('hack.master', '213500');
    await brief.reload();
    expect(await screen.findByText(/Touched at 21:36:00.6/)).toBeVisible();
    expect(brief.field('hack.master')).toHaveValue('213500');
    expect(screen.getByText(/check the minute that was called/)).toBeVisible();
  });

  it('writes the brief as it stands on the flight sheet and was typed', async () => {
    const brief = await withFlight();
    await brief.press('forms.open=brief');
    await brief.type('brief.bingo', '3100');
    await brief.type('brief.weather', 'cirrus forecast');
    await brief.press('brief.write');
    expect(written(brief, 'briefHeld')).toMatchObject([
      {
        body: {
          cardRevision: 'A',
          joker: { value: 4000, unit: 'lb' },
          bingo: { value: 3100, unit: 'lb' },
          targetReductionFraction: 0.25,
          stopWords: 'stop, stop, stop',
          weather: 'cirrus forecast',
        },
      },
    ]);
  });

  it('writes corrections of the flow gauges, and of others only when they were checked', async () => {
    const brief = await withFlight();
    await brief.press('brief.tab=forms');
    await brief.press('forms.tab=calibration');
    await brief.type('calibration.FF1', '\u221220');
    await brief.type('calibration.ALT', '15');
    await brief.press('calibration.write');
    expect(written(brief, 'calibrationChecked')).toMatchObject([
      {
        body: {
          corrections: [
            { instrument: 'FF1', correction: -20 },
            { instrument: 'FF2', correction: 0 },
            { instrument: 'SU', correction: 0 },
            { instrument: 'ALT', correction: 15 },
          ],
          inDate: true,
        },
      },
    ]);
  });

  it('leaves what nobody saw out of the preflight', async () => {
    const brief = await withFlight();
    await brief.press('brief.tab=forms');
    await brief.press('forms.tab=preflight');
    await brief.type('preflight.coversFitted', '6');
    await brief.type('preflight.samplersLoaded', 'S-01, S-02');
    await brief.press('preflight.write');
    const [entry] = written(brief, 'preflightDone');
    expect(entry).toMatchObject({
      body: { coversFitted: 6, coversOf: 6, samplersLoaded: ['S-01', 'S-02'] },
    });
    expect(entry).not.toHaveProperty('body.fuelDensity');
  });

  it('writes a change of the flight sheet only with its reason', async () => {
    const brief = await withFlight();
    await brief.press('brief.tab=sheet');
    await brief.press('section=limits');
    await brief.type('sheet.limits.joker', '4200');
    expect(screen.getByText('Not in the record yet:').parentElement).toHaveTextContent(
      'Limits, joker: 4200 lb, was 4000 lb.',
    );
    expect(screen.getByRole('button', { name: 'Write the change' })).toBeDisabled();
    await brief.type('change.reason', 'longer way home');
    await brief.press('change.write');
    expect(written(brief, 'flightSheetChanged')).toMatchObject([
      {
        body: {
          reason: 'longer way home',
          sheet: { limits: { joker: { value: 4200, unit: 'lb' } } },
        },
      },
    ]);
    expect(await screen.findByText(/As it stands in the record/)).toBeVisible();
  });
});

describe('the device check', () => {
  it('fills a line only when it was earned, and names the risk of the others', async () => {
    const brief = await withFlight();
    expect(await screen.findByText('214 of 214 files')).toBeVisible();
    expect(screen.getByText('Times cannot be tied to the recorder.')).toBeVisible();
    await brief.press('check=copied');
    expect(screen.queryByText('This may be its only copy. Touch when seen.')).toBeNull();
  });

  it('is accepted by a hold of 0.8 s, with the names of the lines that are open', async () => {
    const brief = await withFlight();
    await screen.findByText('214 of 214 files');
    const target = screen.getByRole('button', { name: /Hold to accept/ });
    const hold = async (heldMs: number) => {
      await brief.user.pointer({ keys: '[TouchA>]', target });
      brief.time.advance(heldMs);
      await brief.user.pointer({ keys: '[/TouchA]', target });
      brief.time.advance(2_000);
    };
    await hold(700);
    expect(written(brief, 'briefAccepted')).toEqual([]);
    await hold(900);
    expect(written(brief, 'briefAccepted')).toMatchObject([
      { body: { openLines: expect.arrayContaining(['Transmitters off', 'Clock against master']) } },
    ]);
  });
});
