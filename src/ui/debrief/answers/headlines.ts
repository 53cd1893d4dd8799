import type { FlightResults } from '../../../analysis/flightResults.ts';
import { noLaminarWords } from '../../../analysis/words/coverage.ts';
import { balanceWords, noNetWords, noSpanWords } from '../../../analysis/words/fuel.ts';
import { noLabourWords } from '../../../analysis/words/labour.ts';
import { WINGS } from '../../../record/sheet.ts';
import { figure } from '../../kit/number.ts';
import { percent, type AnswerDesk } from './answerDesk.ts';
import { counted, measured, none, type Headline } from './headline.ts';
import { figureFrom95, figureFromU } from './plot/figures.ts';
import type { QuestionId } from './questions.ts';

/** What each page says first; the index shows all ten. */
export function headlineOf(question: QuestionId, of: AnswerDesk): Headline {
  switch (question) {
    case 1:
      return mostReduced(of);
    case 2:
      return lossesCalled(of);
    case 3:
      return lagsSeen(of);
    case 4:
      return clearAirLaminar(of);
    case 5:
      return netSaved(of);
    case 6:
      return cardsComplete(of);
    case 7:
      return firstToSmooth(of);
    case 8:
      return labourAnHour(of);
    case 9:
      return tabletOffset(of);
    case 10:
      return booksBalance(of);
  }
}

/** The most fuel flow saved by a finished point that no gate strikes. */
function mostReduced({ results }: AnswerDesk): Headline {
  const valid = results.points.flatMap((point) =>
    point.result.kind === 'valid' && point.result.broken.length === 0
      ? [{ point, result: point.result }]
      : [],
  );
  const [best] = valid.toSorted((a, b) => b.result.fuel.fraction - a.result.fuel.fraction);
  if (best === undefined) {
    return none(
      results.points.length === 0
        ? 'No test point was started.'
        : 'No point holds a valid reduction; each says why below.',
    );
  }
  const { fraction, interval95 } = best.result.fuel;
  return measured(figureFrom95(fraction, interval95, { scale: 100 }), {
    unit: '% less fuel flow',
    of: `most of ${valid.length} valid points, at ${best.point.point} r${best.point.run}`,
  });
}

function lossesCalled({ results: { losses } }: AnswerDesk): Headline {
  if (losses.length === 0) return none('No loss was called.');
  const decided = losses.filter(({ causes }) => causes.length > 0).length;
  const without = losses.filter(({ evidence }) =>
    evidence.some(({ candidate, finding }) => candidate === 'unexplained' && finding === 'speaks'),
  ).length;
  return counted(
    String(losses.length),
    losses.length === 1 ? 'loss called' : 'losses called, wing by wing',
    `${decided} with a cause decided; ${without} that nothing speaks for`,
  );
}

function lagsSeen({ results: { encounters } }: AnswerDesk): Headline {
  if (encounters.length === 0) return none('No moisture was written down.');
  const lags = (take: 'loss' | 'back'): readonly number[] =>
    encounters.flatMap(({ wings }) =>
      WINGS.flatMap((wing) => {
        const lag = take === 'loss' ? wings[wing].loss.first : wings[wing].recovery.toCount;
        return lag.kind === 'answer' && lag.how.broken.length === 0 ? [lag.value.lagS] : [];
      }),
    );
  const [loss, back] = [lags('loss'), lags('back')];
  const met = encounters.length === 1 ? '1 encounter' : `${encounters.length} encounters`;
  if (loss.length === 0) return none(`${met}, and no loss with a time inside.`);
  return counted(
    spread(loss),
    's to first loss',
    `${met}; ${back.length === 0 ? 'nobody saw the count come back' : `back to count after ${spread(back)} s`}`,
  );
}

function spread(values: readonly number[]): string {
  const [low, high] = [Math.min(...values), Math.max(...values)].map((value) => figure(value, 0));
  return low === high ? `${low}` : `${low} to ${high}`;
}

function clearAirLaminar({ results: { laminar } }: AnswerDesk): Headline {
  const { clearAir, allAir } = laminar;
  if (clearAir.kind === 'noAnswer' && allAir.kind === 'noAnswer') {
    return none(`Not given: ${noLaminarWords(clearAir.because)}.`);
  }
  const all =
    allAir.kind === 'answer' ? `${percent(allAir.value.byAreaFraction)} % in all air` : '';
  if (clearAir.kind === 'noAnswer')
    return none(`Clear air: ${noLaminarWords(clearAir.because)}; ${all}.`);
  const { byAreaFraction, observedFraction } = clearAir.value;
  return counted(
    percent(byAreaFraction),
    '% laminar in clear air',
    `${all}; ${percent(observedFraction)} % of area and time was called`,
  );
}

/** The span with the most time; several are not added up, since they share their doubts. */
export function longestSpan({
  suctionSpans,
}: FlightResults): FlightResults['suctionSpans'][number] | undefined {
  return suctionSpans.toSorted((a, b) => b.to - b.from - (a.to - a.from))[0];
}

function netSaved({ results, units }: AnswerDesk): Headline {
  const span = longestSpan(results);
  if (span === undefined) return none('Suction was never on.');
  if (span.saving.kind === 'noAnswer')
    return none(`Not given: ${noSpanWords(span.saving.because)}.`);
  const { gross, net } = span.saving.value;
  if ('because' in net) return none(`Net ${noNetWords(net.because)}.`);
  const besides =
    'because' in gross ? 'gross not given' : `gross ${units.mass(gross.kg)} ${units.massUnit}`;
  return measured(figureFrom95(net.kg, net.interval95, { scale: units.massScale }), {
    unit: `${units.massUnit} net`,
    of: `${percent(net.fraction, 1)} % of the fuel with suction off; ${besides}`,
    isStruck: span.saving.how.broken.length > 0,
  });
}

function cardsComplete({ results: { completion } }: AnswerDesk): Headline {
  const { complete, planned, refly } = completion;
  if (planned === 0) return none('The flight sheet has no test card.');
  return counted(
    `${complete} of ${planned}`,
    'cards complete',
    refly.length === 0
      ? 'none to fly again'
      : `to fly again: ${refly.map(({ point }) => point).join(', ')}`,
  );
}

function firstToSmooth({ across, flightCount }: AnswerDesk): Headline {
  const [first] = across.chronic.panels.filter(
    ({ turbulentArea }) =>
      turbulentArea.kind === 'answer' && turbulentArea.value.turbulentAreaM2 > 0,
  );
  if (first === undefined || first.turbulentArea.kind === 'noAnswer') {
    return none('No flight counts: clear air, nominal suction, covers seen to go, probes called.');
  }
  const { turbulentAreaM2, fewestFlights } = first.turbulentArea.value;
  const by =
    first.rank.kind === 'answer'
      ? `${figure(first.rank.value.areaM2PerH, 3)} m² an hour of work`
      : 'no hours stated';
  return counted(
    first.panel,
    'comes first',
    `${figure(turbulentAreaM2, 2)} m² turbulent, ${by}; n at least ${fewestFlights} of ${flightCount === 1 ? '1 flight, which is no habit yet' : `${flightCount} flights`}`,
  );
}

function labourAnHour({ results: { labour } }: AnswerDesk): Headline {
  const { work, perAirborneHour } = labour;
  if (work.kind === 'noAnswer') return none(`None given: ${noLabourWords(work.because)}.`);
  if (perAirborneHour.kind === 'noAnswer') {
    return none(
      `${figure(work.value.labourH, 1)} h of work; ${noLabourWords(perAirborneHour.because)}.`,
    );
  }
  return counted(
    figure(perAirborneHour.value.labourPerFlownHour, 1),
    'labour hours an hour airborne',
    `${figure(work.value.labourH, 1)} h of work over ${figure(perAirborneHour.value.flownH, 1)} h airborne`,
  );
}

function tabletOffset({ results: { clocks } }: AnswerDesk): Headline {
  const tablet = clocks.fits.find(({ rec, middle }) => rec !== null && middle !== null);
  const middle = tablet?.middle ?? null;
  if (middle === null) return none('No time hack was taken: times are the tablet’s own.');
  return measured(figureFromU(middle.offsetS, middle.standardUncertaintyS), {
    unit: 's, tablet less master',
    of: `at mid-flight, from ${clocks.hacks.length === 1 ? '1 hack' : `${clocks.hacks.length} hacks`}`,
  });
}

/** The pair that differs most by its own doubt. */
function widestPair({ fuelBalance }: FlightResults) {
  return fuelBalance.pairs
    .flatMap(({ one, other, compared }) =>
      compared.kind === 'answer' ? [{ one, other, ...compared.value }] : [],
    )
    .toSorted((a, b) => inDoubts(b) - inDoubts(a))[0];
}

function inDoubts(pair: {
  readonly differenceKg: number;
  readonly standardUncertaintyKg: number;
}): number {
  return Math.abs(pair.differenceKg) / pair.standardUncertaintyKg;
}

function booksBalance({ results, units }: AnswerDesk): Headline {
  const widest = widestPair(results);
  const { verdict } = results.fuelBalance;
  if (widest === undefined) return none(`${balanceWords(verdict)}.`);
  const u = { scale: units.massScale };
  return measured(figureFromU(widest.differenceKg, widest.standardUncertaintyKg, u), {
    unit: `${units.massUnit} at most between two books`,
    of: balanceWords(verdict),
  });
}
