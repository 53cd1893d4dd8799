import type { FlightView } from '../record/flight.ts';
import type { FlightSheet } from '../record/sheet.ts';
import type { Answer } from './answer.ts';
import { isSameCard } from './baselineDrift.ts';
import { isSameAircraft } from './encounters/chronicProbes.ts';
import { byOpening } from './encounters/flightOrder.ts';
import { isSameSetting, nominalSetting } from './encounters/settings.ts';
import type { PointResult, ReductionFigure } from './results.ts';
import { pointResults } from './testPoints.ts';

/** The reduction of one flight where it can be set beside the others: same card, same setting, same weight. */
export interface MatchedReduction {
  readonly flight: string;
  readonly title: string;
  readonly matched: Answer<
    {
      readonly point: string;
      readonly run: number;
      readonly setting: string;
      readonly reduction: ReductionFigure;
      readonly weightAtCardN: number;
    },
    NoMatch,
    'nearestWeightAtCard'
  >;
}

export type NoMatch =
  'noFlightSheet' | 'otherAircraft' | 'otherCard' | 'noNominalPoint' | 'otherWeight';

/** Weights this near to each other count as the same, as a share (as for the baseline). */
const WEIGHT_MARGIN = 0.02;

/**
 * One point a flight, in the order in which the flights were opened: finished, struck by no gate, at the setting that
 * most cards of the newest flight sheet ask for, and nearest to the weight that most flights have flown. Per cent rises
 * as fuel burns off, so another weight would be another number.
 */
export function matchedReductions(views: readonly FlightView[]): readonly MatchedReduction[] {
  const flights = byOpening(views).map((view) => ({ view, sheet: view.state.sheet }));
  const reference = flights.findLast(({ sheet }) => sheet !== null)?.sheet ?? null;
  const setting = reference === null ? null : nominalSetting(reference);
  const told = flights.map(({ view, sheet }) => ({
    view,
    found: pointsOf(view, sheet, reference, setting),
  }));
  const weightN = commonWeightN(
    told.map(({ found }) => (typeof found === 'string' ? [] : found.map(weightOf))),
  );
  return told.map(({ view, found }): MatchedReduction => {
    const head = { flight: view.state.flight ?? '', title: view.state.title };
    const none = (because: NoMatch, points: readonly Matchable[] = []): MatchedReduction => ({
      ...head,
      matched: { kind: 'noAnswer', because, entries: points.flatMap(entriesOf) },
    });
    if (typeof found === 'string') return none(found);
    const [nearest] = found.toSorted(
      (a, b) => Math.abs(weightOf(a) - weightN) - Math.abs(weightOf(b) - weightN),
    );
    if (nearest === undefined) return none('noNominalPoint');
    if (!isNear(weightOf(nearest), weightN)) return none('otherWeight', found);
    const { point, result } = nearest;
    return {
      ...head,
      matched: {
        kind: 'answer',
        value: {
          point: point.point,
          run: point.run,
          setting: point.setting,
          reduction: result.fuel,
          weightAtCardN: result.madeOf.weightAtCardN,
        },
        how: { entries: entriesOf(nearest), method: 'nearestWeightAtCard', broken: [] },
      },
    };
  });
}

interface Matchable {
  readonly point: PointResult;
  readonly result: Extract<PointResult['result'], { readonly kind: 'valid' | 'indicative' }>;
}

const weightOf = ({ result }: Matchable): number => result.madeOf.weightAtCardN;
const entriesOf = ({ result }: Matchable) => result.madeOf.entries;
const isNear = (a: number, b: number): boolean => Math.abs(a - b) <= WEIGHT_MARGIN * b;

function pointsOf(
  view: FlightView,
  sheet: FlightSheet | null,
  reference: FlightSheet | null,
  setting: string | null,
): readonly Matchable[] | NoMatch {
  if (sheet === null || reference === null) return 'noFlightSheet';
  if (!isSameAircraft(sheet, reference)) return 'otherAircraft';
  if (!isSameCard(sheet, reference)) return 'otherCard';
  return pointResults(view).flatMap((point) => {
    const { result } = point;
    const counts = result.kind === 'valid' && result.broken.length === 0;
    return counts && setting !== null && isSameSetting(point.setting, setting)
      ? [{ point, result }]
      : [];
  });
}

/** The weight of some point that most flights have one near to; of equals, the earliest. */
function commonWeightN(flights: readonly (readonly number[])[]): number {
  let best = { weightN: 0, flights: 0 };
  for (const weightN of flights.flat()) {
    const near = flights.filter((own) => own.some((other) => isNear(other, weightN))).length;
    if (near > best.flights) best = { weightN, flights: near };
  }
  return best.weightN;
}
