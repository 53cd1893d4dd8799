import type { Measure } from './measure.ts';
import type { FlightSheet } from './sheet.ts';
import type { EngineTable } from './sheetAircraft.ts';
import {
  doubt,
  dimensionWords,
  positiveMeasure,
  withinSpan,
  type SheetDoubt,
} from './sheetDoubt.ts';
import type { SheetPath } from './sheetEdit.ts';
import { dimensionOf, measureWords, numberWords, type Dimension } from './sheetMeasure.ts';

/** What lets fuel flow be called drag, and when a point is steady. Spans are wide guesses: common practice, no source. */
export function* dragDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const { engineMap, engineTables = [], tsfcSlope, aircraft } = sheet;
  const given = [
    engineTables.length > 0 ? 'engine tables' : null,
    engineMap === undefined ? null : 'an engine map',
    tsfcSlope === undefined ? null : 'a slope of consumption',
    aircraft.polar === undefined ? null : 'a polar',
  ].filter((one) => one !== null);
  const [first] = given;
  if (first === undefined && aircraft.liftToDragAtMost === undefined) {
    yield doubt(
      'engineMap',
      'No engine map: fuel-flow reduction is all that can be said, and drag stays open.',
    );
  }
  if (first !== undefined && given.length > 1) {
    yield doubt('engineMap', `Drag by ${given.join(' and ')}: only ${first} will be used.`);
  }
  yield* lineDoubts(sheet);
  yield* tableDoubts(sheet);
  yield* slopeDoubts(sheet);
  yield* stabilityDoubts(sheet);
}

function* lineDoubts({ engineMap: map }: FlightSheet): Generator<SheetDoubt> {
  if (map === undefined) return;
  yield* positiveMeasure(
    'engineMap.flowPerThrust',
    'Engine map, slope',
    map.flowPerThrust,
    'flowPerForce',
  );
  yield* ofDimension('engineMap.idleFlow', 'Engine map, idle', map.idleFlow, 'flow');
  if (map.idleFlow.value < 0) {
    yield doubt(
      'engineMap.idleFlow',
      `Engine map, idle: ${measureWords(map.idleFlow)}, but a flow is not negative.`,
    );
  }
  if (map.idleStandardUncertainty === undefined) {
    yield doubt(
      'engineMap.idleStandardUncertainty',
      'Engine map, idle: its doubt is not given, so drag looks surer than it is.',
    );
  }
}

function* tableDoubts({ engineTables = [], aircraft }: FlightSheet): Generator<SheetDoubt> {
  if (engineTables.length === 0) return;
  if (engineTables.every(({ engine }) => engine !== undefined)) {
    for (let engine = 1; engine <= aircraft.engineCount; engine += 1) {
      if (!engineTables.some((table) => table.engine === engine)) {
        yield doubt('engineTables', `Engine ${engine} has no table, so the tables are not used.`);
      }
    }
  }
  for (const [index, table] of engineTables.entries()) {
    yield* rowDoubts(table, index);
    if (table.engine !== undefined && table.engine > aircraft.engineCount) {
      yield doubt(
        `engineTables.${index}.engine`,
        `A table is for engine ${table.engine}, the aircraft has ${aircraft.engineCount}.`,
      );
    }
    if (engineTables.findIndex(({ engine }) => engine === table.engine) < index) {
      yield doubt(`engineTables.${index}.engine`, `${nameOf(table)} stands twice.`);
    }
    if (table.flowStandardUncertainty === undefined) {
      yield doubt(
        `engineTables.${index}.flowStandardUncertainty`,
        `${nameOf(table)}: its doubt is not given, so drag looks surer than it is.`,
      );
    } else {
      yield* ofDimension(
        `engineTables.${index}.flowStandardUncertainty`,
        `${nameOf(table)}, doubt`,
        table.flowStandardUncertainty,
        'flow',
      );
    }
  }
}

function* rowDoubts(table: EngineTable, index: number): Generator<SheetDoubt> {
  const name = nameOf(table);
  const sorted = table.rows.toSorted((a, b) => a.thrust.value - b.thrust.value);
  for (const [row, { thrust, flow }] of table.rows.entries()) {
    const path = `engineTables.${index}.rows.${row}` as const;
    yield* ofDimension(`${path}.thrust`, `${name}, row ${row + 1}`, thrust, 'force');
    yield* ofDimension(`${path}.flow`, `${name}, row ${row + 1}`, flow, 'flow');
    if (thrust.value < 0 || flow.value < 0) {
      yield doubt(path, `${name}, row ${row + 1}: neither thrust nor flow is negative.`);
    }
  }
  const units = new Set(table.rows.map(({ thrust, flow }) => `${thrust.unit} ${flow.unit}`));
  if (units.size > 1) return;
  const rises = sorted.every((row, place) => {
    const before = sorted[place - 1];
    return (
      before === undefined ||
      (row.thrust.value > before.thrust.value && row.flow.value > before.flow.value)
    );
  });
  if (!rises) {
    yield doubt(
      `engineTables.${index}.rows`,
      `${name}: more thrust has to burn more fuel in every row, so it is not used.`,
    );
  }
}

function nameOf({ engine }: EngineTable): string {
  return engine === undefined ? 'Engine table' : `Engine table ${engine}`;
}

function* slopeDoubts({ tsfcSlope, aircraft }: FlightSheet): Generator<SheetDoubt> {
  if (tsfcSlope !== undefined) {
    yield* withinSpan('tsfcSlope.slope', 'Slope of consumption', tsfcSlope.slope, [-0.6, 0.2]);
    if (!(tsfcSlope.standardUncertainty > 0)) {
      yield doubt(
        'tsfcSlope.standardUncertainty',
        'Slope of consumption: its doubt is not given yet.',
      );
    }
    yield* saidBy('tsfcSlope.from', 'Slope of consumption', tsfcSlope.from);
  }
  const { polar } = aircraft;
  if (polar === undefined) return;
  yield* withinSpan(
    'aircraft.polar.zeroLiftDrag',
    'Zero-lift drag coefficient',
    polar.zeroLiftDrag,
    [0.005, 0.06],
  );
  yield* withinSpan(
    'aircraft.polar.liftFactor',
    'Lift-dependent drag factor',
    polar.liftFactor,
    [0.015, 0.2],
  );
  yield* saidBy('aircraft.polar.from', 'Polar', polar.from);
}

function* stabilityDoubts({ stability, limits }: FlightSheet): Generator<SheetDoubt> {
  if (stability === undefined) return;
  const { windowS, altitudeRange, temperatureRange, climb } = stability;
  yield* withinSpan('stability.windowS', 'Window of a steady point, s', windowS, [60, 1800]);
  if (windowS !== undefined && limits.readingEveryS > 0 && windowS < 2 * limits.readingEveryS) {
    yield doubt(
      'stability.windowS',
      `Window of a steady point: ${numberWords(windowS)} s holds fewer than three readings, one every ${numberWords(limits.readingEveryS)} s.`,
    );
  }
  yield* withinSpan(
    'stability.machRange',
    'Steady Mach, range',
    stability.machRange,
    [0.002, 0.03],
  );
  yield* withinSpan(
    'stability.flowRangeFraction',
    'Steady fuel flow, range',
    stability.flowRangeFraction,
    [0.005, 0.1],
  );
  yield* withinSpan(
    'stability.machRatePerMin',
    'Steady Mach, rate a minute',
    stability.machRatePerMin,
    [0.0001, 0.02],
  );
  if (altitudeRange !== undefined) {
    yield* positiveMeasure(
      'stability.altitudeRange',
      'Steady height, range',
      altitudeRange,
      'length',
    );
  }
  if (temperatureRange !== undefined) {
    yield* positiveMeasure(
      'stability.temperatureRange',
      'Steady air temperature, range',
      temperatureRange,
      'temperature',
    );
  }
  if (climb !== undefined) {
    yield* positiveMeasure('stability.climb', 'Steady height, rate', climb, 'speed');
  }
}

function* saidBy(path: SheetPath, name: string, from: string): Generator<SheetDoubt> {
  if (from.trim() === '') yield doubt(path, `${name}: say from whom it is.`);
}

function* ofDimension(
  path: SheetPath,
  name: string,
  { unit }: Measure,
  dimension: Dimension,
): Generator<SheetDoubt> {
  if (dimensionOf(unit) !== dimension) {
    yield doubt(path, `${name}: ${unit} is not ${dimensionWords(dimension)}.`);
  }
}
