import { acrossFlights, type AcrossFlights } from '../../../analysis/acrossFlights.ts';
import { laminarByTime } from '../../../analysis/coverage/laminarByTime.ts';
import { noLaminarWords } from '../../../analysis/words/coverage.ts';
import { driftGateWords, noDriftWords, noLabourWords } from '../../../analysis/words/labour.ts';
import { noMatchWords } from '../../../analysis/words/matched.ts';
import { change, figure } from '../../kit/number.ts';
import { percent, percentWords } from '../answers/answerDesk.ts';
import { figureFrom95, figureFromU, type PlotFigure } from '../answers/plot/figures.ts';
import type { FlightBeside } from './beside.ts';
import { titleOf } from './beside.ts';

/** A value of a trend, or why this flight has none. */
export interface Told {
  readonly plotted: PlotFigure | number | null;
  readonly words: string;
}

export interface FlightTrend {
  readonly flight: string;
  readonly title: string;
  readonly date: string;
  readonly from: string;
  readonly reduction: Told;
  readonly clearAir: Told;
  readonly labour: Told;
  readonly drift: Told;
}

export interface Trends {
  readonly flights: readonly FlightTrend[];
  readonly across: AcrossFlights;
}

export function trendsOf(flights: readonly FlightBeside[]): Trends {
  const across = acrossFlights(flights.map(({ view }) => view));
  const of = <One extends { readonly flight: string }>(all: readonly One[], flight: string) =>
    all.find((one) => one.flight === flight);
  return {
    across,
    flights: flights.map(({ view, from }) => {
      const flight = view.state.flight ?? '';
      return {
        flight,
        title: titleOf(view),
        date: view.state.date ?? 'no date',
        from,
        reduction: reductionOf(of(across.matchedReduction, flight)),
        clearAir: clearAirOf(laminarByTime(view).clearAir),
        labour: labourOf(of(across.labour, flight)),
        drift: driftOf(of(across.baselineDrift, flight)),
      };
    }),
  };
}

const NOTHING: Told = { plotted: null, words: 'none' };

function reductionOf(one: AcrossFlights['matchedReduction'][number] | undefined): Told {
  if (one === undefined) return NOTHING;
  const { matched } = one;
  if (matched.kind === 'noAnswer') return { plotted: null, words: noMatchWords(matched.because) };
  const { reduction, point, run } = matched.value;
  return {
    plotted: figureFrom95(reduction.fraction, reduction.interval95, { scale: 100 }),
    words: `${percentWords(reduction)}, ${point} r${run}`,
  };
}

function clearAirOf(answer: ReturnType<typeof laminarByTime>['clearAir']): Told {
  if (answer.kind === 'noAnswer') return { plotted: null, words: noLaminarWords(answer.because) };
  const { byAreaFraction, observedFraction } = answer.value;
  return {
    plotted: 100 * byAreaFraction,
    words: `${percent(byAreaFraction)}, ${percent(observedFraction)} % called`,
  };
}

function labourOf(one: AcrossFlights['labour'][number] | undefined): Told {
  if (one === undefined) return NOTHING;
  const { perAirborneHour } = one;
  return perAirborneHour.kind === 'noAnswer'
    ? { plotted: null, words: noLabourWords(perAirborneHour.because) }
    : {
        plotted: perAirborneHour.value.labourPerFlownHour,
        words: figure(perAirborneHour.value.labourPerFlownHour, 1),
      };
}

function driftOf(one: AcrossFlights['baselineDrift'][number] | undefined): Told {
  if (one === undefined) return NOTHING;
  const { drift } = one;
  if (drift.kind === 'noAnswer') {
    // The first flight is the zero that the others are held against.
    return {
      plotted: drift.because === 'isTheFirst' ? 0 : null,
      words: noDriftWords(drift.because),
    };
  }
  const { driftFraction, standardUncertaintyFraction, differs } = drift.value;
  const gates = drift.how.broken.map(driftGateWords);
  return {
    plotted: figureFromU(driftFraction, standardUncertaintyFraction, {
      scale: 100,
      isHollow: gates.length > 0,
    }),
    words: [
      `${change(100 * driftFraction, 2)} ± ${percent(2 * standardUncertaintyFraction, 2)}`,
      differs ? 'differs' : 'cannot be told apart',
      ...gates,
    ].join(', '),
  };
}
