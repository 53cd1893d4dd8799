import type { FlightResults } from '../../analysis/flightResults.ts';
import { cardStateWords, missWords } from '../../analysis/words/completion.ts';
import { clockUseWords, reflyWords, stateWords } from '../../analysis/words/points.ts';
import { numberWords } from '../../record/readingWords.ts';
import { lengthWords } from '../pageTime.ts';
import { percentFigure, signed } from './figures.ts';
import { headed, item, table } from './layout.ts';
import type { Paper } from './paper.ts';

/** The three lines that a meeting reads first. */
export function headline(paper: Paper): readonly string[] {
  const { flight, points, completion } = paper.results;
  const { liftOff, touchdown } = flight.milestones;
  const best = bestOf(points);
  return [
    ...(liftOff === undefined
      ? ['No lift-off was marked.']
      : [
          `Airborne   ${paper.clock(liftOff.at, liftOff.by)} to ${
            touchdown === undefined
              ? 'no touchdown marked'
              : `${paper.clock(touchdown.at, touchdown.by)}, ${lengthWords(touchdown.at - liftOff.at)}`
          } ${paper.cite([liftOff.by, ...(touchdown === undefined ? [] : [touchdown.by])])}`,
        ]),
    `Most       ${
      best === null
        ? 'no point holds a valid reduction'
        : `${percentFigure(best.result.fuel)} % less fuel flow at ${best.point} r${best.run}${
            best.result.netKgPerS === null
              ? ''
              : `, ${paper.flow(best.result.netKgPerS)} ${paper.flowUnit} net`
          }`
    }`,
    `Cards      ${completion.complete} of ${completion.planned} complete${
      completion.refly.length === 0
        ? ''
        : `; to fly again: ${completion.refly.map(({ point }) => point).join(', ')}`
    }`,
  ];
}

type Point = FlightResults['points'][number];
type Reduction = Extract<Point['result'], { readonly fuel: unknown }>;

/** The most fuel flow saved, in per cent, by a finished point that no gate strikes. */
function bestOf(points: readonly Point[]): (Point & { readonly result: Reduction }) | null {
  let best: (Point & { readonly result: Reduction }) | null = null;
  for (const point of points) {
    const { result } = point;
    if (result.kind !== 'valid' || result.broken.length > 0) continue;
    if (best === null || result.fuel.fraction > best.result.fuel.fraction) {
      best = { ...point, result };
    }
  }
  return best;
}

/** Q6. */
export function completionSection(paper: Paper): readonly string[] {
  const { cards, unplanned, refly } = paper.results.completion;
  const rows = cards.map(({ point, title, state, runs, missed }) => ({
    cells: [
      point,
      title,
      cardStateWords(state),
      runs.map((run) => runWords(paper, run)).join(', '),
    ],
    notes: missed.map(missWords),
  }));
  return headed('Cards flown and to fly again', [
    ...(cards.length === 0
      ? ['The flight sheet has no test card.']
      : table(
          [
            { head: 'Card', side: 'left' },
            { head: 'Title', side: 'left' },
            { head: 'State', side: 'left' },
            { head: 'Runs, with minutes in tolerance', side: 'left' },
          ],
          rows,
        )),
    ...unplanned.flatMap((run) =>
      item(`${run.point}: on no card, ${stateWords(run)}, ${runWords(paper, run)}`),
    ),
    ...refly.flatMap((one) =>
      item(`fly ${one.point} again: ${reflyWords(one)} (priority ${one.priority})`),
    ),
  ]);
}

type RunFlown = FlightResults['completion']['unplanned'][number];

/** Less than this is 0.0 of a minute. */
const LEAST_TOLD_S = 3;

/** `5.5 of 7.0 min [42 46]`: time within the card, of the time of the run. */
function runWords(
  paper: Paper,
  { inToleranceS, unobservedS, durationS, entries }: RunFlown,
): string {
  const minutes = (seconds: number): string => numberWords(seconds / 60, 1);
  const unseen = unobservedS >= LEAST_TOLD_S ? ` (${minutes(unobservedS)} not seen)` : '';
  return `${minutes(inToleranceS)} of ${minutes(durationS)}${unseen} ${paper.cite(entries.slice(0, 2))}`.trimEnd();
}

/** Q9. */
export function clocksSection(paper: Paper): readonly string[] {
  const { fits, hacks } = paper.results.clocks;
  const rows = fits.map((fit) => ({
    cells: [
      fit.rec === null ? fit.clock : `${fit.clock} ${fit.rec.slice(0, 4)}`,
      fit.offsetsS.length === 0
        ? 'no hack'
        : fit.offsetsS.map((offset) => signed(offset, 1)).join(', '),
      fit.middle === null
        ? 'not known'
        : `${signed(fit.middle.offsetS, 2)} ± ${numberWords(fit.middle.standardUncertaintyS, 2)}`,
      fit.rate === null
        ? 'not known'
        : `${signed(fit.rate.sPerH, 2)} ± ${numberWords(fit.rate.standardUncertaintySPerH, 2)}`,
      clockUseWords(fit),
    ],
    notes: fit.suspectedStepsAt.map(
      (at) => `may have been set about ${paper.clock(at, undefined)}`,
    ),
  }));
  const said =
    hacks.length === 0
      ? 'No time hack was taken: times are the tablet’s own.'
      : `Against ${hacks[0]?.masterClock ?? ''}; times on this page stand on it. Hacks ${paper.cite(hacks.map(({ by }) => by))}.`;
  return headed('Clocks', [
    said,
    ...(rows.length === 0
      ? []
      : table(
          [
            { head: 'Clock', side: 'left' },
            { head: 'Offsets, s', side: 'left' },
            { head: 'Mid-flight, s (1 σ)', side: 'left' },
            { head: 'Rate, s/h (1 σ)', side: 'left' },
            { head: 'Use', side: 'left' },
          ],
          rows,
        )),
  ]);
}
