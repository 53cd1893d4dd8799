import { FUEL_SOURCES } from '../../../../analysis/fuel/balanceResults.ts';
import {
  balanceWords,
  fuelGateWords,
  fuelSourceWords,
  noFlowsWords,
  noFuelWords,
  oddWords,
  whyGaugesWords,
} from '../../../../analysis/words/fuel.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import { AnswerPage } from '../AnswerPage.tsx';
import { timeOf, type AnswerDesk } from '../answerDesk.ts';
import { headlineOf } from '../headlines.ts';
import type { Step } from '../HowMade.tsx';
import { figureFromU } from '../plot/figures.ts';
import { RowPlot, type PlotRow } from '../plot/RowPlot.tsx';

/** Q10: do the books balance, and which instrument is the odd one out. */
export function BooksPage({ of }: { readonly of: AnswerDesk }) {
  const { fuelBalance, flowBesideCounters } = of.results;
  const { massUnit } = of.units;
  const whys = flowBesideCounters.runs.flatMap(({ flows }) =>
    flows.kind === 'answer' ? [whyGaugesWords(flows.value.because)] : [],
  );
  return (
    <AnswerPage
      of={of}
      headline={headlineOf(10, of)}
      plot={
        <RowPlot
          title="One book less another, over the time that both cover"
          scale={`${massUnit}, 68 and 95 %; zero is agreement`}
          summary={`Differences of the fuel books: ${balanceWords(fuelBalance.verdict)}.`}
          rows={pairRows(of)}
        />
      }
      parts={
        <>
          <Used of={of} />
          <Flows of={of} />
        </>
      }
      method={[
        `Four ways to say how much fuel is gone, in pairs over the time that both cover: ${balanceWords(fuelBalance.verdict)}.`,
        ...(whys.length === 0
          ? []
          : [`Results stand on the gauges: ${[...new Set(whys)].join('; ')}.`]),
        'For the books only: never for fuel planning or fuel state.',
      ]}
      gates={[
        ...FUEL_SOURCES.flatMap((source) => {
          const answer = fuelBalance.used[source];
          return answer.kind === 'answer'
            ? answer.how.broken.map((gate) => `${fuelSourceWords(source)}: ${fuelGateWords(gate)}.`)
            : [];
        }),
        ...flowBesideCounters.engines.flatMap(({ engine, odd, toldBy }) =>
          odd === null ? [] : [`Engine ${engine}: ${oddWords({ odd, toldBy })}.`],
        ),
        ...flowBesideCounters.oddRuns.map(
          (run) => `${run.point} r${run.run}, engine ${run.engine}: ${oddWords(run)}.`,
        ),
      ]}
      steps={stepsOf(of)}
    />
  );
}

function pairRows({ results, units }: AnswerDesk): readonly PlotRow[] {
  return results.fuelBalance.pairs.map(({ one, other, compared }): PlotRow => {
    const name = `${fuelSourceWords(one)} less ${fuelSourceWords(other)}`;
    if (compared.kind === 'noAnswer')
      return { key: name, name, words: noFuelWords(compared.because) };
    const { differenceKg, standardUncertaintyKg, agrees } = compared.value;
    return {
      key: name,
      name,
      figure: figureFromU(differenceKg, standardUncertaintyKg, { scale: units.massScale }),
      told: `${units.massChange(differenceKg)} ${agrees ? 'agree' : 'differ'}`,
    };
  });
}

function Used({ of }: { readonly of: AnswerDesk }) {
  const { mass, massUnit } = of.units;
  const rows = FUEL_SOURCES.map((source) => ({
    source,
    used: of.results.fuelBalance.used[source],
  }));
  return (
    <GroundTable
      caption="Fuel gone, four ways"
      rows={rows}
      keyOf={({ source }) => source}
      columns={[
        { key: 'source', head: 'By', cell: ({ source }) => <b>{fuelSourceWords(source)}</b> },
        {
          key: 'mass',
          head: `${massUnit} ± 2 u`,
          cell: ({ used }) =>
            used.kind === 'answer'
              ? `${mass(used.value.kg)} ± ${mass(2 * used.value.standardUncertaintyKg)}`
              : noFuelWords(used.because),
        },
        {
          key: 'over',
          head: 'Over',
          cell: ({ used }) =>
            used.kind === 'answer'
              ? `${timeOf(of.desk, used.value.from, used.how.entries[0])} to ${timeOf(of.desk, used.value.to, used.how.entries[0])}`
              : '',
        },
        {
          key: 'gates',
          head: 'Read with',
          cell: ({ used }) =>
            used.kind === 'answer' ? used.how.broken.map(fuelGateWords).join(', ') : '',
        },
      ]}
    />
  );
}

/** The cross-check of the gauges by the slope of their counters, run by run. */
function Flows({ of }: { readonly of: AnswerDesk }) {
  const { flow, flowChange, flowUnit } = of.units;
  return (
    <GroundTable
      caption="Gauges beside the slope of their counters"
      rows={of.results.flowBesideCounters.runs}
      keyOf={({ point, run }) => `${point} r${run}`}
      empty="No run was flown."
      columns={[
        { key: 'run', head: 'Run', cell: ({ point, run }) => <b>{`${point} r${run}`}</b> },
        {
          key: 'gauges',
          head: `Gauges, ${flowUnit}`,
          cell: ({ flows }) =>
            flows.kind === 'answer' ? flow(flows.value.gaugesKgPerS) : noFlowsWords(flows.because),
        },
        {
          key: 'counters',
          head: `Counters, ${flowUnit}`,
          cell: ({ flows }) => (flows.kind === 'answer' ? flow(flows.value.counterKgPerS) : ''),
        },
        {
          key: 'difference',
          head: 'Difference ± 2 u',
          cell: ({ flows }) =>
            flows.kind === 'answer'
              ? `${flowChange(flows.value.differenceKgPerS)} ± ${flow(2 * flows.value.differenceStandardUncertaintyKgPerS)}`
              : '',
        },
        {
          key: 'verdict',
          head: '',
          cell: ({ flows }) =>
            flows.kind === 'answer' ? flows.value.agrees ? 'agree' : <b>differ</b> : '',
        },
      ]}
    />
  );
}

function stepsOf(of: AnswerDesk): readonly Step[] {
  const { fuelBalance, flowBesideCounters } = of.results;
  const { mass, massUnit } = of.units;
  return [
    ...FUEL_SOURCES.map((source) => {
      const used = fuelBalance.used[source];
      return {
        words: `${fuelSourceWords(source)}: ${used.kind === 'answer' ? `${mass(used.value.kg)} ${massUnit}` : noFuelWords(used.because)}`,
        entries: used.kind === 'answer' ? used.how.entries : used.entries,
      };
    }),
    ...flowBesideCounters.runs.flatMap(({ point, run, flows }) =>
      flows.kind === 'answer'
        ? [{ words: `${point} r${run}: gauges beside counters`, entries: flows.how.entries }]
        : [],
    ),
  ];
}
