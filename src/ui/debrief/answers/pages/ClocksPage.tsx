import type { ClockFit } from '../../../../analysis/clocks.ts';
import { clockUseWords } from '../../../../analysis/words/points.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import { figure } from '../../../kit/number.ts';
import { hmsTenths } from '../../../kit/time.ts';
import { clockWords } from '../../timeWords.ts';
import { AnswerPage } from '../AnswerPage.tsx';
import type { AnswerDesk } from '../answerDesk.ts';
import { headlineOf } from '../headlines.ts';
import { figureFromU } from '../plot/figures.ts';
import { RowPlot, type PlotRow } from '../plot/RowPlot.tsx';

/** Q9: how each clock stood against the aircraft time base, with its doubt, and the hacks it was found from. */
export function ClocksPage({ of }: { readonly of: AnswerDesk }) {
  const { fits, hacks } = of.results.clocks;
  const master = hacks[0]?.masterClock ?? null;
  return (
    <AnswerPage
      of={of}
      headline={headlineOf(9, of)}
      plot={
        <RowPlot
          title={`Offset at mid-flight against ${master ?? 'no master'}`}
          scale="s, 68 and 95 %; ahead is positive"
          summary={`Offsets of ${fits.length} clocks at mid-flight; the table below has each.`}
          rows={fits.map(rowOf)}
        />
      }
      parts={<ClockTables of={of} />}
      method={[
        sayOf(fits, master),
        'Two hacks or more give offset and rate, one gives the offset alone; a rate is used only beyond twice its doubt.',
      ]}
      gates={fits.flatMap((fit) => [
        ...(fit.rate !== null && !fit.rate.resolved
          ? [`${nameOf(fit)}: rate within its doubt, so offset only.`]
          : []),
        ...fit.suspectedStepsAt.map(
          (at) => `${nameOf(fit)}: may have been set about ${clockWords(at)}Z.`,
        ),
      ])}
      steps={hacks.map(({ hack, by, shown }) => ({
        words: `Hack ${hack}: ${shown.length + 1} clocks read against ${master ?? 'the master'}`,
        entries: [by],
      }))}
    />
  );
}

function nameOf({ clock, rec }: ClockFit): string {
  return rec === null ? clock : `${clock} ${rec.slice(0, 4)}`;
}

function rowOf(fit: ClockFit): PlotRow {
  const name = nameOf(fit);
  const { middle } = fit;
  return middle === null
    ? { key: name, name, words: 'no time hack' }
    : {
        key: name,
        name,
        figure: figureFromU(middle.offsetS, middle.standardUncertaintyS),
        told: figure(middle.offsetS, 2),
      };
}

function ClockTables({ of }: { readonly of: AnswerDesk }) {
  const { fits, hacks } = of.results.clocks;
  return (
    <>
      <GroundTable
        caption="Clocks against the time base"
        rows={fits}
        keyOf={nameOf}
        empty="No time hack was taken: times are the tablet’s own."
        columns={[
          { key: 'clock', head: 'Clock', cell: (fit) => <b>{nameOf(fit)}</b> },
          {
            key: 'offsets',
            head: 'Offset at each hack, s',
            cell: ({ offsetsS }) =>
              offsetsS.length === 0
                ? 'no hack'
                : offsetsS.map((offset) => figure(offset, 1)).join(', '),
          },
          { key: 'middle', head: 'Mid-flight, s (1 σ)', cell: middleWords },
          { key: 'rate', head: 'Rate, s an hour (1 σ)', cell: rateWords },
          { key: 'use', head: 'Use', cell: clockUseWords },
        ]}
      />
      <GroundTable
        caption="Time hacks"
        rows={hacks}
        keyOf={({ by }) => by}
        empty="No time hack was taken."
        columns={[
          { key: 'hack', head: 'Hack', cell: ({ hack }) => <b>{hack}</b> },
          {
            key: 'master',
            head: 'Master, Z',
            cell: ({ masterClock, master: at }) => `${masterClock} ${hmsTenths(at)}`,
          },
          {
            key: 'shown',
            head: 'Shown, Z',
            cell: ({ shown }) =>
              shown.map((row) => `${row.clock} ${hmsTenths(row.shown)}`).join('; '),
          },
          { key: 'rec', head: 'Recorder', cell: ({ rec }) => rec.slice(0, 8) },
        ]}
      />
    </>
  );
}

function sayOf(fits: readonly ClockFit[], master: string | null): string {
  const tablet = fits.find(({ rec }) => rec !== null);
  return tablet === undefined || tablet.use === 'none' || master === null
    ? 'Times shown are the tablet’s own: no time hack ties them to the aircraft.'
    : `Times shown stand on the time base “${master}”. The record keeps the tablet’s own touch times.`;
}

function middleWords({ middle }: ClockFit): string {
  return middle === null
    ? 'not known'
    : `${figure(middle.offsetS, 2)} ± ${figure(middle.standardUncertaintyS, 2)}`;
}

function rateWords({ rate }: ClockFit): string {
  if (rate === null) return 'not known';
  const words = `${figure(rate.sPerH, 2)} ± ${figure(rate.standardUncertaintySPerH, 2)}`;
  return rate.resolved ? words : `${words}, within doubt`;
}
