import type { FlightView } from '../../record/flight.ts';
import { contextOf } from '../reading/context.ts';
import { runsOf } from '../runReadings.ts';
import type { FlowBesideCounters } from './counterResults.ts';
import { counterLedger, whileRunning } from './counterLedger.ts';
import { countersOf, engineCounters, type Counter } from './counters.ts';
import { engineVerdicts, type TankWitness } from './engineVerdicts.ts';
import { commonTime } from './ledgers.ts';
import { runFlows } from './runFlows.ts';
import { tankLedger, tankLooks } from './tankLedger.ts';
import { groundFuel } from './upliftLog.ts';

/** The flow of each run told twice, by its gauges and by its counters, and who of them is the odd one out. */
export function flowBesideCounters(view: FlightView): FlowBesideCounters {
  const context = contextOf(view);
  if (context === null) return { runs: [], meanDifferenceKgPerS: null, engines: [], oddRuns: [] };
  const { sheet } = context.terms;
  const all = countersOf(context.state, sheet);
  const counters = engineCounters(all, sheet);
  const runs = runsOf(context).map((run) => runFlows(context, counters, run));
  const differences = runs.flatMap(({ flows }) =>
    flows.kind === 'answer' ? [flows.value.differenceKgPerS] : [],
  );
  return {
    runs,
    meanDifferenceKgPerS:
      differences.length === 0
        ? null
        : differences.reduce((total, one) => total + one, 0) / differences.length,
    ...engineVerdicts(context, counters ?? [], runs, tankWitness(view, all)),
  };
}

/** What the tanks say of all counters, over the longest time that both cover. */
function tankWitness(view: FlightView, all: readonly Counter[]): TankWitness | null {
  const { state } = view;
  if (state.sheet === null) return null;
  const ground = groundFuel(view);
  const counters = whileRunning(all, ground);
  const [counted, tanks] = [
    counterLedger(counters),
    tankLedger(tankLooks(state, state.sheet), ground),
  ];
  const common = commonTime(counted, tanks);
  if (common === null) return null;
  const { from, to } = common;
  const [a, b] = [counted.between(from, to), tanks.between(from, to)];
  if (a === null || b === null) return null;
  return {
    differenceKg: a.kg - b.kg,
    standardUncertaintyKg: Math.hypot(a.standardUncertaintyKg, b.standardUncertaintyKg),
    perEngineKg: Object.fromEntries(
      counters.map((counter) => [
        counter.consumer,
        counterLedger([counter]).between(from, to)?.kg ?? 0,
      ]),
    ),
    by: [...new Set([...a.by, ...b.by])],
  };
}
