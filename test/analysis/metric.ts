import type { Entry } from '../../src/record/entry.ts';
import type { Measure, Unit } from '../../src/record/measure.ts';
import type { FlightSheet, Instrument } from '../../src/record/sheet.ts';
import { bodyOf } from './flights.ts';

interface Metric {
  readonly unit: Unit;
  readonly factor: number;
  readonly zero?: number;
}

/** Exact by definition: NIST Special Publication 811, appendix B. */
const METRIC: Partial<Record<Unit, Metric>> = {
  lb: { unit: 'kg', factor: 0.45359237 },
  'lb/h': { unit: 'kg/h', factor: 0.45359237 },
  ft: { unit: 'm', factor: 0.3048 },
  ft2: { unit: 'm2', factor: 0.3048 ** 2 },
  'ft/min': { unit: 'm/s', factor: 0.3048 / 60 },
  degC: { unit: 'K', factor: 1, zero: 273.15 },
  'lb/h/lbf': { unit: 'kg/h/N', factor: 1 / 9.80665 },
};

/** A flight sheet whose every gauge and measure is metric: same flight, other figures. */
export function metricSheet(sheet: FlightSheet): object {
  const { instruments, ...rest } = sheet;
  return {
    ...Object.fromEntries(Object.entries(rest).map(([key, value]) => [key, measures(value)])),
    massUnit: 'kg',
    heightUnit: 'm',
    instruments: instruments.map(metricGauge),
  };
}

/** A body with its readings and measures metric; amendments of readings too. */
export function metricBody(entry: Entry, sheet: FlightSheet): object {
  if (entry.kind === 'calibrationChecked') {
    const corrections = entry.body.corrections.map(({ instrument, correction }) => {
      const gauge = sheet.instruments.find(({ id }) => id === instrument);
      const factor = gauge === undefined ? 1 : (METRIC[gauge.unit]?.factor ?? 1);
      return { instrument, correction: correction * factor };
    });
    return { ...entry.body, corrections };
  }
  if (entry.kind !== 'entryAmended') return asObject(measures(bodyOf(entry)));
  const { changes, ...body } = entry.body;
  return {
    ...body,
    changes: changes.map((change) => {
      const [, id] = /^readings\.(.+)\.value$/.exec(change.field) ?? [];
      const gauge = sheet.instruments.find((instrument) => instrument.id === id);
      const metric = gauge === undefined ? undefined : METRIC[gauge.unit];
      const converted = (value: unknown): unknown =>
        metric !== undefined && typeof value === 'number' ? inMetric(value, metric) : value;
      return { ...change, old: converted(change.old), new: converted(change.new) };
    }),
  };
}

function metricGauge(gauge: Instrument): object {
  const metric = METRIC[gauge.unit];
  if (metric === undefined) return gauge;
  const { factor, unit } = metric;
  const { calibration } = gauge;
  const difference = (value: number | undefined): number | undefined =>
    value === undefined ? undefined : value * factor;
  const { rangeLow: _, rangeHigh: _high, ...rest } = gauge;
  return JSON.parse(
    JSON.stringify({
      ...rest,
      unit,
      resolution: gauge.resolution * factor,
      repeatability: difference(gauge.repeatability),
      calibration: {
        ...calibration,
        correction: calibration.correction * factor,
        residualStandardUncertainty: difference(calibration.residualStandardUncertainty),
      },
    }),
  );
}

/** Every `{ value, unit }` in a value, at any depth. */
function measures(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(measures);
  if (typeof value !== 'object' || value === null) return value;
  if (isMeasure(value)) {
    const metric = METRIC[value.unit];
    return metric === undefined
      ? value
      : { ...value, value: inMetric(value.value, metric), unit: metric.unit };
  }
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, measures(item)]));
}

function isMeasure(value: object): value is Measure {
  return 'value' in value && typeof value.value === 'number' && 'unit' in value;
}

function inMetric(value: number, { factor, zero = 0 }: Metric): number {
  return value * factor + zero;
}

function asObject(value: unknown): object {
  if (typeof value !== 'object' || value === null) throw new RangeError('a body must be an object');
  return value;
}
