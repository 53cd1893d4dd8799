import { comparisons } from '../../src/analysis/comparisons.ts';
import { suctionSpans } from '../../src/analysis/fuel/spans.ts';
import { liveEstimate } from '../../src/analysis/liveEstimate.ts';
import type { PointResult } from '../../src/analysis/results.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import { startFlight, type FlightView } from '../../src/record/flight.ts';
import { sealed, viewOfEntries } from '../analysis/flights.ts';
import type { Flown, Truth } from './flown.ts';
import type { Worth } from './nature.ts';
import { ofFlow, ofFuel, ofHalf, ofReduction, type Found, type Outcome } from './outcome.ts';

/** Writes the flight down, lets the analysis read it, and holds every interval against what is true. */
export function judged(flight: Flown): readonly Outcome[] {
  const record = startFlight();
  const outcomes: Outcome[] = [];
  let glance = -1;
  for (const entry of sealed(flight.drafts)) {
    const view = record.add([entry]);
    if (entry.kind === 'unrecognised' || entry.body.readings === undefined) continue;
    glance += 1;
    if (flight.truths[glance]?.atEnd === true) outcomes.push(...liveOutcomes(view, flight));
  }
  return [...outcomes, ...landedOutcomes(record.view(), flight)];
}

/** What the screen shows at that moment, from what is written by then. */
function liveOutcomes(view: FlightView, flight: Flown): readonly Outcome[] {
  const estimate = liveEstimate(view);
  if (estimate.kind !== 'value') return [];
  const { worth, spoilt } = truthAt(estimate.glance, flight);
  const { fuel, drag, net, madeOf } = estimate;
  const found: Found = {
    readings: 0,
    baselineReadings: 0,
    method: methodOf(madeOf),
    spoilt: spoilt ? 1 : 0,
  };
  return [
    ofReduction('live fuel', fuel, worth.fuel, found),
    ...('fraction' in drag ? [ofReduction('live drag', drag, worth.drag, found)] : []),
    ...(net === null ? [] : [ofReduction('live net', net, worth.net, found)]),
  ];
}

/** As `judged`, of what the points say after landing alone. */
export function judgedPoints(flight: Flown): readonly Outcome[] {
  return pointsOutcomes(pointResults(viewOfEntries(sealed(flight.drafts))), flight);
}

function landedOutcomes(view: FlightView, flight: Flown): readonly Outcome[] {
  const results = pointResults(view);
  return [
    ...pointsOutcomes(results, flight),
    ...comparedOutcomes(view, flight, results),
    ...spanOutcomes(view, flight, baselineReadingsIn(results)),
  ];
}

function pointsOutcomes(results: readonly PointResult[], flight: Flown): readonly Outcome[] {
  const baseline = results.filter(({ suction }) => suction === 'off');
  const behind = {
    baselineReadings: baselineReadingsIn(results),
    spoilt: spoiltIn(baseline.flatMap((run) => truthsOf(run, flight))),
  };
  return results.flatMap((point) => pointOutcomes(point, flight, behind));
}

function baselineReadingsIn(results: readonly PointResult[]): number {
  return results
    .filter(({ suction }) => suction === 'off')
    .reduce((total, { readingsUsed }) => total + readingsUsed.length, 0);
}

function pointOutcomes(
  point: PointResult,
  flight: Flown,
  behind: Pick<Found, 'baselineReadings' | 'spoilt'>,
): readonly Outcome[] {
  const { result } = point;
  if (!('fuel' in result) || result.broken.length > 0) return [];
  const truths = truthsOf(point, flight);
  const truly = (of: (worth: Worth) => number): number => meanOf(truths, of);
  const found: Found = {
    readings: truths.length,
    baselineReadings: behind.baselineReadings,
    method: methodOf(result.madeOf),
    spoilt: behind.spoilt + spoiltIn(truths),
  };
  const { fuel, drag, netReduction, gross, net } = result;
  return [
    ofReduction(
      'fuel',
      fuel,
      truly((worth) => worth.fuel),
      found,
    ),
    ...('fraction' in drag
      ? [
          ofReduction(
            'drag',
            drag,
            truly((worth) => worth.drag),
            found,
          ),
        ]
      : []),
    ...(netReduction === null
      ? []
      : [
          ofReduction(
            'net',
            netReduction,
            truly((worth) => worth.net),
            found,
          ),
        ]),
    ...('kgPerS' in gross
      ? [
          ofFlow(
            'gross flow',
            gross,
            truly(({ savedKgPerS }) => savedKgPerS),
            found,
          ),
        ]
      : []),
    ...('kgPerS' in net
      ? [
          ofFlow(
            'net flow',
            net,
            truly(({ netKgPerS }) => netKgPerS),
            found,
          ),
        ]
      : []),
  ];
}

function comparedOutcomes(
  view: FlightView,
  flight: Flown,
  results: readonly PointResult[],
): readonly Outcome[] {
  const truths = new Map(results.map((result) => [result.point, truthsOf(result, flight)]));
  return comparisons(view).flatMap((comparison) => {
    const one = truths.get(comparison.point) ?? [];
    const other = truths.get(comparison.against.point) ?? [];
    const found: Found = {
      readings: Math.min(one.length, other.length),
      baselineReadings: 0,
      method: 'comparison',
      spoilt: spoiltIn([...one, ...other]),
    };
    const truly = (of: (worth: Worth) => number): number => meanOf(one, of) - meanOf(other, of);
    const shareError = comparison.differenceFraction - truly(({ fuel }) => fuel);
    const flowError =
      comparison.savedDifferenceKgPerS - truly(({ savedAtCardKgPerS }) => savedAtCardKgPerS);
    return [
      ofHalf('compared share', { error: shareError, half: comparison.twoUFraction }, found),
      ofHalf('compared flow', { error: flowError, half: comparison.savedTwoUKgPerS }, found),
    ];
  });
}

function spanOutcomes(
  view: FlightView,
  { spans }: Flown,
  baselineReadings: number,
): readonly Outcome[] {
  return suctionSpans(view).flatMap(({ saving }, index) => {
    const truth = spans[index];
    if (truth === undefined) throw new RangeError(`span ${index} must have a truth`);
    if (saving.kind === 'noAnswer' || saving.how.broken.length > 0) return [];
    const { gross, net, borrowedFrom } = saving.value;
    const found: Found = {
      readings: 0,
      baselineReadings,
      method: methodOf({ method: saving.how.method, borrowedFrom }),
      spoilt: 0,
    };
    const grossKg = truth.turbulentKg - truth.burntKg;
    return [
      ...('kg' in gross ? [ofFuel('span gross', gross, grossKg, found)] : []),
      ...('kg' in net ? [ofFuel('span net', net, grossKg - truth.unitKg, found)] : []),
    ];
  });
}

function methodOf(of: { readonly method: string; readonly borrowedFrom: string | null }): string {
  return of.borrowedFrom === null ? of.method : `${of.method}, borrowed`;
}

function truthAt(glance: number, { truths }: Flown): Truth {
  const truth = truths[glance];
  if (truth === undefined || truth === null) {
    throw new RangeError(`glance ${glance} must have a truth`);
  }
  return truth;
}

function truthsOf({ readingsUsed }: PointResult, flight: Flown): readonly Truth[] {
  return readingsUsed.map((glance) => truthAt(glance, flight));
}

function meanOf(truths: readonly Truth[], of: (worth: Worth) => number): number {
  return truths.reduce((total, { worth }) => total + of(worth), 0) / truths.length;
}

function spoiltIn(truths: readonly Truth[]): number {
  return truths.filter(({ spoilt }) => spoilt).length;
}
