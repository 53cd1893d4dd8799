import { FUEL_SOURCES, type FuelBalance } from '../../analysis/fuel/balanceResults.ts';
import type { FlowBesideCounters } from '../../analysis/fuel/counterResults.ts';
import {
  balanceWords,
  fuelGateWords,
  fuelSourceWords,
  noFlowsWords,
  noFuelWords,
  oddWords,
  whyGaugesWords,
} from '../../analysis/words/fuel.ts';
import { headed, item, table, wrapped } from './layout.ts';
import type { Paper } from './paper.ts';

/** Q10: do the books balance, and which instrument is the odd one out. */
export function booksSection(paper: Paper): readonly string[] {
  const { fuelBalance, flowBesideCounters } = paper.results;
  return headed('Fuel books', [
    ...usedLines(paper, fuelBalance),
    ...wrapped(`In pairs: ${balanceWords(fuelBalance.verdict)}.`),
    ...fuelBalance.pairs.flatMap((pair) => pairLines(paper, pair)),
    ...counterLines(paper, flowBesideCounters),
  ]);
}

function usedLines(paper: Paper, { used }: FuelBalance): readonly string[] {
  const rows = FUEL_SOURCES.map((source) => {
    const answer = used[source];
    if (answer.kind === 'noAnswer') {
      return { cells: [fuelSourceWords(source), 'none', noFuelWords(answer.because)] };
    }
    const { kg, standardUncertaintyKg, from, to } = answer.value;
    const { entries, broken } = answer.how;
    return {
      cells: [
        fuelSourceWords(source),
        `${paper.mass(kg)} ± ${paper.mass(2 * standardUncertaintyKg)}`,
        `${paper.clock(from, entries[0])} to ${paper.clock(to, entries[0])} ${paper.cite(entries.slice(0, 1))}${entries.length > 1 ? ` to ${paper.cite(entries.slice(-1))}` : ''}`,
        broken.map(fuelGateWords).join(', '),
      ],
    };
  });
  return table(
    [
      { head: 'Fuel gone by', side: 'left' },
      { head: `${paper.massUnit} ± 2 u`, side: 'right' },
      { head: 'Over', side: 'left' },
      { head: '', side: 'left' },
    ],
    rows,
  );
}

function pairLines(
  paper: Paper,
  { one, other, compared }: FuelBalance['pairs'][number],
): readonly string[] {
  const names = `${fuelSourceWords(one)} less ${fuelSourceWords(other)}`;
  // A source that is missing has said so in the table above.
  if (compared.kind === 'noAnswer') {
    return compared.because === 'sourceMissing'
      ? []
      : item(`${names}: ${noFuelWords(compared.because)}`);
  }
  const { differenceKg, standardUncertaintyKg, agrees } = compared.value;
  return item(
    `${names}: ${paper.massChange(differenceKg)} ± ${paper.mass(2 * standardUncertaintyKg)} ${paper.massUnit}, ` +
      `${agrees ? 'agree' : 'differ'}`,
  );
}

/** The cross-check of each gauge by the slope of its counter, shortest where nothing is wrong. */
function counterLines(
  paper: Paper,
  { runs, meanDifferenceKgPerS, engines, oddRuns }: FlowBesideCounters,
): readonly string[] {
  const { flowUnit } = paper;
  const told = runs.filter(({ flows }) => flows.kind === 'answer').length;
  const whys = [
    ...new Set(
      runs.flatMap(({ flows }) =>
        flows.kind === 'answer' ? [whyGaugesWords(flows.value.because)] : [],
      ),
    ),
  ];
  const untold = runs.flatMap(({ point, run, flows }) =>
    flows.kind === 'noAnswer' ? [`${point} r${run} ${noFlowsWords(flows.because)}`] : [],
  );
  return [
    ...(meanDifferenceKgPerS === null
      ? ['Gauges beside counters: no run has both.']
      : wrapped(
          `Gauges less the slope of the counters: ${paper.flowChange(meanDifferenceKgPerS)} ${flowUnit} in the mean of ${told} runs. ` +
            `Results stand on the gauges: ${whys.join('; ')}.${untold.length === 0 ? '' : ` Not told: ${untold.join('; ')}.`}`,
        )),
    ...engines.flatMap((engine) => {
      const { odd, toldBy } = engine;
      if (odd === null) return [];
      return item(
        `engine ${engine.engine}: ${engine.gauge} less ${engine.counter} is ${paper.flowChange(engine.differenceKgPerS)} ± ` +
          `${paper.flow(2 * engine.standardUncertaintyKgPerS)} ${flowUnit} over ${engine.runs} runs; ${oddWords({ odd, toldBy })}`,
      );
    }),
    ...oddRuns.flatMap((run) =>
      item(
        `${run.point} r${run.run}, engine ${run.engine}: gauge and counter part by ${paper.flowChange(run.jumpKgPerS)} ${flowUnit}; ` +
          `${oddWords(run)} ${paper.cite(run.entries.slice(0, 6))}`,
      ),
    ),
  ];
}
