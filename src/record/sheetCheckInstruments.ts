import type { Consumer, FlightSheet, Instrument, Quantity } from './sheet.ts';
import {
  dimensionWords,
  doubledIds,
  doubt,
  isCalendarDate,
  type SheetDoubt,
} from './sheetDoubt.ts';
import {
  dimensionOf,
  numberWords,
  QUANTITY_WORDS,
  unitFits,
  unitsFor,
  unitWords,
} from './sheetMeasure.ts';

export function* instrumentDoubts(sheet: FlightSheet, today: string | null): Generator<SheetDoubt> {
  yield* missingInstruments(sheet);
  yield* doubledIds('instruments', 'Instrument', sheet.instruments);
  for (const [index, instrument] of sheet.instruments.entries()) {
    yield* consumerDoubts(sheet, instrument, index);
    yield* displayDoubts(instrument, index);
    yield* calibrationDoubts(instrument, index, today);
  }
}

function* missingInstruments(sheet: FlightSheet): Generator<SheetDoubt> {
  const { engineCount, suctionDrive } = sheet.aircraft;
  const engines = Array.from({ length: engineCount }, (_, index) => index + 1);
  for (const engine of engines) {
    const gauges = read(sheet, 'fuelFlow', engine);
    const [first, second] = gauges;
    if (first === undefined) {
      yield doubt('instruments', `Engine ${engine} has no fuel-flow instrument.`);
    } else if (second !== undefined) {
      yield doubt(
        'instruments',
        `${first.id} and ${second.id} both read the fuel flow of engine ${engine}.`,
      );
    } else if (!first.serviceable) {
      yield doubt(
        `instruments.${sheet.instruments.indexOf(first)}.serviceable`,
        `${first.id} is unserviceable, so engine ${engine} has no fuel flow.`,
      );
    }
    if (read(sheet, 'fuelUsed', engine).length === 0) {
      yield doubt(
        'instruments',
        `Engine ${engine} has no fuel counter: weight will not follow the flight.`,
      );
    }
  }
  const suction = sheet.instruments.find((one) => one.quantity === 'suctionFuelFlow');
  if (suctionDrive === 'ownMeteredFuel' && suction === undefined) {
    yield doubt(
      'instruments',
      'The suction unit burns its own fuel, but no instrument reads its flow.',
    );
  }
  if (suctionDrive !== 'ownMeteredFuel' && suction !== undefined) {
    yield doubt(
      `instruments.${sheet.instruments.indexOf(suction)}.quantity`,
      `${suction.id} reads suction fuel, but the suction is driven by the engines.`,
    );
  }
  const airData: readonly (readonly [readonly Quantity[], string])[] = [
    [['mach'], 'No Mach instrument: fuel flow cannot be referred.'],
    [['pressureAltitude'], 'No pressure altitude instrument: fuel flow cannot be referred.'],
    [
      ['staticAirTemp', 'totalAirTemp'],
      'No air temperature instrument: fuel flow cannot be referred.',
    ],
  ];
  for (const [quantities, words] of airData) {
    if (!sheet.instruments.some((one) => quantities.includes(one.quantity))) {
      yield doubt('instruments', words);
    }
  }
}

function read(sheet: FlightSheet, quantity: Quantity, consumer: Consumer): readonly Instrument[] {
  return sheet.instruments.filter((one) => one.quantity === quantity && one.consumer === consumer);
}

function* consumerDoubts(
  sheet: FlightSheet,
  instrument: Instrument,
  index: number,
): Generator<SheetDoubt> {
  const { id, quantity, consumer, probe } = instrument;
  const path = `instruments.${index}.consumer` as const;
  if ((quantity === 'fuelFlow' || quantity === 'fuelUsed') && consumer === undefined) {
    yield doubt(path, `${id}: say which engine it reads.`);
  }
  if (typeof consumer === 'number' && consumer > sheet.aircraft.engineCount) {
    yield doubt(
      path,
      `${id} reads engine ${consumer}, the aircraft has ${sheet.aircraft.engineCount}.`,
    );
  }
  if (quantity === 'fuelFlow' && consumer === 'suctionUnit') {
    yield doubt(path, `${id}: flow of the suction unit is the quantity suction fuel flow.`);
  }
  if (probe !== undefined && !sheet.probes.some((one) => one.id === probe)) {
    yield doubt(`instruments.${index}.probe`, `${id}: probe ${probe} is not on this flight sheet.`);
  }
}

function* displayDoubts(instrument: Instrument, index: number): Generator<SheetDoubt> {
  const { id, quantity, unit, format, resolution, rangeLow, rangeHigh } = instrument;
  if (!unitFits(instrument)) {
    const fit = unitsFor(quantity).map((one) => (one === '1' ? 'a bare number' : unitWords(one)));
    yield doubt(
      `instruments.${index}.unit`,
      `${id}: ${unit} is ${dimensionWords(dimensionOf(unit))}; ${QUANTITY_WORDS[quantity]} is read in ${fit.join(' or ')}.`,
    );
  }
  if (resolution === 0) {
    yield doubt(`instruments.${index}.resolution`, `${id}: display step not given yet.`);
  } else if (!isStepOf(resolution, format.decimals)) {
    yield doubt(
      `instruments.${index}.resolution`,
      `${id}: a step of ${numberWords(resolution)} does not show in ${format.decimals} decimals.`,
    );
  }
  if (rangeLow !== undefined && rangeHigh !== undefined && rangeLow >= rangeHigh) {
    yield doubt(
      `instruments.${index}.rangeHigh`,
      `${id}: range from ${numberWords(rangeLow)} to ${numberWords(rangeHigh)} is empty.`,
    );
  }
  const most = 10 ** format.wholeDigits;
  const widest = Math.max(Math.abs(rangeLow ?? 0), Math.abs(rangeHigh ?? 0));
  if (widest >= most) {
    yield doubt(
      `instruments.${index}.format.wholeDigits`,
      `${id}: ${numberWords(widest)} does not fit ${format.wholeDigits} boxes.`,
    );
  }
  if ((rangeLow ?? 0) < 0 && !format.signed) {
    yield doubt(
      `instruments.${index}.format.signed`,
      `${id}: range goes below zero, but the pad offers no sign.`,
    );
  }
  const { plausibleRatePerMin: rate } = instrument;
  if (rate !== undefined && !(rate > 0)) {
    yield doubt(
      `instruments.${index}.plausibleRatePerMin`,
      `${id}: plausible rate ${numberWords(rate)} a minute, but it has to be above zero.`,
    );
  }
  if (instrument.repeatability !== undefined && instrument.repeatability < 0) {
    yield doubt(
      `instruments.${index}.repeatability`,
      `${id}: repeatability ${numberWords(instrument.repeatability)} is negative.`,
    );
  }
}

function* calibrationDoubts(
  instrument: Instrument,
  index: number,
  today: string | null,
): Generator<SheetDoubt> {
  const { id, calibration, quantity, rangeHigh } = instrument;
  const weighs = quantity === 'fuelFlow' || quantity === 'suctionFuelFlow';
  if (calibration.dueOn === undefined) {
    if (weighs) {
      yield doubt(
        `instruments.${index}.calibration.dueOn`,
        `${id}: calibration due date is missing.`,
      );
    }
  } else if (!isCalendarDate(calibration.dueOn)) {
    yield doubt(
      `instruments.${index}.calibration.dueOn`,
      `${id}: calibration due ${calibration.dueOn} is not a date, YYYY-MM-DD.`,
    );
  } else if (today !== null && calibration.dueOn < today) {
    yield doubt(
      `instruments.${index}.calibration.dueOn`,
      `${id}: calibration fell due on ${calibration.dueOn}.`,
    );
  }
  if (calibration.calibratedOn !== undefined && !isCalendarDate(calibration.calibratedOn)) {
    yield doubt(
      `instruments.${index}.calibration.calibratedOn`,
      `${id}: calibrated on ${calibration.calibratedOn} is not a date, YYYY-MM-DD.`,
    );
  }
  const { calibratedOn, dueOn } = calibration;
  if (calibratedOn !== undefined && isCalendarDate(calibratedOn)) {
    if (today !== null && calibratedOn > today) {
      yield doubt(
        `instruments.${index}.calibration.calibratedOn`,
        `${id}: calibrated on ${calibratedOn}, which is still to come.`,
      );
    }
    if (dueOn !== undefined && isCalendarDate(dueOn) && dueOn <= calibratedOn) {
      yield doubt(
        `instruments.${index}.calibration.dueOn`,
        `${id}: calibration due ${dueOn}, not after ${calibratedOn} when it was done.`,
      );
    }
  }
  if (weighs && calibration.residualStandardUncertainty === undefined) {
    yield doubt(
      `instruments.${index}.calibration.residualStandardUncertainty`,
      `${id}: doubt left after calibration is not given, so the interval is too narrow.`,
    );
  }
  if ((calibration.residualStandardUncertainty ?? 0) < 0) {
    yield doubt(
      `instruments.${index}.calibration.residualStandardUncertainty`,
      `${id}: doubt left after calibration is negative.`,
    );
  }
  if ((calibration.independentStandardUncertainty ?? 0) < 0) {
    yield doubt(
      `instruments.${index}.calibration.independentStandardUncertainty`,
      `${id}: doubt that comes anew with each reading is negative.`,
    );
  }
  if (rangeHigh !== undefined && Math.abs(calibration.correction) > 0.2 * Math.abs(rangeHigh)) {
    yield doubt(
      `instruments.${index}.calibration.correction`,
      `${id}: a correction of ${numberWords(calibration.correction)} is large for a range up to ${numberWords(rangeHigh)}.`,
    );
  }
  yield* tableDoubts(instrument, index);
}

function* tableDoubts({ id, calibration }: Instrument, index: number): Generator<SheetDoubt> {
  const { points = [], asLeft = [] } = calibration;
  const tables = [
    ['points', 'calibration', points],
    ['asLeft', 'as-left', asLeft],
  ] as const;
  for (const [field, name, rows] of tables) {
    const at = `instruments.${index}.calibration.${field}` as const;
    if (rows.length === 1) {
      const article = field === 'points' ? 'a' : 'an';
      yield doubt(
        at,
        `${id}: ${article} ${name} table of one row is not used; give two or the single correction.`,
      );
    }
    for (const [row, point] of rows.entries()) {
      const before = rows[row - 1];
      if (before !== undefined && point.reading <= before.reading) {
        yield doubt(
          `${at}.${row}.reading`,
          `${id}: ${name} row ${row + 1} reads ${numberWords(point.reading)}, not above the row before.`,
        );
      }
    }
  }
  if (asLeft.length > 0 && points.length === 0) {
    yield doubt(
      `instruments.${index}.calibration.asLeft`,
      `${id}: left corrected by a table, but nothing says how it was found.`,
    );
  }
}

/** Whether steps of this size show in so many decimals: 0.05 needs two, 10 needs none. */
function isStepOf(resolution: number, decimals: number): boolean {
  const units = resolution * 10 ** decimals;
  return Math.abs(units - Math.round(units)) < 1e-6 && Math.round(units) > 0;
}
