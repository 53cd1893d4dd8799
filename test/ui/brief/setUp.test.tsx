import { screen, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { soundSheet } from '../../record/soundSheet.ts';
import { nothingKept } from '../../journal/memoryJournal.ts';
import { onBrief, type OnBrief } from './onBrief.tsx';

async function onBlank(): Promise<OnBrief> {
  const brief = await onBrief();
  await brief.press('days.new');
  return brief;
}
const keptSheet = (brief: OnBrief) => {
  const [sheet] = brief.kept.sheets.values();
  if (sheet === undefined) {
    throw new Error('no flight sheet is kept');
  }
  return sheet;
};
const doubts = () => within(screen.getByRole('complementary', { name: 'Doubtful' }));

describe('a flight sheet from blank', () => {
  it('is kept on the shelf at each change', async () => {
    const brief = await onBlank();
    await brief.type('sheet.title', 'Two weights');
    expect(keptSheet(brief).title).toBe('Two weights');
    await brief.press('section=aircraft');
    await brief.press('sheet.aircraft.engineCount=4');
    expect(keptSheet(brief).aircraft.engineCount).toBe(4);
  });

  it('takes numbers with comma or point', async () => {
    const brief = await onBlank();
    await brief.press('section=aircraft');
    await brief.type('sheet.aircraft.wingArea', '120,5');
    expect(keptSheet(brief).aircraft.wingArea.value).toBe(120.5);
    expect(brief.field('sheet.aircraft.wingArea')).toHaveValue('120,5');
  });

  it('keeps a text that is no number, says why, and holds no number meanwhile', async () => {
    const brief = await onBlank();
    await brief.press('section=condition');
    await brief.type('sheet.condition.mach', '0.7');
    await brief.user.type(brief.field('sheet.condition.mach'), 'x');
    expect(brief.field('sheet.condition.mach')).toHaveValue('0.7x');
    expect(brief.field('sheet.condition.mach')).toHaveAccessibleDescription(
      'Mach: \u201c0.7x\u201d is not a number.',
    );
    expect(doubts().getByText('Mach: \u201c0.7x\u201d is not a number.')).toBeVisible();
    expect(keptSheet(brief).condition.mach).toBe(0);
    await brief.user.type(brief.field('sheet.condition.mach'), '{Backspace}');
    expect(keptSheet(brief).condition.mach).toBe(0.7);
  });

  it('asks about a comma that may part thousands', async () => {
    const brief = await onBlank();
    await brief.press('section=weights');
    await brief.type('sheet.weights.ramp', '42,050');
    expect(brief.field('sheet.weights.ramp')).toHaveAccessibleDescription(
      'Ramp weight: \u201c42,050\u201d may be 42050 or 42.050; write it so.',
    );
    expect(keptSheet(brief).weights.ramp).toBeUndefined();
  });

  it('comes back after a reload: the page, the values and the text that is no value yet', async () => {
    const brief = await onBlank();
    await brief.press('section=weights');
    await brief.type('sheet.weights.ramp', '42000');
    await brief.type('sheet.weights.zeroFuel', '31 thousand');
    await brief.reload();
    await screen.findByRole('heading', { name: 'Weights' });
    expect(brief.field('sheet.weights.ramp')).toHaveValue('42000');
    expect(brief.field('sheet.weights.zeroFuel')).toHaveValue('31 thousand');
  });

  it('gets the usual instruments of its engines in its units', async () => {
    const brief = await onBlank();
    await brief.press('sheet.massUnit=kg');
    await brief.press('section=aircraft');
    await brief.press('sheet.aircraft.engineCount=4');
    await brief.press('section=instruments');
    await brief.press('instruments.usual');
    const flows = keptSheet(brief).instruments.filter((one) => one.quantity === 'fuelFlow');
    expect(flows.map((one) => [one.id, one.consumer, one.unit])).toEqual([
      ['FF1', 1, 'kg/h'],
      ['FF2', 2, 'kg/h'],
      ['FF3', 3, 'kg/h'],
      ['FF4', 4, 'kg/h'],
    ]);
    expect(keptSheet(brief).instruments.map((one) => one.id)).toContain('SU');
  });

  it('makes panels of both wings and probes that share their areas', async () => {
    const brief = await onBlank();
    await brief.press('section=panels');
    await brief.type('panels.n', '4');
    await brief.type('panels.area', '6,5');
    await brief.press('panels.make');
    await brief.press('section=probes');
    await brief.press('probes.k=2');
    await brief.press('probes.make');
    const sheet = keptSheet(brief);
    expect(sheet.panels.map((panel) => panel.id)).toEqual([
      'L1',
      'L2',
      'L3',
      'L4',
      'R1',
      'R2',
      'R3',
      'R4',
    ]);
    expect(sheet.probes).toHaveLength(16);
    expect(sheet.probes[15]).toMatchObject({ id: 'R08', panel: 'R4', area: { value: 3.25 } });
  });

  it('takes the last change back', async () => {
    const brief = await onBlank();
    await brief.press('section=cards');
    await brief.press('cards.add');
    await brief.press('cards.remove');
    expect(keptSheet(brief).testCards).toEqual([]);
    await brief.press('sheet.undo');
    expect(keptSheet(brief).testCards.map((card) => card.id)).toEqual(['TP01']);
  });

  it('leads from a doubt to the field it is about', async () => {
    const kept = nothingKept();
    const sheet = soundSheet();
    const [first, ...rest] = sheet.instruments;
    if (first === undefined) {
      throw new Error('the sound sheet has instruments');
    }
    kept.sheets.set('sound', { ...sheet, instruments: [{ ...first, unit: 'kg' }, ...rest] });
    const brief = await onBrief({ kept });
    await brief.press('days.sheet=sound');
    await brief.user.click(
      await screen.findByRole('button', { name: /^FF1: kg is a mass; fuel flow is read in/ }),
    );
    expect(await screen.findByRole('heading', { name: /FF1/ })).toBeVisible();
    expect(screen.getByRole('radio', { name: 'lb/h' }).closest('fieldset')).toContainElement(
      document.activeElement instanceof HTMLElement ? document.activeElement : null,
    );
  });

  it('is copied, and the copy leaves the first one alone', async () => {
    const kept = nothingKept();
    kept.sheets.set('sound', soundSheet());
    const brief = await onBrief({ kept });
    await brief.press('days.copySheet=sound');
    await brief.type('sheet.title', 'Another day');
    expect(kept.sheets.size).toBe(2);
    expect(kept.sheets.get('sound')).toEqual(soundSheet());
  });
});
