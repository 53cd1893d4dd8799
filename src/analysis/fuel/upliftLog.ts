import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { EntryOf } from '../../record/entry.ts';
import type { FlightView } from '../../record/flight.ts';
import type { Measure } from '../../record/measure.ts';
import { items } from '../../record/trail.ts';
import { measureSi } from '../calibrate.ts';
import type { FuelGate, NoFuelUsed } from './balanceResults.ts';

/** One delivery of fuel as a mass. The docket is taken as exact: what its meter is worth, no flight record says. */
export interface Uplift {
  readonly at: EpochMs;
  readonly by: readonly EntryId[];
  readonly mass:
    | { readonly kind: 'mass'; readonly kg: number; readonly broken: readonly FuelGate[] }
    | { readonly kind: 'none'; readonly because: Extract<NoFuelUsed, 'noDensity' | 'unitUnknown'> };
}

/** What was said about fuel on the ground, and when the engines ran. */
export interface GroundFuel {
  readonly uplifts: readonly Uplift[];
  /** Fuel in the tanks by the preflight record, else by the flight sheet. */
  readonly loaded: {
    readonly at: EpochMs;
    readonly kg: number;
    readonly by: readonly EntryId[];
  } | null;
  /** Before the one and after the other nothing burns; null where nobody wrote it down. */
  readonly enginesFrom: EpochMs | null;
  readonly enginesTo: EpochMs | null;
}

export function groundFuel(view: FlightView): GroundFuel {
  const { state } = view;
  let loaded: GroundFuel['loaded'] = null;
  let sample: EntryOf<'preflightDone'> | null = null;
  let started: EpochMs | null = null;
  let shutDown: EpochMs | null = null;
  const deliveries: { readonly at: EpochMs; readonly entry: EntryOf<'fuelUplifted'> }[] = [];
  for (const { standing, effective, at } of items(view.timeline)) {
    if (standing !== 'stands') continue;
    switch (effective.kind) {
      case 'preflightDone': {
        const kg = massKg(effective.body.fuel);
        if (kg !== undefined) loaded = { at, kg, by: [effective.id] };
        if (effective.body.fuelDensity !== undefined) sample = effective;
        break;
      }
      case 'engineStarted':
        started ??= at;
        break;
      case 'engineShutDown':
        shutDown = at;
        break;
      case 'fuelUplifted':
        deliveries.push({ at, entry: effective });
        break;
      default:
    }
  }
  const { milestones, openedAt, sheet } = state;
  const rampKg = massKg(sheet?.weights.rampFuel);
  const enginesFrom = started ?? milestones.blocksOff?.at ?? milestones.liftOff?.at ?? null;
  if (loaded === null && rampKg !== undefined && openedAt !== null) {
    loaded = { at: openedAt, kg: rampKg, by: [] };
  }
  return {
    uplifts: deliveries.map(({ at, entry }) => {
      // The sample of the preflight is of the fuel that was loaded for this flight, not of what came after it.
      const isForFlight = enginesFrom === null || at <= enginesFrom;
      return upliftOf(at, entry, isForFlight ? sample : null);
    }),
    loaded,
    enginesFrom,
    enginesTo: shutDown ?? milestones.blocksOn?.at ?? null,
  };
}

/** A density serves at its own temperature; further apart than this it is named (a choice). */
const SAME_TEMPERATURE_K = 5;

function upliftOf(
  at: EpochMs,
  { id, body }: EntryOf<'fuelUplifted'>,
  sample: EntryOf<'preflightDone'> | null,
): Uplift {
  const asMassKg = massKg(body.amount);
  if (asMassKg !== undefined) {
    return { at, by: [id], mass: { kind: 'mass', kg: asMassKg, broken: [] } };
  }
  const volumeM3 = measureSi(body.amount, 'volume');
  if (volumeM3 === undefined) {
    return { at, by: [id], mass: { kind: 'none', because: 'unitUnknown' } };
  }
  const own = densityKgPerM3(body.density);
  const sampled = densityKgPerM3(sample?.body.fuelDensity);
  const density = own ?? sampled;
  if (density === undefined) return { at, by: [id], mass: { kind: 'none', because: 'noDensity' } };
  const broken: readonly FuelGate[] =
    own === undefined &&
    differ(temperatureK(body.temperature), temperatureK(sample?.body.fuelTemperature))
      ? ['densityAtOtherTemperature']
      : [];
  return {
    at,
    by: own === undefined && sample !== null ? [id, sample.id] : [id],
    mass: { kind: 'mass', kg: volumeM3 * density, broken },
  };
}

function differ(a: number | undefined, b: number | undefined): boolean {
  return a !== undefined && b !== undefined && Math.abs(a - b) > SAME_TEMPERATURE_K;
}

function massKg(measure: Measure | undefined): number | undefined {
  return measure === undefined ? undefined : measureSi(measure, 'mass');
}

function densityKgPerM3(measure: Measure | undefined): number | undefined {
  const density = measure === undefined ? undefined : measureSi(measure, 'density');
  return density !== undefined && density > 0 ? density : undefined;
}

function temperatureK(measure: Measure | undefined): number | undefined {
  return measure === undefined ? undefined : measureSi(measure, 'temperature');
}
