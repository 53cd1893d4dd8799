import { waitFor } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { viewOf } from '../../../src/record/flight.ts';
import { debriefOf, flightA, upTo, type DebriefDesk } from './deskOfFlightA.tsx';

/** The body that the script itself gives to a line. */
function bodyOfLine(n: number): unknown {
  const entry = flightA.entries.find(({ id }) => id === flightA.idOf.get(n));
  return entry === undefined || entry.kind === 'unrecognised' ? undefined : entry.body;
}

async function fill(desk: DebriefDesk, typed: Readonly<Record<string, string>>): Promise<void> {
  for (const [act, words] of Object.entries(typed)) {
    await desk.user.clear(desk.act(act));
    await desk.user.type(desk.act(act), words);
  }
}

async function press(desk: DebriefDesk, ...acts: readonly string[]): Promise<void> {
  for (const act of acts) {
    await desk.user.click(desk.act(act));
  }
}

/** The newest entry written here, once `count` are on disk. */
async function written(desk: DebriefDesk, count: number): Promise<unknown> {
  const own = () => desk.journal.entries().filter(({ rec }) => rec === desk.journal.recorder());
  await waitFor(() => expect(own()).toHaveLength(count));
  const entry = own().at(-1);
  return entry === undefined || entry.kind === 'unrecognised' ? undefined : entry.body;
}

describe('after flight A, by the forms', () => {
  it('writes custody, inspection, squawks, the countersigned amendment, the signature and the laboratory', async () => {
    const desk = await debriefOf(upTo(138));
    let count = 1; // joining the flight as a recorder of its own is the first entry

    await press(desk, 'tab-forms', 'sample-S-01', 'sample-S-02', 'sample-S-03', 'sample-S-04');
    await fill(desk, { to: 'lab courier', seals: 'checked, unbroken' });
    await press(desk, 'save');
    expect(await written(desk, (count += 1))).toEqual(bodyOfLine(139));

    await press(desk, 'form-inspection');
    await press(desk, ...['L2', 'L3', 'L4', 'R3', 'R5', 'R6'].map((id) => `clean-${id}`));
    await press(desk, 'not-yet-L6');
    await fill(desk, {
      'finding-L1': 'root fillet rough',
      'finding-L5': 'insect residue at 4 % chord',
      'finding-R1': 'root fillet rough',
      'finding-R2': 'two insect hits, span 33 %',
      'finding-R4': 'tape strip standing 0.02 in high at 6 % chord',
    });
    await press(desk, 'save');
    expect(await written(desk, (count += 1))).toEqual(bodyOfLine(140));

    await press(desk, 'form-squawk', 'panel-R4');
    await fill(desk, {
      words:
        'cover latch hung; tape strip standing 0.02 in high at 6 % chord; replace, strip, fair',
      labour: '4.5',
    });
    await press(desk, 'save');
    expect(await written(desk, (count += 1))).toEqual(bodyOfLine(141));

    await press(desk, 'panel-L1', 'panel-R1');
    await fill(desk, { squawk: 'SQ-3', words: 'root fillets rough; fill and sand', labour: '7.5' });
    await press(desk, 'save');
    expect(await written(desk, (count += 1))).toEqual(bodyOfLine(143));

    await fill(desk, {
      'panels-other': 'cabin',
      squawk: 'SQ-5',
      words: 'panel clock losing; reset',
      labour: '0.4',
    });
    await press(desk, 'save');
    expect(await written(desk, (count += 1))).toEqual(bodyOfLine(145));

    await press(desk, 'tab-timeline');
    const swapped = flightA.idOf.get(106);
    const mark = desk.all('mark').find((one) => one.dataset['entry'] === swapped);
    await desk.user.click(mark ?? desk.act('no such mark'));
    await press(desk, 'detail-amend');
    await fill(desk, {
      'field-readings.FF1.value': '830',
      'field-readings.FF2.value': '780',
      reason: 'engines swapped',
      basis: 'photo panel frame 469',
      countersigned: 'right engineer',
    });
    await press(desk, 'code-swapped', 'save');
    expect(await written(desk, (count += 1))).toMatchObject({
      target: swapped,
      changes: [
        { field: 'readings.FF1.value', old: 780, new: 830 },
        { field: 'readings.FF2.value', old: 830, new: 780 },
      ],
      code: 'swapped',
      reason: 'engines swapped',
      basisWords: 'photo panel frame 469',
      countersignedBy: 'right engineer',
    });

    await press(desk, 'tab-sign', 'signer-scribe', 'signer-pilot');
    const named = desk.all('open-item').length;
    expect(named).toBeGreaterThan(0);
    await press(desk, 'sign');
    const signature = await written(desk, (count += 1));
    expect(signature).toMatchObject({ signedBy: ['pilot', 'scribe'] });
    expect(signature).toHaveProperty(
      'openItems',
      expect.arrayContaining([
        'L6 not yet inspected',
        'Lab results pending: S-01, S-02, S-03, S-04',
        'TP06 to re-fly: terminated',
      ]),
    );
    // Two recorders wrote: both heads are frozen.
    expect(signature).toHaveProperty('heads.length', 2);

    await press(desk, 'tab-forms', 'form-lab');
    await desk.user.selectOptions(desk.act('sample'), 'S-01');
    await fill(desk, { number: '0.6', method: 'microscope count, 5 fields', analyst: 'lab' });
    await press(desk, 'save');
    // A size nobody measured is absent, not zero.
    expect(await written(desk, (count += 1))).toEqual(bodyOfLine(149));
    await waitFor(() => expect(document.body.textContent).toContain('Addendum'));

    const { state } = viewOf(desk.journal.entries());
    expect(state.signed).toHaveLength(1);
  }, 30_000);

  it('refuses an empty form in words and writes nothing', async () => {
    const desk = await debriefOf(upTo(138));
    const before = desk.journal.entries().length;
    await press(desk, 'tab-forms', 'save');
    expect(document.body.textContent).toContain('Choose the samples first.');
    await press(desk, 'form-squawk', 'save');
    expect(document.body.textContent).toContain('Give its number, where it is and what is wrong.');
    expect(desk.journal.entries()).toHaveLength(before);
  });
});
