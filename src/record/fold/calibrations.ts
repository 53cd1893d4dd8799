import { canonicalJson } from '../canonical.ts';
import type { EntryOf } from '../entry.ts';
import type { CalibrationInForce, Timed } from '../flightState.ts';
import type { Calibration, FlightSheet, Instrument } from '../sheet.ts';
import { doubted, type Fold, withMemory, withState } from './fold.ts';
import { sheetIndex } from './sheetIndex.ts';

/*
 * How an instrument reads, by the newest word on it, for the whole flight. Words are: the flight sheet, where it gives an
 * instrument another calibration than the sheet before; a check before flight, where its correction differs; and a
 * certificate. A certificate taken as left after the flight speaks of the gauge as it is now, not as it was flown.
 */

/** Entries that one calibration in force may name; a foreign file could give it all of its own. */
const MOST_NAMED = 20;

/** A check that repeats what is in force is no news: a table on the flight sheet stays. */
export function calibrationChecked(
  fold: Fold,
  entry: EntryOf<'calibrationChecked'>,
  timed: Timed,
): Fold {
  const { corrections, inDate } = entry.body;
  const checked = corrections.reduce((before, { instrument, correction }) => {
    const calibration = known(before, instrument)?.calibration;
    if (calibration === undefined) return doubted(before, timed, 'unknownInstrument', instrument);
    if (calibration.correction === correction) return before;
    const { points: _table, ...rest } = calibration;
    return withCalibration(before, instrument, {
      calibration: { ...rest, correction },
      by: [...namedBefore(before, instrument), entry.id].slice(-MOST_NAMED),
      condition: null,
    });
  }, fold);
  return inDate === undefined
    ? checked
    : withState(checked, { calibrationsInDate: { ...timed, inDate } });
}

export function instrumentCalibrated(
  fold: Fold,
  entry: EntryOf<'instrumentCalibrated'>,
  timed: Timed,
): Fold {
  const { instrument, condition, calibratedOn } = entry.body;
  const before = known(fold, instrument)?.calibration;
  if (before === undefined) return doubted(fold, timed, 'unknownInstrument', instrument);
  const { date } = fold.state;
  if (condition === 'asLeft' && date !== null && calibratedOn > date) return fold;
  return withCalibration(fold, instrument, {
    calibration: certified(before, entry.body),
    by: [...(saysAll(entry.body) ? [] : namedBefore(fold, instrument)), entry.id].slice(
      -MOST_NAMED,
    ),
    condition,
  });
}

/** The sheet as written, with what entries said of its instruments; one that a sheet calibrates anew takes the sheet's word. */
export function sheetInForce(
  fold: Fold,
  sheet: FlightSheet,
): {
  readonly sheet: FlightSheet;
  readonly calibrations: Readonly<Record<string, CalibrationInForce>>;
} {
  const { sheetAsWritten, calibrations } = fold.state;
  const kept = sheet.instruments.flatMap(({ id, calibration }) => {
    const said = calibrations[id];
    const written = sheetAsWritten?.instruments.find((one) => one.id === id)?.calibration;
    return said === undefined || !sameCalibration(written, calibration)
      ? []
      : [[id, said] as const];
  });
  return calibrated(sheet, Object.fromEntries(kept));
}

function certified(
  before: Calibration,
  said: EntryOf<'instrumentCalibrated'>['body'],
): Calibration {
  const { correction, points, dueOn, calibratedOn } = said;
  const { points: table, dueOn: _due, ...rest } = before;
  const kept = points ?? (correction === undefined ? table : undefined);
  return {
    ...rest,
    ...(correction !== undefined && { correction }),
    ...(kept !== undefined && { points: kept }),
    ...(said.commonStandardUncertainty !== undefined && {
      residualStandardUncertainty: said.commonStandardUncertainty,
    }),
    ...(said.independentStandardUncertainty !== undefined && {
      independentStandardUncertainty: said.independentStandardUncertainty,
    }),
    calibratedOn,
    // A new certificate ends the old term, also where it gives none.
    ...(dueOn !== undefined && { dueOn }),
  };
}

/** Nothing of what was in force before is left. */
function saysAll(said: EntryOf<'instrumentCalibrated'>['body']): boolean {
  return (
    (said.correction !== undefined || said.points !== undefined) &&
    said.commonStandardUncertainty !== undefined &&
    said.independentStandardUncertainty !== undefined
  );
}

function withCalibration(fold: Fold, instrument: string, said: CalibrationInForce): Fold {
  const { sheetAsWritten, calibrations } = fold.state;
  if (sheetAsWritten === null) return fold;
  const next = calibrated(sheetAsWritten, { ...calibrations, [instrument]: said });
  return withMemory(withState(fold, next), { sheet: sheetIndex(next.sheet) });
}

function calibrated(
  sheet: FlightSheet,
  calibrations: Readonly<Record<string, CalibrationInForce>>,
): { readonly sheet: FlightSheet; readonly calibrations: typeof calibrations } {
  if (Object.keys(calibrations).length === 0) return { sheet, calibrations };
  const instruments = sheet.instruments.map((instrument): Instrument => {
    const said = calibrations[instrument.id];
    return said === undefined ? instrument : { ...instrument, calibration: said.calibration };
  });
  return { sheet: { ...sheet, instruments }, calibrations };
}

function known(fold: Fold, instrument: string): Instrument | undefined {
  return fold.memory.sheet.instruments.get(instrument);
}

function namedBefore(fold: Fold, instrument: string): CalibrationInForce['by'] {
  return fold.state.calibrations[instrument]?.by ?? [];
}

function sameCalibration(a: Calibration | undefined, b: Calibration): boolean {
  return a !== undefined && canonicalJson(a) === canonicalJson(b);
}
