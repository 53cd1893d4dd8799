import type { EpochMs } from '../../record/brand.ts';
import type { FlightState, Glance } from '../../record/flightState.ts';
import type { FlightSheet, Quantity } from '../../record/sheet.ts';
import { itemAt } from '../../record/trail.ts';
import { correctedReading, displayUncertaintySi, instrumentsFor } from '../calibrate.ts';

export type AirField = 'mach' | 'pressureAltitude' | 'temperature' | 'machRate' | 'altitudeRate';

/** Looks further away than this many glances are not asked: the answer must not cost more late in a flight. */
export const GLANCES_LOOKED_AT = 20;

export interface Sample {
  readonly value: number;
  readonly standardUncertainty: number;
}
export interface Look extends Sample {
  readonly index: number;
  readonly at: EpochMs;
}

/** One look at a field in SI, or null where it was not read. */
export function sampleOf(sheet: FlightSheet, glance: Glance, field: AirField): Sample | null {
  if (field !== 'temperature') return readingOf(sheet, glance, field);
  const staticAir = readingOf(sheet, glance, 'staticAirTemp');
  if (staticAir !== null) return staticAir;
  const total = readingOf(sheet, glance, 'totalAirTemp');
  const mach = readingOf(sheet, glance, 'mach');
  if (total === null || mach === null) return null;
  // The instrument shows total temperature, so its own recovery is already in its calibration.
  const ratio = 1 + 0.2 * mach.value ** 2;
  return {
    value: total.value / ratio,
    standardUncertainty: total.standardUncertainty / ratio,
  };
}

function readingOf(sheet: FlightSheet, glance: Glance, quantity: Quantity): Sample | null {
  for (const instrument of instrumentsFor(sheet, quantity)) {
    const reading = glance.readings[instrument.id];
    if (reading === undefined) continue;
    const corrected = correctedReading(instrument, reading);
    if (corrected.kind === 'uncorrected') continue;
    return {
      value: corrected.valueSi,
      standardUncertainty: displayUncertaintySi(corrected.parts),
    };
  }
  return null;
}

/** Looks of the same run, nearest first in each direction. */
export function looksOfRun(
  state: FlightState,
  sheet: FlightSheet,
  glance: Glance,
  index: number,
  field: AirField,
  directions: readonly (1 | -1)[],
): readonly Look[] {
  const { run } = glance.circumstances;
  if (run === null) return [];
  return directions.flatMap((direction) => {
    const found: Look[] = [];
    for (let step = 1; step <= GLANCES_LOOKED_AT; step += 1) {
      const at = index + direction * step;
      const other = at < 0 ? undefined : itemAt(state.glances, at);
      if (other === undefined || other.circumstances.run !== run) break;
      const sample = sampleOf(sheet, other, field);
      if (sample !== null) found.push({ ...sample, index: at, at: other.at });
    }
    return found;
  });
}
