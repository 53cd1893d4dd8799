import { differenceToSi, dimensionOf, isUnit, toSi, type Dimension } from '../aero/units.ts';
import type { Reading } from '../record/entry.ts';
import type { Unit } from '../record/measure.ts';
import type { FlightSheet, Instrument, Quantity } from '../record/sheet.ts';

/** Why a reading says nothing. Not read, not applicable, unserviceable and a query are four things. */
type Uncorrected =
  | 'notRead'
  | 'notApplicable'
  | 'unserviceable'
  | 'queried'
  /** The unit written down does not measure this quantity. */
  | 'unitUnknown';

/** A reading in SI. What was read stays beside what it means. */
export type Corrected =
  | {
      readonly kind: 'corrected';
      readonly instrument: Instrument;
      readonly valueSi: number;
      readonly asReadSi: number;
      readonly parts: DisplayParts;
    }
  | { readonly kind: 'uncorrected'; readonly because: Uncorrected };

/** Sources of doubt of one look at a display, in SI. */
export interface DisplayParts {
  readonly stepSi: number;
  /** One standard uncertainty; null where nobody declared it. */
  readonly repeatabilitySi: number | null;
  /** What the calibration leaves, shared by all readings of the flight. */
  readonly residualSi: number;
  /** What the calibration leaves anew with each reading. */
  readonly independentSi: number;
}

const DIMENSIONS: Readonly<Record<Quantity, Dimension>> = {
  fuelFlow: 'massFlow',
  suctionFuelFlow: 'massFlow',
  fuelUsed: 'mass',
  fuelRemaining: 'mass',
  tankFuel: 'mass',
  mach: 'ratio',
  pressureAltitude: 'length',
  staticAirTemp: 'temperature',
  totalAirTemp: 'temperature',
  machRate: 'perSecond',
  altitudeRate: 'speed',
  probeDeficit: 'pressure',
};

/** A reading with its instrument's correction, in SI, or why it cannot be used. */
export function correctedReading(instrument: Instrument, reading: Reading): Corrected {
  if (!instrument.serviceable) return uncorrected('unserviceable');
  if ('blank' in reading) return uncorrected(reading.blank);
  if (reading.queried !== undefined) return uncorrected('queried');
  const asRead = siValue(reading.value, reading.unit, instrument.quantity);
  const step = siDifference(instrument.resolution, instrument);
  if (asRead === undefined || step === undefined) return uncorrected('unitUnknown');
  const correction = siDifference(correctionAt(instrument, asRead), instrument) ?? 0;
  const { repeatability, calibration } = instrument;
  return {
    kind: 'corrected',
    instrument,
    valueSi: asRead + correction,
    asReadSi: asRead,
    parts: {
      stepSi: step,
      repeatabilitySi:
        repeatability === undefined
          ? null
          : (siDifference(Math.abs(repeatability), instrument) ?? null),
      residualSi: doubtSi(calibration.residualStandardUncertainty, instrument),
      independentSi: doubtSi(calibration.independentStandardUncertainty, instrument),
    },
  };
}

/** One standard uncertainty of one look at the display; half a step where no repeatability was declared. */
export function displayUncertaintySi({
  stepSi,
  repeatabilitySi,
  independentSi,
}: DisplayParts): number {
  return Math.hypot(stepSi / Math.sqrt(12), repeatabilitySi ?? stepSi / 2, independentSi);
}

export function instrumentOf(sheet: FlightSheet, id: string): Instrument | undefined {
  return sheet.instruments.find((instrument) => instrument.id === id);
}

/** Instruments of one quantity, in the order of the flight sheet. */
export function instrumentsFor(sheet: FlightSheet, quantity: Quantity): readonly Instrument[] {
  return sheet.instruments.filter((instrument) => instrument.quantity === quantity);
}

/** A measure in SI; undefined where its unit is not one of the expected dimension. */
export function measureSi(
  { value, unit }: { readonly value: number; readonly unit: Unit },
  dimension: Dimension,
): number | undefined {
  if (!isUnit(unit) || dimensionOf(unit) !== dimension) return undefined;
  const si = toSi({ value, unit });
  return si.kind === 'ready' ? si.value.value : undefined;
}

/** A step, a doubt or a tolerance in SI: as `measureSi`, without the zero of a temperature scale. */
export function measureDifferenceSi(
  { value, unit }: { readonly value: number; readonly unit: Unit },
  dimension: Dimension,
): number | undefined {
  if (!isUnit(unit) || dimensionOf(unit) !== dimension) return undefined;
  const si = differenceToSi({ value, unit });
  return si.kind === 'ready' ? si.value : undefined;
}

/** Correction in the instrument's unit; the end rows of a table hold beyond it. */
function correctionAt(instrument: Instrument, asReadSi: number): number {
  const { points = [], asLeft = points } = instrument.calibration;
  const rows = asLeft.toSorted((a, b) => a.reading - b.reading);
  const [first] = rows;
  const last = rows.at(-1);
  if (rows.length < 2 || first === undefined || last === undefined) {
    return instrument.calibration.correction;
  }
  const reading = inInstrumentUnit(instrument, asReadSi);
  if (reading <= first.reading) return first.correction;
  const above = rows.findIndex((row) => row.reading >= reading);
  const high = rows[above];
  const low = rows[above - 1];
  if (high === undefined || low === undefined) return last.correction;
  if (high.reading === low.reading) return high.correction;
  const share = (reading - low.reading) / (high.reading - low.reading);
  return low.correction + share * (high.correction - low.correction);
}

function inInstrumentUnit(instrument: Instrument, valueSi: number): number {
  const zero = siValue(0, instrument.unit, instrument.quantity) ?? 0;
  const one = siDifference(1, instrument) ?? 1;
  return (valueSi - zero) / one;
}

function siValue(value: number, unit: Unit, quantity: Quantity): number | undefined {
  return measureSi({ value, unit }, DIMENSIONS[quantity]);
}

function siDifference(value: number, { unit, quantity }: Instrument): number | undefined {
  return measureDifferenceSi({ value, unit }, DIMENSIONS[quantity]);
}

function doubtSi(declared: number | undefined, instrument: Instrument): number {
  return siDifference(Math.abs(declared ?? 0), instrument) ?? 0;
}

function uncorrected(because: Uncorrected): Corrected {
  return { kind: 'uncorrected', because };
}
