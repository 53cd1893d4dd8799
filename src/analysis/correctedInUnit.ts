import { differenceFromSi, isUnit } from '../aero/units.ts';
import type { Reading } from '../record/entry.ts';
import type { FlightSheet } from '../record/sheet.ts';
import { correctedReading, instrumentOf } from './calibrate.ts';

/**
 * A reading with the correction of its instrument, in the unit in which it was read.
 *
 * @returns null where it says nothing: blank, queried, or of an instrument that is unserviceable or unknown
 */
export function correctedInUnit(sheet: FlightSheet | null, reading: Reading): number | null {
  const instrument = sheet === null ? undefined : instrumentOf(sheet, reading.instrument);
  if (instrument === undefined || 'blank' in reading || !isUnit(reading.unit)) return null;
  const corrected = correctedReading(instrument, reading);
  if (corrected.kind === 'uncorrected') return null;
  const correction = differenceFromSi({
    value: corrected.valueSi - corrected.asReadSi,
    unit: reading.unit,
  });
  return correction.kind === 'ready' ? reading.value + correction.value : null;
}
