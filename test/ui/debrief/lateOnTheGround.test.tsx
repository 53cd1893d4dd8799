import { waitFor } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { flightResults } from '../../../src/analysis/flightResults.ts';
import { viewOf } from '../../../src/record/flight.ts';
import { debriefOf, flightA, type DebriefDesk } from './deskOfFlightA.tsx';

async function fill(desk: DebriefDesk, typed: Readonly<Record<string, string>>): Promise<void> {
  for (const [act, words] of Object.entries(typed)) {
    await desk.user.clear(desk.act(act));
    await desk.user.type(desk.act(act), words);
  }
}

const onForm = async (form: string): Promise<DebriefDesk> => {
  const desk = await debriefOf(flightA.entries);
  await desk.user.click(desk.act('tab-forms'));
  await desk.user.click(desk.act(form));
  return desk;
};

/** Debrief joins the flight with its first entry; what was written comes after. */
const own = (desk: DebriefDesk) =>
  desk.journal
    .entries()
    .filter(({ rec, kind }) => rec === desk.journal.recorder() && kind !== 'recorderJoined');

describe('a certificate that comes after the flight', () => {
  it('is written as found, and the points say that they were worked out anew', async () => {
    const desk = await onForm('form-calibration');
    await desk.user.selectOptions(desk.act('instrument'), 'FF1');
    await fill(desk, {
      'calibrated-on': '2032-06-05',
      'due-on': '2033-06-05',
      correction: '-12',
      common: '3',
      reason: 'certificate 117',
    });
    await desk.user.click(desk.act('save'));
    await waitFor(() => expect(own(desk)).toHaveLength(1));
    expect(own(desk)[0]).toMatchObject({
      kind: 'instrumentCalibrated',
      body: {
        instrument: 'FF1',
        condition: 'asFound',
        calibratedOn: '2032-06-05',
        dueOn: '2033-06-05',
        correction: -12,
        commonStandardUncertainty: 3,
        reason: 'certificate 117',
      },
    });
    const before = flightResults(viewOf(flightA.entries)).points;
    const after = flightResults(viewOf(desk.journal.entries())).points;
    const kgPerS = (points: typeof before): number => {
      const result = points.find(({ point }) => point === 'TP01')?.result;
      return result?.kind === 'baseline' ? result.flowAtCardKgPerS : Number.NaN;
    };
    // One engine of two reads otherwise by the difference of the corrections; 0.45359237 kg to the pound.
    const old = viewOf(flightA.entries).state.sheet?.instruments.find(({ id }) => id === 'FF1');
    const byLbPerHour = -12 - (old?.calibration.correction ?? 0);
    const movedLbPerHour = ((kgPerS(after) - kgPerS(before)) * 3600) / 0.45359237;
    expect(byLbPerHour).not.toBe(0);
    expect(movedLbPerHour / byLbPerHour).toBeCloseTo(1, 1);
    expect(after.find(({ point }) => point === 'TP03')?.result).toMatchObject({
      provisional: expect.arrayContaining(['calibratedAfterFlight']),
    });
  });

  it('takes a table, and refuses in words what is none', async () => {
    const desk = await onForm('form-calibration');
    await desk.user.selectOptions(desk.act('instrument'), 'FF2');
    await fill(desk, { 'calibrated-on': '5 June', reason: 'bench' });
    await desk.user.click(desk.act('save'));
    expect(document.body.textContent).toContain('Calibrated on: a date as 2032-06-05.');
    await fill(desk, { 'calibrated-on': '2032-06-05' });
    await desk.user.click(desk.act('save'));
    expect(document.body.textContent).toContain('a certificate says one of them');
    await fill(desk, { table: '800 -3' });
    await desk.user.click(desk.act('save'));
    expect(document.body.textContent).toContain('The table needs two rows or more');
    await fill(desk, { table: '800 -3{enter}1200 \u22125,5' });
    await desk.user.click(desk.act('condition=asLeft').querySelector('input') ?? document.body);
    expect(document.body.textContent).toContain('says nothing of this flight');
    await desk.user.click(desk.act('save'));
    await waitFor(() => expect(own(desk)).toHaveLength(1));
    expect(own(desk)[0]).toMatchObject({
      body: {
        condition: 'asLeft',
        points: [
          { reading: 800, correction: -3 },
          { reading: 1200, correction: -5.5 },
        ],
      },
    });
  });
});

describe('fuel uplift', () => {
  it('is written with its density and its own time, and joins the books', async () => {
    const desk = await onForm('form-uplift');
    await desk.user.click(desk.act('save'));
    expect(document.body.textContent).toContain('Uplift is a figure above zero');
    await desk.user.click(desk.act('amount-unit=USgal').querySelector('input') ?? document.body);
    await fill(desk, { amount: '1071', density: '6.70', temperature: '15', docket: 'D-9' });
    await fill(desk, { date: '2032-06-03', time: '03:10' });
    await desk.user.click(desk.act('save'));
    await waitFor(() => expect(own(desk)).toHaveLength(1));
    expect(own(desk)[0]).toMatchObject({
      kind: 'fuelUplifted',
      body: {
        amount: { value: 1071, unit: 'USgal' },
        density: { value: 6.7, unit: 'lb/USgal' },
        temperature: { value: 15, unit: 'degC' },
        docket: 'D-9',
        basis: 'late',
        at: Date.parse('2032-06-03T03:10:00Z'),
      },
    });
  });
});
