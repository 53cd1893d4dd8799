import type { Reading } from '../../src/record/entry.ts';
import type { Unit } from '../../src/record/measure.ts';
import type { ScriptEntry, ScriptWingCall } from './script.ts';

/** Everything that a line of the script reads off a gauge, as keyed; an absent field was not read. */
export function readingsOf(line: ScriptEntry): readonly Reading[] {
  const rows: Reading[] = [];
  const row = (instrument: string, value: number | undefined, unit: Unit): void => {
    if (value !== undefined) {
      rows.push({ instrument, value, unit, method: 'digits' });
    }
  };
  for (const [engine, flow] of Object.entries(line.fuelFlow_lb_per_h ?? {})) {
    row(`FF${engine}`, flow, 'lb/h');
  }
  row('SU', line.suctionUnitFlow_lb_per_h, 'lb/h');
  const { unit: suctionUnitUsed, ...engines } = line.fuelUsed_lb ?? {};
  for (const [engine, used] of Object.entries(engines)) {
    row(`FU${engine}`, used, 'lb');
  }
  row('FUS', suctionUnitUsed, 'lb');
  row('MACH', line.airData?.mach, '1');
  row('ALT', line.airData?.altitude_ft, 'ft');
  row('SAT', line.airData?.sat_C, 'degC');
  row('MDRIFT', line.airData?.machDrift_per_min, '1/min');
  row('CLIMB', line.airData?.climb_ft_per_min, 'ft/min');
  row('FREM', line.countersRemaining_lb, 'lb');
  row('TANK', line.tankGauge_lb, 'lb');
  for (const [probe, deficit] of Object.entries(line.probes_inH2O ?? {})) {
    row(probe, deficit, 'inH2O');
  }
  return rows;
}

interface WingsSaid {
  readonly L?: ScriptWingCall;
  readonly R?: ScriptWingCall;
}

/** Calls by wing: a line about one wing gives its fields directly, a line about both gives them under `wings`. */
export function wingsOf(line: ScriptEntry): WingsSaid | undefined {
  if (line.wings !== undefined) {
    return line.wings;
  }
  if (line.of === undefined || line.wing === undefined || line.wing === 'both') {
    return undefined;
  }
  const { laminarCount, of, laminarProbes, turbulentProbes, intermittentProbes } = line;
  return {
    [line.wing]: { laminarCount, of, laminarProbes, turbulentProbes, intermittentProbes },
  };
}

/** Field names of an amendment: the script leads to one engine, the record to one instrument's row. */
export function amendedField(field: string): string {
  const [name, engine] = field.split('.');
  if (name === 'fuelFlow_lb_per_h' && engine !== undefined) {
    return `readings.FF${engine}.value`;
  }
  throw new RangeError(`an amended field of the script must be known, got ${field}`);
}
