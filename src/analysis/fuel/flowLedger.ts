import type { EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { KnownKind } from '../../record/kinds.ts';
import { items } from '../../record/trail.ts';
import { displayUncertaintySi } from '../calibrate.ts';
import type { Context } from '../reading/context.ts';
import { totalFlow } from '../reduceReading.ts';
import { burntBetween, type Counter } from './counters.ts';
import { flowIntegral, type FlowLook } from './flowIntegral.ts';
import { emptyLedger, type Booked, type Ledger } from './ledgers.ts';

/** Without a look for longer than this a straight line is a guess (a choice). */
const LONGEST_GAP_S = 1800;

/** After each of these the flow may be another. */
const CHANGES_FLOW: ReadonlySet<KnownKind | 'unrecognised'> = new Set<KnownKind>([
  'suctionTurnedOn',
  'suctionChanged',
  'suctionTurnedOff',
  'throttleChanged',
  'laminarGained',
  'laminarLost',
  'moistureEntered',
  'moistureExited',
  'turnStarted',
  'turnEnded',
  'conditionLost',
  'turbulenceEntered',
]);

/**
 * The engines' gauges over time, from the first reading of the cruise to the last: in climb and descent the flow follows
 * no line between two looks. The suction unit's own fuel comes in by its counter, where it has one.
 */
export function flowLedger(view: FlightView, context: Context, unit: Counter | null): Ledger {
  const { state, terms } = context;
  const { levelOff, topOfDescent } = state.milestones;
  const looks: FlowLook[] = [];
  let residual = 0;
  for (const glance of items(state.glances)) {
    const isEarly = levelOff !== undefined && glance.at < levelOff.at;
    const isLate = topOfDescent !== undefined && glance.at > topOfDescent.at;
    const flow = isEarly || isLate ? null : totalFlow(terms, glance);
    if (flow?.kind !== 'flow') continue;
    residual = Math.hypot(...flow.engines.map(({ parts }) => parts.residualSi));
    looks.push({
      at: glance.at,
      by: glance.by,
      kgPerS: flow.kgPerS,
      standardUncertaintyKgPerS: Math.hypot(
        ...flow.engines.map(({ parts }) => displayUncertaintySi(parts)),
      ),
    });
  }
  looks.sort((a, b) => a.at - b.at);
  const bends = changesOf(view);
  const entries = [...new Set(looks.flatMap(({ by }) => by))];
  const [first] = looks;
  const last = looks.at(-1);
  if (first === undefined || last === undefined) return emptyLedger('flow', 'noReading');
  if (last.at <= first.at) return emptyLedger('flow', 'oneReading', entries);
  const between = (from: EpochMs, to: EpochMs): Booked | null => {
    const integral = flowIntegral(looks, [from, to], bends);
    const own = unit === null ? null : burntBetween([unit], from, to);
    if (integral === null || own?.kind === 'notCounted') return null;
    return {
      kg: integral.kg + (own?.kg ?? 0),
      standardUncertaintyKg: Math.hypot(
        integral.displaysKg,
        integral.gapsKg,
        (residual * (to - from)) / 1000,
        own?.standardUncertaintyKg ?? 0,
      ),
      by: [...new Set([...integral.by, ...(own?.by ?? [])])],
      broken: [],
    };
  };
  const longestGapS = flowIntegral(looks, [first.at, last.at], bends)?.longestGapS ?? 0;
  if (longestGapS > LONGEST_GAP_S) return emptyLedger('flow', 'tooSparse', entries);
  const whole = between(first.at, last.at);
  if (whole === null) return emptyLedger('flow', 'countersNotRead', entries);
  const { kg, standardUncertaintyKg, by } = whole;
  return {
    source: 'flow',
    used: {
      kind: 'answer',
      value: { from: first.at, to: last.at, kg, standardUncertaintyKg },
      how: { entries: by, method: 'straightLinesBetweenReadings', broken: [] },
    },
    covers: { from: first.at, to: last.at, marks: null },
    between,
  };
}

function changesOf(view: FlightView): readonly EpochMs[] {
  const changes: EpochMs[] = [];
  for (const { standing, effective, at } of items(view.timeline)) {
    if (standing === 'stands' && CHANGES_FLOW.has(effective.kind)) changes.push(at);
  }
  return changes;
}
