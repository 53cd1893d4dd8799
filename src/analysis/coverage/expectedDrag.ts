import { COVERAGE_DOUBT_FRACTION, coverageVerdict } from '../../aero/laminarArea.ts';
import { laterBy, type EntryId } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import { contextOf, type Context } from '../reading/context.ts';
import type { RunMean } from '../reading/runMean.ts';
import { reducedRuns, type ReducedRun } from '../reducedRuns.ts';
import type {
  BesideMeasured,
  ExpectedDrag,
  ExpectedReduction,
  NoExpected,
  ToCheck,
} from './expectedResults.ts';
import { frictionSaved, panelsSeen, type SeenPanel } from './strips.ts';
import type { Stretch } from './stretches.ts';

/** What each suction-on run should have saved by the area called laminar, beside what the fuel says it did. */
export function expectedDrag(view: FlightView): readonly ExpectedDrag[] {
  const context = contextOf(view);
  if (context === null) return [];
  return reducedRuns(context)
    .filter(({ suction }) => suction === 'on')
    .map((reduced) => {
      const expected = expectedOf(context, reduced);
      const { point, run } = reduced.run;
      return { point, run, expected, beside: besideOf(reduced, expected) };
    });
}

function expectedOf(context: Context, { mean, readings }: ReducedRun): ExpectedDrag['expected'] {
  const entries = readings.used.flatMap((each) => each.entries);
  const [first] = readings.used;
  const last = readings.used.at(-1);
  if (mean === null || first === undefined || last === undefined) {
    return { kind: 'noAnswer', because: 'noUsableReading', entries: [...new Set(entries)] };
  }
  // One reading is a moment, and a moment has no time to take a mean over.
  const { at: from } = first.glance;
  const to = last.glance.at > from ? last.glance.at : laterBy(from, 1);
  return expectedOver(context, { mean, stretch: { from, to }, entries });
}

/** What the area called laminar in that stretch of time should save, in the air of those readings. */
export function expectedOver(
  context: Context,
  over: {
    readonly mean: RunMean;
    readonly stretch: Stretch;
    /** The readings' own. */
    readonly entries: readonly EntryId[];
  },
): ExpectedDrag['expected'] {
  const none = (because: NoExpected, also: readonly EntryId[] = []): ExpectedDrag['expected'] => ({
    kind: 'noAnswer',
    because,
    entries: [...new Set([...over.entries, ...also])],
  });
  const { sheet } = context.terms;
  const { treatedDragShare: share } = sheet.aircraft;
  if (share === undefined) return none('treatedDragShareNotStated');
  if (!(share.fraction > 0 && share.fraction <= 1)) return none('treatedDragShareImpossible');
  if (sheet.panels.length === 0) return none('noPanels');
  const seen = panelsSeen(context.state, sheet, over.stretch);
  const by = seen.flatMap((panel) => panel.by);
  const area = areaSeen(seen);
  if (area === null) return none('notAssessed', by);
  const saved = frictionSaved(seen, over.mean);
  if (saved.kind === 'unavailable') return none(saved.because, by);
  const upperBoundFraction = share.fraction * saved.value.upperBound;
  const stripsFraction = saved.value.strips === null ? null : share.fraction * saved.value.strips;
  const estimateFraction = stripsFraction ?? upperBoundFraction;
  const { standardUncertainty: doubt, fraction } = share;
  return {
    kind: 'answer',
    value: {
      upperBoundFraction,
      stripsFraction,
      estimateFraction,
      estimateStandardUncertainty:
        doubt === undefined ? null : estimateFraction * (Math.abs(doubt) / fraction),
      ...area,
      treatedDragShare: fraction,
      treatedDragShareFrom: share.from,
    },
    how: {
      entries: [...new Set([...over.entries, ...by])],
      method: stripsFraction === null ? 'upperBound' : 'virtualOriginStrips',
      broken: [],
    },
  };
}

/** Null where nobody called any panel. */
function areaSeen(
  seen: readonly SeenPanel[],
): Pick<ExpectedReduction, 'laminarAreaFraction' | 'observedFraction'> | null {
  let [laminar, observed, whole] = [0, 0, 0];
  for (const { areaM2, laminarFraction } of seen) {
    whole += areaM2;
    if (laminarFraction === null) continue;
    observed += areaM2;
    laminar += areaM2 * laminarFraction;
  }
  if (!(observed > 0)) return null;
  return { laminarAreaFraction: laminar / observed, observedFraction: observed / whole };
}

function besideOf(
  { against, because }: ReducedRun,
  expected: ExpectedDrag['expected'],
): ExpectedDrag['beside'] {
  if (expected.kind === 'noAnswer') return expected;
  const { entries, method } = expected.how;
  if (against === null) return { kind: 'noAnswer', because, entries };
  const { drag } = against.reduction;
  const made = [...new Set([...entries, ...against.inUse.entries])];
  if ('because' in drag) return { kind: 'noAnswer', because: drag.because, entries: made };
  const { estimateFraction } = expected.value;
  const expanded95 = (drag.interval95.high - drag.interval95.low) / 2;
  const verdict = coverageVerdict({
    dragReductionFraction: drag.fraction,
    expanded95,
    coverageEstimate: estimateFraction,
  });
  const value: BesideMeasured = {
    measured: drag,
    estimateFraction,
    differenceFraction: drag.fraction - estimateFraction,
    allowedFraction: expanded95 + COVERAGE_DOUBT_FRACTION * Math.abs(estimateFraction),
    verdict,
    toCheck: verdict === 'consistent' ? [] : toCheck(method, drag.fraction < estimateFraction),
  };
  return { kind: 'answer', value, how: { entries: made, method, broken: against.broken } };
}

function toCheck(
  method: 'virtualOriginStrips' | 'upperBound',
  measuredLess: boolean,
): readonly ToCheck[] {
  const usual: readonly ToCheck[] = ['weight', 'mach', 'suctionState', 'wedges'];
  return method === 'upperBound' && measuredLess ? ['estimateIsUpperBound', ...usual] : usual;
}
