import { median } from '../../aero/statistics/descriptive.ts';
import type { FlightState } from '../../record/flightState.ts';
import { itemAt } from '../../record/trail.ts';
import { displayUncertaintySi } from '../calibrate.ts';
import { totalFlow, type TotalFlow } from '../reduceReading.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** A share off by more than this many doubts of the difference is no scatter (a choice of the live method). */
const SHARE_DOUBTS = 5;
const READINGS_COMPARED = 20;
/** The answer must not cost more late in a flight. */
const GLANCES_LOOKED_AT = 60;

/**
 * An engine is off the share it had in the earlier readings. With two engines it is not known which one,
 * and a wrong total follows from either.
 */
export function engineDisagrees(
  state: FlightState,
  terms: SheetTerms,
  index: number,
  flow: TotalFlow,
): boolean {
  return engineOutOfProportion(flow) || shareHasMoved(flow, earlierFlows(state, terms, index));
}

/** Over twice or under half of what the others read: a digit too many, or too few. */
export function engineOutOfProportion({ engines }: TotalFlow): boolean {
  if (engines.length < 2) return false;
  return engines.some(({ kgPerS }, index) => {
    const others = engines.filter((_, other) => other !== index).map((engine) => engine.kgPerS);
    const typical = median(others);
    return kgPerS > 2 * typical || kgPerS < typical / 2;
  });
}

function shareHasMoved(flow: TotalFlow, earlier: readonly TotalFlow[]): boolean {
  const { engines, kgPerS: total } = flow;
  if (engines.length < 2 || earlier.length === 0) return false;
  return engines.some(({ kgPerS }, index) => {
    const share = kgPerS / total;
    const before = median(
      earlier.map((other) => (other.engines[index]?.kgPerS ?? 0) / other.kgPerS),
    );
    const one = Math.hypot(
      ...engines.map(
        ({ parts }, gauge) =>
          (((gauge === index ? 1 : 0) - share) * displayUncertaintySi(parts)) / total,
      ),
    );
    // The variance of a median of normal readings is π/2 of that of their mean; of two it is the mean.
    const ofMedian = (earlier.length > 2 ? Math.PI / 2 : 1) / earlier.length;
    return Math.abs(share - before) > SHARE_DOUBTS * one * Math.sqrt(1 + ofMedian);
  });
}

function earlierFlows(state: FlightState, terms: SheetTerms, index: number): readonly TotalFlow[] {
  const flows: TotalFlow[] = [];
  for (let at = index - 1; at >= Math.max(0, index - GLANCES_LOOKED_AT); at -= 1) {
    const glance = itemAt(state.glances, at);
    if (glance === undefined || flows.length === READINGS_COMPARED) break;
    const flow = totalFlow(terms, glance);
    if (flow.kind === 'flow') flows.push(flow);
  }
  return flows;
}
