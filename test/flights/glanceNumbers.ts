import type { GlanceNumbers } from './secondMethod.ts';

interface ReadingRow {
  readonly instrument: string;
  readonly value?: number;
}

/** What a fuel glance says, as plain numbers for the second method. Air data not read are taken from `before`. */
export function glanceNumbers(
  readings: readonly ReadingRow[],
  units: { readonly massKg: number; readonly heightM: number; readonly climbMPerS: number },
  before: GlanceNumbers | undefined,
): Omit<GlanceNumbers, 'point' | 'run'> {
  const of = (instrument: string): number | undefined =>
    readings.find((row) => row.instrument === instrument)?.value;
  const scaled = (instrument: string, scale: number): number | undefined => {
    const value = of(instrument);
    return value === undefined ? undefined : value * scale;
  };
  return {
    flows: readings
      .filter((row) => /^FF\d$/.test(row.instrument))
      .map((row) => ({ instrument: row.instrument, value: row.value ?? Number.NaN })),
    usedKg:
      readings
        .filter((row) => row.instrument.startsWith('FU'))
        .reduce((sum, row) => sum + (row.value ?? Number.NaN), 0) * units.massKg,
    mach: of('MACH') ?? before?.mach ?? Number.NaN,
    heightM: scaled('ALT', units.heightM) ?? before?.heightM ?? Number.NaN,
    tempDegC: of('SAT') ?? before?.tempDegC ?? Number.NaN,
    machPerMin: of('MDRIFT') ?? before?.machPerMin ?? Number.NaN,
    climbMPerS: scaled('CLIMB', units.climbMPerS) ?? before?.climbMPerS ?? Number.NaN,
  };
}
