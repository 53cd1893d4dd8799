import { generator } from './metricFlight.ts';
import type { Script, ScriptEntry } from './script.ts';

/** What the two engine gauges of the copy are given, in lb/h. */
export interface OtherGauge {
  readonly id: string;
  readonly correction: number;
  readonly repeatability: number;
  readonly residual: number;
}

const SLIP_LB_PER_H = 100;

/**
 * A copy of a two-engine script as other gauges would have shown the same flight: each reading is what the old gauge
 * said less its error, scattered anew from the seed, with the new gauge's error and on its grid. The digit that was
 * mis-keyed and the engines that were swapped are wrong in the copy in the same way.
 */
export function withOtherGauges(
  script: Script,
  gauges: readonly OtherGauge[],
  seed: number,
): Script {
  const chance = generator(seed);
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
  const amended = new Map(
    script.entries.flatMap((line) =>
      line.kind === 'amendment' && line.amends !== undefined ? [[line.amends.n, line]] : [],
    ),
  );
  const shown = new Map<number, Readonly<Record<string, number>>>();
  const showAnew = (line: ScriptEntry): Readonly<Record<string, number>> => {
    const read = rightFlows(line, amended.get(line.n));
    return Object.fromEntries(
      Object.entries(read).map(([engine, flow]) => {
        const old = script.instruments.find(({ id }) => id === `FF${engine}`);
        const gauge = gauges.find(({ id }) => id === `FF${engine}`);
        const truth = flow + (old?.correction ?? 0) + (gauge?.repeatability ?? 0) * normal();
        const step = old?.resolution ?? 1;
        return [engine, step * Math.round((truth - (gauge?.correction ?? 0)) / step)];
      }),
    );
  };
  for (const line of script.entries) {
    if (line.fuelFlow_lb_per_h !== undefined) {
      shown.set(line.n, showAnew(line));
    }
  }
  return {
    ...script,
    instruments: script.instruments.map((row) => {
      const gauge = gauges.find(({ id }) => id === row.id);
      return gauge === undefined
        ? row
        : {
            ...row,
            correction: gauge.correction,
            repeatability_1sigma: gauge.repeatability,
            calibrationResidual_1sigma: gauge.residual,
          };
    }),
    entries: script.entries.map((line) => lineAnew(line, { gauges, amended, shown })),
  };
}

function lineAnew(
  line: ScriptEntry,
  given: {
    readonly gauges: readonly OtherGauge[];
    readonly amended: ReadonlyMap<number, ScriptEntry>;
    readonly shown: ReadonlyMap<number, Readonly<Record<string, number>>>;
  },
): ScriptEntry {
  const { gauges, amended, shown } = given;
  if (line.corrections !== undefined) {
    const corrections = Object.fromEntries(gauges.map(({ id, correction }) => [id, correction]));
    return { ...line, corrections: { ...line.corrections, ...corrections } };
  }
  const flows = shown.get(line.n);
  if (flows !== undefined) {
    const slip = amended.get(line.n);
    return { ...line, fuelFlow_lb_per_h: slip === undefined ? { ...flows } : slipped(flows, slip) };
  }
  const right = line.amends === undefined ? undefined : shown.get(line.amends.n);
  if (line.kind === 'amendment' && right !== undefined) {
    const wrong = slipped(right, line);
    return {
      ...line,
      changes: (line.changes ?? []).map(({ field }) => ({
        field,
        old: wrong[engineOf(field)],
        new: right[engineOf(field)],
      })),
    };
  }
  return line;
}

/** What the gauges showed, had nobody slipped. */
function rightFlows(line: ScriptEntry, amendment: ScriptEntry | undefined) {
  const right: Record<string, number> = { ...line.fuelFlow_lb_per_h };
  for (const { field, new: value } of amendment?.changes ?? []) {
    right[engineOf(field)] = Number(value);
  }
  return right;
}

/** One changed field was a digit mis-keyed, two were engines swapped. */
function slipped(
  right: Readonly<Record<string, number>>,
  amendment: ScriptEntry,
): Record<string, number> {
  const engines = (amendment.changes ?? []).map(({ field }) => engineOf(field));
  const [one = '', other] = engines;
  return other === undefined
    ? { ...right, [one]: (right[one] ?? NaN) + SLIP_LB_PER_H }
    : { ...right, [one]: right[other] ?? NaN, [other]: right[one] ?? NaN };
}

function engineOf(field: string): string {
  return field.split('.')[1] ?? '';
}
