import { describe, expect, it } from 'vitest';
import { viewAsOf } from '../../src/record/asOf.ts';
import { entryId } from '../../src/record/brand.ts';
import { viewOf } from '../../src/record/flight.ts';
import type { FlightState } from '../../src/record/flightState.ts';
import type { Calibration, FlightSheet } from '../../src/record/sheet.ts';
import { scriptA } from '../flights/flightA.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { doubtsOf, say, stateAfter } from './folding.ts';
import { chained, START_MS, type Said } from './writing.ts';

/* Flight of 2 June 2032. FF1 of its sheet: correction -20, due 2032-12-01, 6 left in doubt. */

function calibrationOf(state: FlightState, id: string): Calibration | undefined {
  return state.sheet?.instruments.find((one) => one.id === id)?.calibration;
}

function certificate(body: object): Said {
  return say('instrumentCalibrated', {
    instrument: 'FF1',
    calibratedOn: '2032-05-20',
    condition: 'asFound',
    reason: 'bench',
    ...body,
  });
}

function sheetWith(change: Partial<Calibration>): FlightSheet {
  const sheet = sheetOfScript(scriptA);
  return {
    ...sheet,
    instruments: sheet.instruments.map((one) =>
      one.id === 'FF1' ? { ...one, calibration: { ...one.calibration, ...change } } : one,
    ),
  };
}

describe('a certificate', () => {
  it('is in force for the instrument it names, and leaves the sheet as written', () => {
    const state = stateAfter([certificate({ correction: -32, commonStandardUncertainty: 3 })]);
    expect(calibrationOf(state, 'FF1')).toEqual({
      correction: -32,
      residualStandardUncertainty: 3,
      calibratedOn: '2032-05-20',
    });
    expect(calibrationOf(state, 'FF2')?.correction).toBe(10);
    expect(state.sheetAsWritten).toEqual(sheetOfScript(scriptA));
    expect(Object.keys(state.calibrations)).toEqual(['FF1']);
  });

  it('keeps what it does not say: doubts alone leave a table, a correction alone ends one', () => {
    const points = [
      { reading: 0, correction: 0 },
      { reading: 1000, correction: -20 },
    ];
    const table = certificate({ points });
    const doubt = certificate({ independentStandardUncertainty: 2, dueOn: '2033-05-20' });
    expect(calibrationOf(stateAfter([table, doubt]), 'FF1')).toEqual({
      correction: -20,
      points,
      residualStandardUncertainty: 6,
      independentStandardUncertainty: 2,
      calibratedOn: '2032-05-20',
      dueOn: '2033-05-20',
    });
    const single = stateAfter([table, certificate({ correction: -25 })]);
    expect(calibrationOf(single, 'FF1')?.points).toBeUndefined();
    expect(calibrationOf(single, 'FF1')?.correction).toBe(-25);
  });

  it('names every entry that it still rests on, and only those', () => {
    const whole = {
      correction: -1,
      commonStandardUncertainty: 1,
      independentStandardUncertainty: 1,
    };
    const named = (saids: readonly Said[]): number =>
      stateAfter(saids).calibrations['FF1']?.by.length ?? 0;
    expect(named([certificate({ correction: -30 }), certificate({ dueOn: '2033-01-01' })])).toBe(2);
    expect(named([certificate({ correction: -30 }), certificate(whole)])).toBe(1);
  });

  it('taken as found after the flight speaks of it; as left after the flight does not', () => {
    const after = { correction: -40, calibratedOn: '2032-06-20' };
    const found = stateAfter([certificate(after)]);
    expect(calibrationOf(found, 'FF1')?.correction).toBe(-40);
    expect(found.calibrations['FF1']?.condition).toBe('asFound');
    const left = stateAfter([certificate({ ...after, condition: 'asLeft' })]);
    expect(calibrationOf(left, 'FF1')?.correction).toBe(-20);
    // Adjusted before the flight, it is how the gauge was flown.
    const before = stateAfter([certificate({ correction: -40, condition: 'asLeft' })]);
    expect(calibrationOf(before, 'FF1')?.correction).toBe(-40);
  });

  it('of an instrument that nobody knows is a question and changes nothing', () => {
    const state = stateAfter([certificate({ instrument: 'FF9', correction: 1 })]);
    expect(doubtsOf(state)).toEqual(['unknownInstrument: FF9']);
    expect(state.sheet).toEqual(state.sheetAsWritten);
  });
});

describe('a check before flight', () => {
  it('that repeats what is in force is no news, also beside a table', () => {
    const points = [
      { reading: 0, correction: 0 },
      { reading: 1000, correction: -20 },
    ];
    const checked = say('calibrationChecked', {
      corrections: [{ instrument: 'FF1', correction: -20 }],
    });
    const state = stateAfter([certificate({ points }), checked]);
    expect(calibrationOf(state, 'FF1')?.points).toEqual(points);
  });

  it('that differs is the newest word, and keeps the doubts', () => {
    const checked = say('calibrationChecked', {
      corrections: [{ instrument: 'FF1', correction: -24 }],
      inDate: false,
    });
    const state = stateAfter([checked]);
    expect(calibrationOf(state, 'FF1')).toMatchObject({
      correction: -24,
      residualStandardUncertainty: 6,
    });
    expect(state.calibrationsInDate?.inDate).toBe(false);
  });
});

describe('a changed flight sheet', () => {
  const changed = (sheet: FlightSheet): Said =>
    say('flightSheetChanged', { sheet, reason: 'cards' });

  it('that says nothing new of an instrument leaves the certificate in force', () => {
    const state = stateAfter([
      certificate({ correction: -32 }),
      changed({ ...sheetOfScript(scriptA), revision: 'Z' }),
    ]);
    expect(calibrationOf(state, 'FF1')?.correction).toBe(-32);
    expect(state.sheet?.revision).toBe('Z');
  });

  it('that calibrates it anew is the newest word', () => {
    const state = stateAfter([
      certificate({ correction: -32 }),
      changed(sheetWith({ correction: -22 })),
    ]);
    expect(calibrationOf(state, 'FF1')?.correction).toBe(-22);
    expect(state.calibrations).toEqual({});
  });
});

describe('the flight as it was known', () => {
  it('at an earlier entry knows nothing written later, also of the past', () => {
    const opening: Said = {
      kind: 'flightOpened',
      afterMs: 0,
      body: {
        nature: 'practice',
        title: 'As of',
        date: '2032-06-02',
        device: 'tablet',
        sheet: sheetOfScript(scriptA),
      },
    };
    const entries = chained([
      opening,
      { ...say('markMade'), afterMs: 10_000 },
      { ...certificate({ correction: -40, at: START_MS + 5000 }), afterMs: 20_000 },
    ]);
    const view = viewOf(entries);
    const marked = entries[1];
    if (marked === undefined) throw new RangeError('there must be a mark');
    expect(calibrationOf(view.state, 'FF1')?.correction).toBe(-40);
    const old = viewAsOf(view, marked.id);
    expect(old === null ? undefined : calibrationOf(old.state, 'FF1')?.correction).toBe(-20);
    expect(old?.state.entryCount).toBe(2);
    expect(viewAsOf(view, entryId('0'.repeat(64)))).toBeNull();
  });
});
