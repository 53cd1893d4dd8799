import { useMemo, useState } from 'react';
import type { FlightView } from '../../../record/flight.ts';
import { noRankWords } from '../../../analysis/words/labour.ts';
import { GroundTable } from '../../kit/GroundTable.tsx';
import { figure } from '../../kit/number.ts';
import { RowPlot } from '../answers/plot/RowPlot.tsx';
import { XyPlot } from '../answers/plot/XyPlot.tsx';
import type { Desk } from '../context.ts';
import { comparable } from './beside.ts';
import { FlightPickers } from './FlightPickers.tsx';
import styles from './Flights.module.css';
import { readFlights, type FlightsRead } from './readFlights.ts';
import { trendsOf, type FlightTrend, type Trends } from './trends.ts';

const NOTHING_READ: FlightsRead = { flights: [], said: [] };

/** Trends over the flights of this aircraft, on this device and in files; each record stays by itself. */
export function FlightsTab({
  desk,
  others,
}: {
  readonly desk: Desk;
  readonly others: readonly FlightView[];
}) {
  const { view } = desk;
  const [read, setRead] = useState<FlightsRead>(NOTHING_READ);
  const beside = useMemo(
    () => comparable(view, others, read.flights),
    [view, others, read.flights],
  );
  const trends = useMemo(() => trendsOf(beside.flights), [beside.flights]);
  const mark = view.state.sheet?.aircraft.mark ?? 'no flight sheet';
  const count = beside.flights.length;
  return (
    <section className={styles.flights} aria-label="Several flights">
      <div className={styles.head}>
        <p className={styles.count} data-act="flights-count">
          <b>{count}</b> {count === 1 ? 'flight' : 'flights'} of {mark}
        </p>
        <FlightPickers onFiles={(files) => void readFlights(files).then(setRead)} />
      </div>
      <p className={styles.quiet}>
        Chosen files are only looked at: nothing is taken in and no record is mixed with another.
        {count < 2 ? ' One flight shows no trend: choose the files of others.' : ''}
      </p>
      <ul className={styles.said} role="status">
        {[...read.said, ...beside.leftOut].map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <Plots trends={trends} />
      <TrendTable flights={trends.flights} />
      <Panels trends={trends} />
    </section>
  );
}

type TrendName = 'reduction' | 'clearAir' | 'labour' | 'drift';

const TRENDS: readonly {
  readonly of: TrendName;
  readonly title: string;
  readonly scale: string;
}[] = [
  {
    of: 'reduction',
    title: 'Fuel flow less, at one card, setting and weight',
    scale: '%, 68 and 95 %',
  },
  { of: 'clearAir', title: 'Laminar share in clear air', scale: '% of area and time' },
  { of: 'labour', title: 'Labour', scale: 'hours an hour airborne' },
  {
    of: 'drift',
    title: 'Suction-off flow against the first flight',
    scale: '%, 68 and 95 %; hollow: a gate is named below',
  },
];

function Plots({ trends: { flights } }: { readonly trends: Trends }) {
  return (
    <div className={styles.plots}>
      {TRENDS.map(({ of, title, scale }) => (
        <XyPlot
          key={of}
          title={title}
          scale={scale}
          summary={`${title}: ${flights.map((one) => `${one.date} ${one[of].words}`).join('; ')}.`}
          names={flights.map(({ date }) => date)}
          points={flights.flatMap((one, x) => {
            const y = one[of].plotted;
            return y === null ? [] : [{ key: one.flight, x, y, name: '' }];
          })}
        />
      ))}
    </div>
  );
}

function TrendTable({ flights }: { readonly flights: readonly FlightTrend[] }) {
  return (
    <GroundTable
      caption="Flight by flight"
      rows={flights}
      keyOf={({ flight }) => flight}
      columns={[
        { key: 'date', head: 'Date', cell: ({ date }) => <b className={styles.date}>{date}</b> },
        { key: 'title', head: 'Flight', cell: ({ title }) => title },
        { key: 'from', head: 'From', cell: ({ from }) => from },
        { key: 'reduction', head: 'Fuel flow less, %', cell: ({ reduction }) => reduction.words },
        { key: 'clear', head: 'Laminar in clear air, %', cell: ({ clearAir }) => clearAir.words },
        { key: 'labour', head: 'Labour an hour', cell: ({ labour }) => labour.words },
        { key: 'drift', head: 'Suction-off flow, % ± 2 u', cell: ({ drift }) => drift.words },
      ]}
    />
  );
}

/** Which panels lose flow flight after flight, over all that are shown. */
function Panels({ trends }: { readonly trends: Trends }) {
  const { panels } = trends.across.chronic;
  return (
    <RowPlot
      title="Chronic panels: area times turbulent rate"
      scale="m²; in order of area an hour of work"
      summary={`Turbulent area by panel over ${trends.flights.length} flights.`}
      rows={panels.map(({ panel, turbulentArea, rank }) =>
        turbulentArea.kind === 'answer'
          ? {
              key: panel,
              name: panel,
              bar: { value: turbulentArea.value.turbulentAreaM2 },
              told: `${rank.kind === 'answer' ? `${figure(rank.value.areaM2PerH, 3)} m²/h` : noRankWords(rank.because)}, n ${turbulentArea.value.fewestFlights}`,
            }
          : { key: panel, name: panel, words: noRankWords(turbulentArea.because) },
      )}
    />
  );
}
