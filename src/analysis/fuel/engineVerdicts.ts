import { median } from '../../aero/statistics/descriptive.ts';
import type { EntryId } from '../../record/brand.ts';
import type { Context } from '../reading/context.ts';
import type { EngineFlows, EngineVerdict, Odd, OddRun, RunFlows } from './counterResults.ts';
import type { Counter } from './counters.ts';
import { AGREES_WITHIN } from './runFlows.ts';

/**
 * A run parts from the others beyond this many doubts. A flight looks at some sixteen pairs of run and engine, so that
 * two would cry wolf in every other flight and three do in one of twenty (a choice).
 */
const PARTS_BEYOND = 3;
/** Fewer runs do not say which of them is the odd one. */
const FEWEST_RUNS = 3;

/** What the tanks say of all counters together, by one standard uncertainty. */
export interface TankWitness {
  /** Counted less tank drop. */
  readonly differenceKg: number;
  readonly standardUncertaintyKg: number;
  readonly perEngineKg: Readonly<Record<string, number>>;
  readonly by: readonly EntryId[];
}

interface Told {
  readonly point: string;
  readonly run: number;
  readonly entries: readonly EntryId[];
  readonly own: EngineFlows;
  readonly all: readonly EngineFlows[];
}

/** Runs in which an engine's gauge and counter part, and what is left of each engine without them. */
export function engineVerdicts(
  { terms }: Context,
  counters: readonly Counter[],
  runs: readonly RunFlows[],
  tanks: TankWitness | null,
): { readonly engines: readonly EngineVerdict[]; readonly oddRuns: readonly OddRun[] } {
  const oddRuns: OddRun[] = [];
  const engines: EngineVerdict[] = [];
  for (const gauge of terms.engineFlows) {
    const engine = Number(gauge.consumer);
    const told = toldOf(runs, engine);
    const { together, apart } = partedRuns(told);
    oddRuns.push(...apart.map((odd) => oddRun(odd, together)));
    const counter = counters.find(({ consumer }) => consumer === String(engine));
    if (counter === undefined || together.length === 0) continue;
    engines.push(verdictOf(gauge.id, counter.instrument.id, together, tanks));
  }
  return { engines, oddRuns };
}

function toldOf(runs: readonly RunFlows[], engine: number): readonly Told[] {
  return runs.flatMap(({ point, run, flows }): readonly Told[] => {
    if (flows.kind === 'noAnswer') return [];
    const own = flows.value.engines.find((one) => one.engine === engine);
    if (own === undefined) return [];
    return [{ point, run, entries: flows.how.entries, own, all: flows.value.engines }];
  });
}

/** The run furthest from the rest goes first, then the rest is asked again: one bad run must not taint the others. */
function partedRuns(told: readonly Told[]): {
  readonly together: readonly Told[];
  readonly apart: readonly Told[];
} {
  let together = told;
  const apart: Told[] = [];
  while (together.length >= FEWEST_RUNS) {
    const ranked = together
      .map((one) => ({ one, doubts: doubtsApart(one, without(together, one)) }))
      .toSorted((a, b) => b.doubts - a.doubts);
    const [furthest] = ranked;
    if (furthest === undefined || furthest.doubts <= PARTS_BEYOND) break;
    apart.push(furthest.one);
    together = without(together, furthest.one);
  }
  return { together, apart };
}

function without(told: readonly Told[], one: Told): readonly Told[] {
  return told.filter((other) => other !== one);
}

function doubtsApart(one: Told, others: readonly Told[]): number {
  const { jump, standardUncertainty } = jumpOf(one, others, difference);
  return standardUncertainty > 0 ? Math.abs(jump) / standardUncertainty : 0;
}

type Shown = (told: Told) => { readonly value: number; readonly doubt: number };

const difference: Shown = ({ own }) => ({
  value: own.differenceKgPerS,
  doubt: independentDoubt(own),
});

/** Share of this engine in what all gauges show, and in what all counters count: throttles abreast keep it. */
const gaugeShare: Shown = ({ own, all }) =>
  shareOf(own, all, ({ gaugeKgPerS, gaugeUncertaintyKgPerS }) => [
    gaugeKgPerS,
    gaugeUncertaintyKgPerS,
  ]);
const counterShare: Shown = ({ own, all }) =>
  shareOf(own, all, ({ counterKgPerS, counterUncertaintyKgPerS }) => [
    counterKgPerS,
    counterUncertaintyKgPerS,
  ]);

function shareOf(
  own: EngineFlows,
  all: readonly EngineFlows[],
  of: (flows: EngineFlows) => readonly [flowKgPerS: number, doubtKgPerS: number],
): ReturnType<Shown> {
  const whole = all.reduce((total, flows) => total + of(flows)[0], 0);
  const value = of(own)[0] / whole;
  const doubts = all.map((flows) => ((flows === own ? 1 : 0) - value) * of(flows)[1]);
  return { value, doubt: Math.hypot(...doubts) / whole };
}

/** A flight sheet of zeros must not make a difference exact: weights are one over its square. */
const LEAST_DOUBT = 1e-6;

function independentDoubt(flows: EngineFlows): number {
  return Math.max(
    Math.hypot(flows.gaugeUncertaintyKgPerS, flows.counterUncertaintyKgPerS),
    LEAST_DOUBT * flows.gaugeKgPerS,
  );
}

function jumpOf(
  one: Told,
  others: readonly Told[],
  shown: Shown,
): { readonly jump: number; readonly standardUncertainty: number } {
  const own = shown(one);
  const rest = others.map(shown);
  // The variance of a median of normal values is π/2 of that of their mean; of two it is the mean.
  const ofMedian = (rest.length > 2 ? Math.PI / 2 : 1) / rest.length;
  const typical = Math.hypot(...rest.map(({ doubt }) => doubt)) / Math.sqrt(rest.length);
  return {
    jump: own.value - median(rest.map(({ value }) => value)),
    standardUncertainty: Math.hypot(own.doubt, typical * Math.sqrt(ofMedian)),
  };
}

/** The other engines can tell: the share that stays is right, the one that jumps is not. */
function oddRun(one: Told, together: readonly Told[]): OddRun {
  const { jump, standardUncertainty } = jumpOf(one, together, difference);
  const jumps = (shown: Shown): boolean => {
    const share = jumpOf(one, together, shown);
    return Math.abs(share.jump) > PARTS_BEYOND * share.standardUncertainty;
  };
  const [gauge, counter] = [jumps(gaugeShare), jumps(counterShare)];
  const canTell = one.all.length > 1 && gauge !== counter;
  return {
    point: one.point,
    run: one.run,
    engine: one.own.engine,
    jumpKgPerS: jump,
    standardUncertaintyKgPerS: standardUncertainty,
    odd: canTell ? (gauge ? 'gauge' : 'counter') : 'nobodyCanTell',
    toldBy: canTell ? 'otherEngines' : null,
    entries: one.entries,
  };
}

function verdictOf(
  gauge: string,
  counter: string,
  together: readonly Told[],
  tanks: TankWitness | null,
): EngineVerdict {
  const engine = together[0]?.own.engine ?? 0;
  const weights = together.map(({ own }) => 1 / independentDoubt(own) ** 2);
  const whole = weights.reduce((total, weight) => total + weight, 0);
  const weighted = (of: (flows: EngineFlows) => number): number =>
    together.reduce(
      (total, { own }, index) => total + (of(own) * (weights[index] ?? 0)) / whole,
      0,
    );
  const differenceKgPerS = weighted((flows) => flows.differenceKgPerS);
  const shared = Math.max(...together.map(({ own }) => own.calibrationUncertaintyKgPerS));
  const standardUncertaintyKgPerS = Math.hypot(1 / Math.sqrt(whole), shared);
  const isOdd = Math.abs(differenceKgPerS) > AGREES_WITHIN * standardUncertaintyKgPerS;
  const slopeKgPerS = weighted((flows) => flows.counterKgPerS);
  const odd = isOdd ? toldByTanks(tanks, engine, differenceKgPerS / slopeKgPerS) : null;
  return {
    engine,
    gauge,
    counter,
    differenceKgPerS,
    standardUncertaintyKgPerS,
    runs: together.length,
    odd,
    toldBy: odd === null || odd === 'nobodyCanTell' ? null : 'tanks',
    entries: [
      ...new Set([
        ...together.flatMap(({ entries }) => entries),
        ...(odd === null ? [] : (tanks?.by ?? [])),
      ]),
    ],
  };
}

/**
 * Were the counter wrong by this share, all that it counted would be, and the tanks would show it. They tell where they
 * stand by one of the two and rule out the other.
 */
function toldByTanks(tanks: TankWitness | null, engine: number, share: number): Odd {
  if (tanks === null) return 'nobodyCanTell';
  const { differenceKg, standardUncertaintyKg, perEngineKg } = tanks;
  const missedKg = (perEngineKg[String(engine)] ?? 0) * share;
  const allowed = AGREES_WITHIN * standardUncertaintyKg;
  const counterStands = Math.abs(differenceKg) <= allowed;
  const gaugeStands = Math.abs(differenceKg + missedKg) <= allowed;
  if (counterStands === gaugeStands) return 'nobodyCanTell';
  return counterStands ? 'gauge' : 'counter';
}
