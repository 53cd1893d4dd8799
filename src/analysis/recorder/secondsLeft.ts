import { correctedReading } from '../calibrate.ts';
import { outsideCard } from '../reading/gates.ts';
import type { SheetTerms } from '../reading/sheetTerms.ts';
import type { LeftOut } from '../results.ts';
import { lineThrough } from './lineThrough.ts';
import type { EvenTrace } from './trace.ts';
import { windowsOf } from './windows.ts';

/** Why seconds of a run are not counted: what leaves out a scribe's reading, or a recorder that wrote nothing. */
export type RecordedGate =
  | Extract<
      LeftOut,
      'machDrift' | 'climb' | 'mach' | 'altitude' | 'turn' | 'moisture' | 'beforeOnCondition'
    >
  | 'notRecorded';

/** Seconds of the trace that the record itself cuts out. */
export interface Cut {
  readonly because: RecordedGate;
  readonly fromS: number;
  readonly toS: number;
}

export interface SecondsLeft {
  readonly stretches: readonly { readonly fromS: number; readonly toS: number }[];
  readonly cut: Readonly<Partial<Record<RecordedGate, number>>>;
  readonly mach: Float64Array;
  readonly altitudeM: Float64Array;
  readonly temperatureK: Float64Array;
  readonly residualsKgPerS: readonly number[];
  readonly unitResidualKgPerS: number;
}

/** Height answers at once; a Mach number wanders with its probe for longer than it shows in a minute (a choice). */
const CLIMB_OVER_S = 60;
const DRIFT_OVER_S = 180;
/** Gusts shorter than this are not the hold of a run. */
const HOLD_OVER_S = 30;
/** Every so many seconds the gates are asked; in between they hold. */
const ASKED_EVERY_S = 5;

/**
 * The seconds of a run that may be counted, by the card's own tolerances. A rate strikes only where it is beyond its limit
 * by more than twice its doubt: a wander of the probe is no acceleration.
 *
 * @returns null where a channel that a reduction needs was not recorded
 */
export function secondsLeft(
  terms: SheetTerms,
  even: EvenTrace,
  {
    fromS,
    toS,
    cuts,
  }: { readonly fromS: number; readonly toS: number; readonly cuts: readonly Cut[] },
): SecondsLeft | null {
  const { mach, pressureAltitudeM: altitudeM, staticTemperatureK: temperatureK } = even;
  if (mach === null || altitudeM === null || temperatureK === null) return null;
  if (even.engines.length < terms.sheet.aircraft.engineCount) return null;
  const first = Math.max(0, Math.ceil(fromS));
  const last = Math.min(even.seconds, Math.floor(toS));
  const holds = { mach: windowsOf(mach), altitude: windowsOf(altitudeM) };
  const cut: Partial<Record<RecordedGate, number>> = {};
  const stretches: { fromS: number; toS: number }[] = [];
  let open: { fromS: number; toS: number } | null = null;
  for (let second = first; second < last; second += ASKED_EVERY_S) {
    const end = Math.min(last, second + ASKED_EVERY_S);
    const broken = brokenAt(second, end);
    for (const gate of broken) cut[gate] = (cut[gate] ?? 0) + end - second;
    if (broken.length > 0) {
      open = null;
    } else if (open === null) {
      open = { fromS: second, toS: end };
      stretches.push(open);
    } else {
      open.toS = end;
    }
  }
  return {
    stretches,
    cut,
    mach,
    altitudeM,
    temperatureK,
    residualsKgPerS: terms.engineFlows.map((gauge) => residualOf(gauge)),
    unitResidualKgPerS: terms.suctionFlow === null ? 0 : residualOf(terms.suctionFlow),
  };

  function brokenAt(second: number, end: number): readonly RecordedGate[] {
    const broken = new Set<RecordedGate>();
    for (const one of cuts) if (one.fromS < end && one.toS > second) broken.add(one.because);
    if (![...even.engines, mach, altitudeM, temperatureK].every((values) => isWhole(values))) {
      broken.add('notRecorded');
      return [...broken];
    }
    const middle = (second + end) / 2;
    const near = (half: number): [number, number] => [
      Math.max(first, middle - half),
      Math.min(last, middle + half),
    ];
    const [holdFrom, holdTo] = near(HOLD_OVER_S / 2);
    for (const gate of outsideCard(terms, {
      mach: holds.mach.over(holdFrom, holdTo)?.mean ?? null,
      pressureAltitudeM: holds.altitude.over(holdFrom, holdTo)?.mean ?? null,
      machRatePerS: clearRate(mach, near(DRIFT_OVER_S / 2)),
      altitudeRateMPerS: clearRate(altitudeM, near(CLIMB_OVER_S / 2)),
    })) {
      if (gate === 'mach' || gate === 'altitude' || gate === 'machDrift' || gate === 'climb') {
        broken.add(gate);
      }
    }
    return [...broken];

    function isWhole(values: Float64Array | null): boolean {
      return values !== null && !values.subarray(second, end).some((value) => Number.isNaN(value));
    }
  }
}

/** A rate less twice its doubt, towards zero; null where nothing can be said. */
function clearRate(values: Float64Array | null, [from, to]: [number, number]): number | null {
  const line = values === null ? null : lineThrough(values, Math.round(from), Math.round(to));
  if (line === null) return null;
  return Math.sign(line.perS) * Math.max(0, Math.abs(line.perS) - 2 * line.perSUncertainty);
}

function residualOf(gauge: SheetTerms['engineFlows'][number]): number {
  const read = correctedReading(
    { ...gauge, serviceable: true },
    { instrument: gauge.id, value: 0, unit: gauge.unit },
  );
  return read.kind === 'corrected' ? read.parts.residualSi : 0;
}
