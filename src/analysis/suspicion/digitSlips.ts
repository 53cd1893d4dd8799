import { median } from '../../aero/statistics/descriptive.ts';
import type { EntryId } from '../../record/brand.ts';
import { likelySlips } from '../slips.ts';
import type { Suspicion, Witness } from './suspected.ts';
import { inUnitOf, type EngineReading, type FlowLook, type LookedRun } from './flowReadings.ts';

/** Band about a witness: the larger of 8 % and three steps, as the pad asks in flight (a choice). */
const BAND_FRACTION = 0.08;
const BAND_STEPS = 3;
/** A counter must have moved so many of its steps for its slope to speak. */
const COUNTER_STEPS = 40;

type DigitSlip = Extract<Suspicion, { kind: 'digitSlip' }>;

interface Testimony {
  readonly witness: Witness;
  readonly kgPerS: number;
  readonly by: readonly EntryId[];
}

/** Readings that all witnesses at hand contradict, where one slip of the finger would put all of them right. */
export function digitSlips(run: LookedRun): readonly DigitSlip[] {
  return run.looks.flatMap((look) =>
    look.engines.flatMap((reading, engine): readonly DigitSlip[] => {
      if (reading === null) return [];
      const heard = [
        lastValue(run, look, engine),
        otherEngine(run, look, engine),
        counterSlope(run, engine),
      ].filter((one) => one !== null);
      const against = heard.filter(({ kgPerS }) => !inside(reading, reading.value, kgPerS));
      // One witness against the others is that witness's own doubt.
      if (against.length === 0 || against.length < heard.length) return [];
      const [meant] = likelySlips(reading.gauge, reading.value).filter(({ value }) =>
        against.every(({ kgPerS }) => inside(reading, value, kgPerS)),
      );
      if (meant === undefined) return [];
      return [
        {
          kind: 'digitSlip',
          glance: look.glance,
          instrument: reading.gauge.id,
          value: reading.value,
          candidate: meant.value,
          cause: meant.cause,
          against: against.map(({ witness }) => witness),
          entries: [...new Set([...look.by, ...against.flatMap(({ by }) => by)])],
        },
      ];
    }),
  );
}

/** The same gauge in the other looks of the run. */
function lastValue({ looks }: LookedRun, look: FlowLook, engine: number): Testimony | null {
  const others = looks.filter(({ glance }) => glance !== look.glance);
  const flows = others.flatMap(({ engines }) => engines[engine]?.kgPerS ?? []);
  if (flows.length === 0) return null;
  return { witness: 'lastValue', kgPerS: median(flows), by: others.flatMap(({ by }) => by) };
}

/** What this engine burns for one kilogram of the others, in the other looks, times what they burn now. */
function otherEngine({ looks }: LookedRun, look: FlowLook, engine: number): Testimony | null {
  const rest = restOf(look, engine);
  const ratios = looks
    .filter(({ glance }) => glance !== look.glance)
    .flatMap((other) => {
      const [own, others] = [other.engines[engine], restOf(other, engine)];
      return own && others !== null ? [own.kgPerS / others] : [];
    });
  if (rest === null || ratios.length === 0) return null;
  return { witness: 'otherEngine', kgPerS: median(ratios) * rest, by: look.by };
}

/** Flow of all engines but this one; null where one of them was not read, or there is no other. */
function restOf({ engines }: FlowLook, engine: number): number | null {
  const others = engines.filter((_, place) => place !== engine);
  if (others.length === 0 || others.includes(null)) return null;
  return others.reduce((total, other) => total + (other?.kgPerS ?? 0), 0);
}

function counterSlope({ counters }: LookedRun, engine: number): Testimony | null {
  const looks = counters[engine] ?? [];
  const [first, last] = [looks[0], looks.at(-1)];
  if (first === undefined || last === undefined || last.at <= first.at) return null;
  const burntKg = last.massKg - first.massKg;
  if (!(burntKg > COUNTER_STEPS * first.stepKg)) return null;
  return {
    witness: 'counterSlope',
    kgPerS: (burntKg * 1000) / (last.at - first.at),
    by: [...first.by, ...last.by],
  };
}

function inside({ gauge }: EngineReading, value: number, witnessKgPerS: number): boolean {
  const expected = inUnitOf(gauge, witnessKgPerS);
  if (expected === null) return true;
  const half = Math.max(BAND_FRACTION * Math.abs(expected), BAND_STEPS * gauge.resolution);
  return Math.abs(value - expected) <= half;
}
