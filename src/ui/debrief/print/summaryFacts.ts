import type { Loss } from '../../../analysis/encounters/losses.ts';
import type { PointOfFlight } from '../../../analysis/flightResults.ts';
import type { Interval95 } from '../../../analysis/results.ts';
import { massIn } from '../../../analysis/sheetUnits.ts';
import { noDragWords } from '../../../analysis/words/reasons.ts';
import { evidenceWords } from '../../../analysis/words/evidence.ts';
import { noLaminarWords } from '../../../analysis/words/coverage.ts';
import type { EntryId } from '../../../record/brand.ts';
import { figure } from '../../kit/number.ts';
import type { Printed } from './printed.ts';

type Reduction = Extract<PointOfFlight['result'], { readonly fuel: unknown }>;
export type BestPoint = PointOfFlight & { readonly result: Reduction };

/** The most fuel flow saved, in per cent, by a finished point that no gate strikes. */
export function bestOf(points: readonly PointOfFlight[]): BestPoint | null {
  let best: BestPoint | null = null;
  for (const point of points) {
    const { result } = point;
    const stands = result.kind === 'valid' && result.broken.length === 0;
    if (stands && (best === null || result.fuel.fraction > best.result.fuel.fraction)) {
      best = { ...point, result };
    }
  }
  return best;
}

/** Half of a 95 % interval in per cent. */
export const halfPct = ({ low, high }: Interval95): string => figure(50 * (high - low), 1);

const pct = (fraction: number, interval95: Interval95): string =>
  `${figure(100 * fraction, 1)} ± ${halfPct(interval95)}\u00a0%`;

/** The lines beside the headline: a name and what it came to, a reason where there is no number. */
export function headlineRows(printed: Printed): readonly (readonly [string, string])[] {
  const { results, desk } = printed;
  const best = bestOf(results.points);
  const target = desk.view.state.sheet?.targetReductionFraction;
  return [
    ...(best === null ? [] : bestRows(best, target)),
    ...results.suctionSpans.map(({ saving }): readonly [string, string] => [
      'Fuel saved net, suction on',
      saving.kind === 'noAnswer' || 'because' in saving.value.net
        ? 'no number'
        : `${printedMass(printed, saving.value.net.kg)}, ${figure(100 * saving.value.net.fraction, 1)}\u00a0%`,
    ]),
    ['Laminar area, clear air', shareWords(results.laminar.clearAir)],
    ['Laminar area, all air', shareWords(results.laminar.allAir)],
  ];
}

function bestRows(
  { result }: BestPoint,
  target: number | undefined,
): readonly (readonly [string, string])[] {
  const { netReduction, drag } = result;
  return [
    [
      'Net of suction fuel',
      netReduction === null ? 'not metered' : pct(netReduction.fraction, netReduction.interval95),
    ],
    [
      'Drag reduction',
      'because' in drag ? noDragWords(drag.because) : pct(drag.fraction, drag.interval95),
    ],
    ...(target === undefined
      ? []
      : [
          [
            'Target',
            `${figure(100 * target, 0)}\u00a0%, ${result.fuel.fraction >= target ? 'reached' : 'not reached'}`,
          ] as const,
        ]),
  ];
}

function printedMass({ massUnit }: Printed, kg: number): string {
  return `${figure(massIn(massUnit, kg), 0)}\u00a0${massUnit}`;
}

function shareWords(answer: Printed['results']['laminar']['allAir']): string {
  if (answer.kind === 'noAnswer') return noLaminarWords(answer.because);
  const { byAreaFraction, observedFraction } = answer.value;
  return `${figure(100 * byAreaFraction, 0)}\u00a0%, ${figure(100 * observedFraction, 0)}\u00a0% seen`;
}

/** Losses by the entry that called them, in order of time. */
export function callsOf(losses: readonly Loss[]): ReadonlyMap<EntryId, readonly [Loss, ...Loss[]]> {
  const calls = new Map<EntryId, [Loss, ...Loss[]]>();
  for (const loss of losses) {
    const call = calls.get(loss.seen.by);
    if (call === undefined) calls.set(loss.seen.by, [loss]);
    else call.push(loss);
  }
  return calls;
}

/** What is decided of a loss, or else what speaks for a cause; a person's word comes first. */
export function lossWords({ kind, causes, evidence }: Loss, printed: Printed): string {
  const what = kind === 'neverLaminar' ? 'never laminar: ' : '';
  const decided = causes.at(-1);
  if (decided !== undefined) return `${what}${decided.cause}, by ${decided.role}`;
  const { sheet } = printed.desk.view.state;
  const speaks = evidence.flatMap((one) => evidenceWords(one, sheet) ?? []);
  return `${what}${speaks[0] ?? 'nothing speaks'}; not decided`;
}
