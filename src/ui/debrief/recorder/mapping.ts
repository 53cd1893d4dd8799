import * as v from 'valibot';
import { CHANNEL_USES, type ChannelUse } from '../../../analysis/recorder/trace.ts';
import {
  dimensionOf,
  isUnit,
  toSi,
  UNITS,
  type Dimension,
  type Unit,
} from '../../../aero/units.ts';
import type { RecorderHead } from '../../../file/recorder/recorderHead.ts';
import type { RecorderPlan } from '../../../file/recorder/recorderReader.ts';
import { TIME_FORMS } from '../../../file/recorder/recorderTimes.ts';

/** What each column of a recorder's file is, chosen once a recorder. */
export const mappingSchema = v.object({
  time: v.object({ column: v.number(), form: v.picklist(TIME_FORMS) }),
  channels: v.array(
    v.object({
      column: v.number(),
      use: v.picklist(CHANNEL_USES),
      engine: v.nullable(v.number()),
      unit: v.nullable(v.string()),
    }),
  ),
});
export type RecorderMapping = v.InferOutput<typeof mappingSchema>;
export type MappedChannel = RecorderMapping['channels'][number];

const DIMENSIONS: Readonly<Record<Exclude<ChannelUse, 'other'>, Dimension>> = {
  fuelFlow: 'massFlow',
  suctionFuelFlow: 'massFlow',
  mach: 'ratio',
  pressureAltitude: 'length',
  staticAirTemp: 'temperature',
  totalAirTemp: 'temperature',
};

/** A volume flow is no mass without a density of the day, so it is not offered. */
export function unitsOf(use: ChannelUse): readonly Unit[] {
  if (use === 'other') return [];
  return UNITS.filter((unit) => dimensionOf(unit) === DIMENSIONS[use] && unit !== 'USgal/h');
}

/** What the names of the columns suggest: a person looks at it before anything is read. */
export function guessedMapping(
  head: RecorderHead,
  units: { readonly flow: Unit; readonly height: Unit },
): RecorderMapping {
  const channels = head.headers.flatMap((header, column): readonly MappedChannel[] => {
    if (column === head.time?.column) return [];
    const guess = guessOf(header);
    if (guess === null) return [];
    return [{ column, ...guess, unit: unitIn(header, guess.use) ?? usualUnit(guess.use, units) }];
  });
  return {
    time: head.time ?? { column: 0, form: 'iso' },
    channels: channels.filter(
      (one, index) =>
        channels.findIndex(({ use, engine }) => use === one.use && engine === one.engine) === index,
    ),
  };
}

function guessOf(header: string): Pick<MappedChannel, 'use' | 'engine'> | null {
  const name = header.toLowerCase();
  const is = (use: ChannelUse) => ({ use, engine: null });
  if (/fuel.?flow|\bff|\bwf|unit.?flow/.test(name)) {
    if (/suction|unit/.test(name)) return is('suctionFuelFlow');
    return { use: 'fuelFlow', engine: Number(/[1-4]/.exec(name)?.[0] ?? 1) };
  }
  if (/mach/.test(name)) return is('mach');
  if (/press\w*.?alt|\bhp|^alt/.test(name)) return is('pressureAltitude');
  if (/\bsat|static.*temp|\boat/.test(name)) return is('staticAirTemp');
  if (/\btat|total.*temp/.test(name)) return is('totalAirTemp');
  return null;
}

function unitIn(header: string, use: ChannelUse): Unit | null {
  const written: readonly (readonly [RegExp, Unit])[] = [
    [/lb_per_h|lb\/h|lbh|pph/i, 'lb/h'],
    [/kg_per_h|kg\/h|kgh/i, 'kg/h'],
    [/[_ ([]ft\b/i, 'ft'],
    [/[_ ([]m\b/, 'm'],
    [/[_ ([](deg)?c\b/i, 'degC'],
    [/[_ ([](deg)?f\b/i, 'degF'],
    [/[_ ([]k\b/i, 'K'],
  ];
  const found = written.find(
    ([pattern, unit]) => pattern.test(header) && unitsOf(use).includes(unit),
  );
  return found?.[1] ?? null;
}

export function usualUnit(
  use: ChannelUse,
  { flow, height }: { readonly flow: Unit; readonly height: Unit },
): Unit | null {
  switch (use) {
    case 'fuelFlow':
    case 'suctionFuelFlow':
      return flow;
    case 'mach':
      return '1';
    case 'pressureAltitude':
      return height;
    case 'staticAirTemp':
    case 'totalAirTemp':
      return 'degC';
    case 'other':
      return null;
  }
}

/** How the file is read by this mapping: each column to SI by a factor and a zero. */
export function planOf(mapping: RecorderMapping, startMs: number): RecorderPlan {
  return {
    time: { ...mapping.time, startMs },
    columns: mapping.channels.map(({ column, unit }) => ({ column, ...scaleOf(unit) })),
  };
}

function scaleOf(unit: string | null): { readonly factor: number; readonly zero: number } {
  if (unit === null || !isUnit(unit)) return { factor: 1, zero: 0 };
  const si = (value: number): number => {
    const answer = toSi({ value, unit });
    return answer.kind === 'ready' ? answer.value.value : value;
  };
  return { factor: si(1) - si(0), zero: si(0) };
}

/** What a reduction needs and this mapping lacks; a clock alone can be found with less. */
export function lacking(mapping: RecorderMapping, engineCount: number): readonly string[] {
  const has = (use: ChannelUse, engine: number | null = null): boolean =>
    mapping.channels.some((one) => one.use === use && one.engine === engine);
  const engines = Array.from({ length: engineCount }, (_, index) => index + 1);
  return [
    ...engines.filter((n) => !has('fuelFlow', n)).map((n) => `fuel flow of engine ${n}`),
    ...(has('mach') ? [] : ['Mach']),
    ...(has('pressureAltitude') ? [] : ['pressure altitude']),
    ...(has('staticAirTemp') || has('totalAirTemp') ? [] : ['air temperature']),
  ];
}
