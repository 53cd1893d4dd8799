import type { Measure } from './measure.ts';
import type { FlightSheet } from './sheet.ts';
import { doubt, positiveMeasure, withinSpan, type SheetDoubt } from './sheetDoubt.ts';
import { dimensionOf, inBase, measureWords, numberWords } from './sheetMeasure.ts';
import { dragDoubts } from './sheetCheckDrag.ts';
import { suctionDoubts } from './sheetCheckSuction.ts';
import type { SheetPath } from './sheetEdit.ts';

/** Spans of these checks are wide guesses at what any research aircraft may have: common practice, no source. */

export function* aircraftDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const { aircraft } = sheet;
  if (sheet.title.trim() === '') {
    yield doubt('title', 'Title of the flight: not given yet.');
  }
  if (sheet.revision.trim() === '') {
    yield doubt(
      'revision',
      'Revision: not given, so this flight sheet cannot be told from the next.',
    );
  }
  if (
    sheet.localOffsetH !== undefined &&
    !(sheet.localOffsetH >= -12 && sheet.localOffsetH <= 14)
  ) {
    yield doubt(
      'localOffsetH',
      `Local time: ${numberWords(sheet.localOffsetH)} h from UTC, but zones run from \u221212 to +14 h.`,
    );
  }
  if (sheet.stopWords === undefined || sheet.stopWords.trim() === '') {
    yield doubt('stopWords', 'Stop words: not briefed yet.');
  }
  if (aircraft.mark.trim() === '') {
    yield doubt('aircraft.mark', 'Aircraft mark: not given yet.');
  }
  yield* positiveMeasure('aircraft.wingArea', 'Wing area', aircraft.wingArea, 'area');
  const areaM2 = inBase(aircraft.wingArea);
  if (areaM2 !== null && areaM2 > 0 && (areaM2 < 4 || areaM2 > 1000)) {
    yield doubt(
      'aircraft.wingArea',
      `Wing area: ${measureWords(aircraft.wingArea)} is unlikely for an aircraft; check the unit.`,
    );
  }
  yield* withinSpan(
    'aircraft.machSensitivitySuctionOff',
    'Mach sensitivity, suction off',
    aircraft.machSensitivitySuctionOff,
    [0, 6],
  );
  yield* withinSpan(
    'aircraft.machSensitivitySuctionOn',
    'Mach sensitivity, suction on',
    aircraft.machSensitivitySuctionOn,
    [0, 6],
  );
  yield* withinSpan(
    'aircraft.liftToDragAtMost',
    'Greatest lift to drag',
    aircraft.liftToDragAtMost,
    [5, 60],
  );
  yield* dragDoubts(sheet);
  yield* suctionDoubts(sheet);
  yield* baselineDoubts(sheet);
}

function* baselineDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const { borrowedBaseline: borrowed, targetReductionFraction: target } = sheet;
  if (borrowed === undefined) {
    yield doubt(
      'borrowedBaseline',
      'Nothing borrowed from earlier flights: figures stay provisional until a second baseline run.',
    );
  } else {
    yield* withinSpan(
      'borrowedBaseline.weightElasticity',
      'Borrowed weight elasticity',
      borrowed.weightElasticity,
      [0.1, 1.5],
    );
    if (!(borrowed.standardUncertainty > 0)) {
      yield doubt(
        'borrowedBaseline.standardUncertainty',
        'Borrowed weight elasticity: its doubt is not given yet.',
      );
    }
    if (borrowed.from.trim() === '') {
      yield doubt('borrowedBaseline.from', 'Borrowed baseline: say which flights it is from.');
    }
  }
  if (target !== undefined && !(target > 0 && target < 0.7)) {
    yield doubt(
      'targetReductionFraction',
      `Target: ${numberWords(target * 100)} %, but a target lies between 0 and 70 %.`,
    );
  }
}

export function* weightDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const { ramp, zeroFuel, rampFuel, grossWeightStandardUncertainty: deviation } = sheet.weights;
  const given = [
    ['weights.ramp', 'Ramp weight', ramp],
    ['weights.zeroFuel', 'Zero-fuel weight', zeroFuel],
    ['weights.rampFuel', 'Ramp fuel', rampFuel],
    ['weights.grossWeightStandardUncertainty', 'Doubt of the gross weight', deviation],
  ] as const satisfies readonly (readonly [SheetPath, string, Measure | undefined])[];
  for (const [path, name, measure] of given) {
    if (measure === undefined) {
      yield doubt(path, `${name}: not given yet.`);
      continue;
    }
    yield* positiveMeasure(path, name, measure, 'mass');
    if (measure.unit !== sheet.massUnit && dimensionOf(measure.unit) === 'mass') {
      yield doubt(
        path,
        `${name} is in ${measure.unit}, this flight sheet works in ${sheet.massUnit}.`,
      );
    }
  }
  const rampKg = ramp === undefined ? null : inBase(ramp);
  const sumKg = sumBase(zeroFuel, rampFuel);
  if (ramp !== undefined && rampKg !== null && sumKg !== null && rampKg > 0) {
    if (Math.abs(sumKg - rampKg) > 0.002 * rampKg) {
      const sum = { value: (sumKg / rampKg) * ramp.value, unit: ramp.unit };
      yield doubt(
        'weights.ramp',
        `Zero-fuel weight and ramp fuel add up to ${measureWords(rounded(sum))}, ramp weight says ${measureWords(ramp)}.`,
      );
    }
    const deviationKg = deviation === undefined ? null : inBase(deviation);
    if (deviationKg !== null && deviationKg > 0.05 * rampKg) {
      yield doubt(
        'weights.grossWeightStandardUncertainty',
        'Doubt of the gross weight: more than 5 % of the ramp weight.',
      );
    }
  }
}

export function* conditionDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const { condition, tolerances } = sheet;
  if (condition.mach === 0) {
    yield doubt('condition.mach', 'Mach of the cards: not given yet.');
  } else {
    yield* withinSpan('condition.mach', 'Mach of the cards', condition.mach, [0.15, 0.95]);
  }
  yield* positiveMeasure(
    'condition.pressureAltitude',
    'Height of the cards',
    condition.pressureAltitude,
    'length',
  );
  const heightM = inBase(condition.pressureAltitude);
  if (heightM !== null && heightM !== 0 && (heightM < 1000 || heightM > 20_000)) {
    yield doubt(
      'condition.pressureAltitude',
      `Height of the cards: ${measureWords(condition.pressureAltitude)} is unlikely for a cruise card; a flight level is in hundreds of feet.`,
    );
  }
  const named = [
    ['tolerances.mach', 'Mach tolerance', tolerances.mach, 0.03],
    ['tolerances.machRatePerMin', 'Mach rate tolerance', tolerances.machRatePerMin, 0.02],
  ] as const;
  for (const [path, name, value, most] of named) {
    if (value === 0) {
      yield doubt(path, `${name}: not given, so no reading would pass.`);
    } else {
      yield* withinSpan(path, name, value, [0, most]);
    }
  }
  yield* positiveMeasure('tolerances.altitude', 'Height tolerance', tolerances.altitude, 'length');
  yield* positiveMeasure('tolerances.climb', 'Height rate tolerance', tolerances.climb, 'speed');
  yield* withinSpan(
    'machHoldStandardUncertainty',
    'Doubt of the Mach hold',
    sheet.machHoldStandardUncertainty,
    [0, 0.02],
  );
  yield* withinSpan('timeDoubts.touchS', 'Doubt of a touch', sheet.timeDoubts.touchS, [0.1, 60]);
  yield* withinSpan(
    'timeDoubts.readingS',
    'Doubt of a reading',
    sheet.timeDoubts.readingS,
    [0.1, 120],
  );
  yield* withinSpan('timeDoubts.lateS', 'Doubt of a late entry', sheet.timeDoubts.lateS, [1, 600]);
}

function sumBase(a: Measure | undefined, b: Measure | undefined): number | null {
  const left = a === undefined ? null : inBase(a);
  const right = b === undefined ? null : inBase(b);
  return left === null || right === null ? null : left + right;
}

function rounded(measure: Measure): Measure {
  return { ...measure, value: Math.round(measure.value) };
}
