import { describe, expect, it } from 'vitest';
import { liveEstimate } from '../../src/analysis/liveEstimate.ts';
import type { MadeOf, PointNumber, Provisional } from '../../src/analysis/results.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import { viewAsOf } from '../../src/record/asOf.ts';
import type { Body, Draft, Entry } from '../../src/record/entry.ts';
import type { FlightView } from '../../src/record/flight.ts';
import type { Calibration, FlightSheet } from '../../src/record/sheet.ts';
import { items } from '../../src/record/trail.ts';
import {
  flightA,
  LB_PER_H_PER_KG_PER_S,
  sealed,
  sheetA,
  touchAt,
  viewOfEntries,
  withSheet,
} from './flights.ts';

/* Flight A, 2 June 2032. FF1: correction -20 lb/h, due 2032-12-01, 6 lb/h left in doubt. */

const whole = viewOfEntries(flightA.entries);
const CHECKED = flightA.entries.find(({ kind }) => kind === 'calibrationChecked')?.wall ?? 0;
const LANDED = (flightA.entries.at(-1)?.wall ?? 0) + 3_600_000;

function certificate(body: Partial<Body<'instrumentCalibrated'>>, afterMs = 0): Draft {
  return {
    kind: 'instrumentCalibrated',
    body: {
      instrument: 'FF1',
      calibratedOn: '2032-05-20',
      condition: 'asFound',
      reason: 'bench',
      ...body,
    },
    stamp: touchAt(LANDED + afterMs),
  };
}

function withDrafts(...drafts: readonly Draft[]): {
  readonly view: FlightView;
  readonly added: readonly Entry[];
} {
  const added = sealed(drafts);
  return { view: viewOfEntries([...flightA.entries, ...added]), added };
}

type Valid = Extract<PointNumber, { kind: 'valid' | 'indicative' }>;

function tp02(view: FlightView): Valid {
  const result = pointResults(view).find(({ point }) => point === 'TP02')?.result;
  if (result?.kind !== 'valid') throw new RangeError(`must be valid, got ${result?.kind}`);
  return result;
}

function sheetWith(change: (calibration: Calibration) => Calibration): FlightSheet {
  return {
    ...sheetA,
    instruments: sheetA.instruments.map((gauge) =>
      gauge.id === 'FF1' ? { ...gauge, calibration: change(gauge.calibration) } : gauge,
    ),
  };
}

function provisionalWith(
  change: (calibration: Calibration) => Calibration,
): readonly Provisional[] {
  return tp02(viewOfEntries(withSheet(flightA.entries, sheetWith(change)))).provisional;
}

describe('a certificate that comes later', () => {
  const { view, added } = withDrafts(certificate({ correction: -30 }));
  const before = tp02(whole);
  const after = tp02(view);

  it('recomputes every result of the flight', () => {
    // 10 lb/h less on every reading: (Fb - F)/Fb becomes (Fb - F)/(Fb - 10), Fb 2328.8 lb/h by the worked results.
    const ratio = 2328.8 / (2328.8 - 10);
    expect(after.fuel.fraction / before.fuel.fraction).toBeCloseTo(ratio, 3);
    const shift = (before.madeOf.flowKgPerS - after.madeOf.flowKgPerS) * LB_PER_H_PER_KG_PER_S;
    expect(shift).toBeCloseTo(10, 9);
  });

  it('leaves what was read as it was read', () => {
    const read = (of: FlightView): readonly unknown[] =>
      [...items(of.state.glances)].map(({ readings }) => readings);
    expect(read(view)).toEqual(read(whole));
    expect(view.state.sheetAsWritten).toEqual(sheetA);
  });

  it('is named among the entries of the results, live and after landing', () => {
    const id = added[0]?.id;
    expect(after.madeOf.entries).toContain(id);
    expect(before.madeOf.entries).not.toContain(id);
    const live = liveEstimate(view);
    expect(live.kind).toBe('baselineReading');
    const madeOf: readonly MadeOf[] = pointResults(view).flatMap(({ result }) =>
      'madeOf' in result ? [result.madeOf] : [],
    );
    expect(madeOf.every(({ entries }) => id !== undefined && entries.includes(id))).toBe(true);
  });

  it('keeps the old result: the view as of an earlier entry says what was said then', () => {
    const last = flightA.entries.at(-1);
    const old = last === undefined ? null : viewAsOf(view, last.id);
    expect(old === null ? null : pointResults(old)).toEqual(pointResults(whole));
  });

  it('taken back is never made, and amended is read so', () => {
    const [written] = added;
    if (written === undefined) throw new RangeError('a certificate must be sealed');
    const withdrawn = withDrafts(certificate({ correction: -30 }), {
      kind: 'entryWithdrawn',
      body: { target: written.id, reason: 'other gauge' },
      stamp: touchAt(LANDED + 60_000),
    });
    expect(pointResults(withdrawn.view)).toEqual(pointResults(whole));
    const amended = withDrafts(certificate({ correction: -30 }), {
      kind: 'entryAmended',
      body: {
        target: written.id,
        replaces: [],
        changes: [{ field: 'correction', old: -30, new: -26 }],
        code: 'misKeyed',
        reason: 'slip',
      },
      stamp: touchAt(LANDED + 60_000),
    });
    const asRead = withDrafts(certificate({ correction: -26 }));
    expect(tp02(amended.view).fuel).toEqual(tp02(asRead.view).fuel);
  });

  it('gives way to a newer one, in whatever order they arrive', () => {
    const drafts = [certificate({ correction: -40 }), certificate({ correction: -30 }, 60_000)];
    const entries = [...flightA.entries, ...sealed(drafts)];
    expect(tp02(viewOfEntries(entries)).fuel).toEqual(after.fuel);
    expect(tp02(viewOfEntries(entries.toReversed())).fuel).toEqual(after.fuel);
  });
});

describe('a check before flight that differs from the flight sheet', () => {
  it('is what the readings are corrected by', () => {
    const checked: Draft = {
      kind: 'calibrationChecked',
      body: { corrections: [{ instrument: 'FF1', correction: -30 }], inDate: true },
      stamp: touchAt(CHECKED + 60_000),
    };
    const { view, added } = withDrafts(checked);
    expect(tp02(view).fuel.fraction).toBeCloseTo(
      tp02(withDrafts(certificate({ correction: -30 })).view).fuel.fraction,
      12,
    );
    expect(tp02(view).madeOf.entries).toContain(added[0]?.id);
    expect(tp02(view).provisional).toEqual([]);
  });
});

describe('the two parts of what a calibration leaves in doubt', () => {
  it('that comes anew with each reading averages out over the run', () => {
    const { view } = withDrafts(certificate({ independentStandardUncertainty: 12 }));
    const { uncertaintyParts: bare } = tp02(whole).madeOf;
    const { uncertaintyParts, baselineAtThatWeightKgPerS: kgPerS } = tp02(view).madeOf;
    // Three readings: 12/sqrt 3 lb/h more, in squares, on the run's own part; Fb carries it to a share.
    const share = 12 / Math.sqrt(3) / (kgPerS * LB_PER_H_PER_KG_PER_S);
    expect(uncertaintyParts.run).toBeCloseTo(Math.hypot(bare.run, share), 5);
    expect(uncertaintyParts.calibration).toBeCloseTo(bare.calibration, 12);
  });

  it('that all readings share counts once, and mostly cancels', () => {
    const { view } = withDrafts(certificate({ commonStandardUncertainty: 60 }));
    const { uncertaintyParts } = tp02(view).madeOf;
    const bare = tp02(whole);
    expect(uncertaintyParts.run).toBeCloseTo(bare.madeOf.uncertaintyParts.run, 12);
    // R/Fb u_cal with u_cal = hypot(60, 6) lb/h: 0.2726 * 60.3 / 2328.8.
    expect(uncertaintyParts.calibration).toBeCloseTo((0.2726 * 60.3) / 2328.8, 4);
  });
});

describe('a number from a doubtful calibration stands and says so', () => {
  it('past due on the day of the flight, not on the day itself', () => {
    expect(provisionalWith((old) => ({ ...old, dueOn: '2032-06-01' }))).toEqual([
      'calibrationPastDue',
    ]);
    expect(provisionalWith((old) => ({ ...old, dueOn: '2032-06-02' }))).toEqual([]);
  });

  it('said to be out of date before the flight', () => {
    const said: Draft = {
      kind: 'calibrationChecked',
      body: { corrections: [], inDate: false },
      stamp: touchAt(CHECKED + 60_000),
    };
    const { view, added } = withDrafts(said);
    expect(tp02(view).provisional).toEqual(['calibrationPastDue']);
    expect(tp02(view).madeOf.entries).toContain(added[0]?.id);
  });

  it('taken after the flight', () => {
    const { view } = withDrafts(certificate({ correction: -30, calibratedOn: '2032-06-20' }));
    expect(tp02(view).provisional).toEqual(['calibratedAfterFlight']);
    const live = liveEstimate(view);
    expect('provisional' in live && live.provisional).toEqual(['calibratedAfterFlight']);
  });

  it('with no doubt stated at all', () => {
    expect(provisionalWith(({ residualStandardUncertainty: _unstated, ...rest }) => rest)).toEqual([
      'noCalibrationDoubt',
    ]);
  });
});
