import { findingsByPanel, NOT_YET_INSPECTED } from '../../../../analysis/encounters/surface.ts';
import type { ChronicPanel } from '../../../../analysis/encounters/chronicPanels.ts';
import { noRankWords } from '../../../../analysis/words/labour.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import { figure } from '../../../kit/number.ts';
import { AnswerPage } from '../AnswerPage.tsx';
import { percent, type AnswerDesk } from '../answerDesk.ts';
import { headlineOf } from '../headlines.ts';
import { RowPlot } from '../plot/RowPlot.tsx';
import { PanelsTable } from './PanelsTable.tsx';

/** Q7: panels that lose flow flight after flight, most area an hour of work first; and each panel of this flight. */
export function ChronicPage({ of }: { readonly of: AnswerDesk }) {
  const { chronic } = of.across;
  const counted = chronic.panels.filter(({ turbulentArea }) => turbulentArea.kind === 'answer');
  return (
    <AnswerPage
      of={of}
      headline={headlineOf(7, of)}
      plot={
        <RowPlot
          title="Area times turbulent rate"
          scale="m²; in order of area an hour of work"
          summary={`Turbulent area by panel over ${flightsWords(of.flightCount)}; the table below has each.`}
          rows={chronic.panels.map((panel) =>
            panel.turbulentArea.kind === 'answer'
              ? {
                  key: panel.panel,
                  name: panel.panel,
                  bar: { value: panel.turbulentArea.value.turbulentAreaM2 },
                  told: `n ${panel.turbulentArea.value.fewestFlights}`,
                }
              : {
                  key: panel.panel,
                  name: panel.panel,
                  words: noRankWords(panel.turbulentArea.because),
                },
          )}
        />
      }
      parts={
        <>
          <Ranked panels={chronic.panels} />
          <PanelsTable desk={of.desk} />
          <Probes of={of} />
        </>
      }
      method={[
        `Flights in which a probe was turbulent over flights that count, times its area, added up by panel, over ${flightsWords(of.flightCount)} of this aircraft on this device.`,
        'A flight counts with clear air, nominal suction, the cover seen to go, and the probe serviceable and called.',
        'The order is by area an hour of expected work.',
      ]}
      gates={[
        ...(of.flightCount < 2 ? ['One flight shows no habit: take in earlier flights.'] : []),
        ...(counted.length < chronic.panels.length
          ? [
              `No flight counts for ${chronic.panels
                .filter(({ turbulentArea }) => turbulentArea.kind === 'noAnswer')
                .map(({ panel }) => panel)
                .join(', ')}.`,
            ]
          : []),
      ]}
      steps={chronic.panels.map(({ panel, turbulentArea, labour }) => ({
        words: `${panel}: ${
          turbulentArea.kind === 'answer'
            ? `${figure(turbulentArea.value.turbulentAreaM2, 2)} m² over ${turbulentArea.value.probes} probes`
            : noRankWords(turbulentArea.because)
        }`,
        entries: [
          ...(turbulentArea.kind === 'answer' ? turbulentArea.how.entries : turbulentArea.entries),
          ...(labour.kind === 'answer' ? labour.how.entries : []),
        ],
      }))}
    />
  );
}

function flightsWords(count: number): string {
  return count === 1 ? '1 flight' : `${count} flights`;
}

function Ranked({ panels }: { readonly panels: readonly ChronicPanel[] }) {
  return (
    <GroundTable
      caption="Panels, first to smooth or clear first"
      rows={panels}
      keyOf={({ panel }) => panel}
      empty="The flight sheet has no panel."
      columns={[
        { key: 'panel', head: 'Panel', cell: ({ panel }) => <b>{panel}</b> },
        {
          key: 'area',
          head: 'Area × rate, m²',
          cell: ({ turbulentArea }) =>
            turbulentArea.kind === 'answer'
              ? figure(turbulentArea.value.turbulentAreaM2, 2)
              : noRankWords(turbulentArea.because),
        },
        {
          key: 'n',
          head: 'n at least',
          cell: ({ turbulentArea }) =>
            turbulentArea.kind === 'answer' ? turbulentArea.value.fewestFlights : '',
        },
        {
          key: 'hours',
          head: 'Hours',
          cell: ({ labour }) =>
            labour.kind === 'answer' ? figure(labour.value.labourH, 1) : 'none stated',
        },
        {
          key: 'rank',
          head: 'm² an hour',
          cell: ({ rank }) =>
            rank.kind === 'answer' ? figure(rank.value.areaM2PerH, 3) : noRankWords(rank.because),
        },
      ]}
    />
  );
}

/** Probes that were not laminar in every clear-air run of this flight. */
function Probes({ of }: { readonly of: AnswerDesk }) {
  const findings = findingsByPanel(of.desk.view);
  const rows = of.results.probeHistory.flatMap((probe) =>
    probe.inClearRuns.kind === 'answer' && probe.inClearRuns.value.notLaminarRuns > 0
      ? [{ ...probe, told: probe.inClearRuns.value }]
      : [],
  );
  return (
    <GroundTable
      caption="Probes not always laminar in clear-air runs of this flight"
      rows={rows}
      keyOf={({ probe }) => probe}
      empty="Every probe that was called was laminar in every one, or none was called."
      columns={[
        { key: 'probe', head: 'Probe', cell: ({ probe, panel }) => <b>{`${probe} (${panel})`}</b> },
        {
          key: 'runs',
          head: 'Not laminar in',
          cell: ({ told }) => `${told.notLaminarRuns} of ${told.clearRuns}`,
        },
        {
          key: 'settings',
          head: 'Laminar, by setting',
          cell: ({ told }) =>
            told.bySetting
              .filter(({ laminarFraction }) => laminarFraction < 1)
              .map(({ setting, laminarFraction }) => `${percent(laminarFraction)} % at ${setting}`)
              .join('; '),
        },
        {
          key: 'surface',
          head: 'Surface',
          cell: ({ coverHung, panel }) =>
            [
              ...(coverHung ? ['its cover hung'] : []),
              findings.get(panel)?.words ?? NOT_YET_INSPECTED,
            ].join('; '),
        },
      ]}
    />
  );
}
