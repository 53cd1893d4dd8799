import type { ClockFit } from '../../../analysis/clocks.ts';
import { clockUseWords } from '../../../analysis/words/points.ts';
import { GroundTable } from '../../kit/GroundTable.tsx';
import { figure } from '../../kit/number.ts';
import { hmsTenths } from '../../kit/time.ts';
import type { Desk } from '../context.ts';
import styles from '../panels/Panels.module.css';
import { clockWords } from '../timeWords.ts';

/** How each clock stood against the aircraft time base, with its doubt, and the hacks it was found from. */
export function ClocksTab({ desk }: { readonly desk: Desk }) {
  const { hacks } = desk.view.state;
  const { fits } = desk.base;
  const master = hacks[0]?.masterClock ?? null;
  return (
    <section className={styles.panels} aria-label="Clocks">
      <p className={styles.say}>{sayOf(fits, master)}</p>
      <GroundTable
        caption="Clocks against the time base"
        rows={fits}
        keyOf={({ clock, rec }) => `${clock} ${rec ?? ''}`}
        empty="No time hack was taken: times are the tablet's own."
        columns={[
          {
            key: 'clock',
            head: 'Clock',
            cell: ({ clock, rec }) => <b>{rec === null ? clock : `${clock} ${rec.slice(0, 8)}`}</b>,
          },
          { key: 'hacks', head: 'Hacks', cell: ({ offsetsS }) => offsetsS.length },
          {
            key: 'offsets',
            head: 'Offset at each hack, s',
            cell: ({ offsetsS }) => offsetsS.map((offset) => figure(offset, 1)).join(', '),
          },
          { key: 'middle', head: 'Offset mid-flight, s (1 σ)', cell: middleWords },
          { key: 'rate', head: 'Rate, s an hour (1 σ)', cell: rateWords },
          { key: 'use', head: 'Use', cell: clockUseWords },
          {
            key: 'steps',
            head: 'Steps suspected, Z',
            cell: ({ suspectedStepsAt }) =>
              suspectedStepsAt.length === 0
                ? 'none'
                : suspectedStepsAt.map((at) => clockWords(at)).join(', '),
          },
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
    </section>
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
  if (rate === null) {
    return 'not known';
  }
  const words = `${figure(rate.sPerH, 2)} ± ${figure(rate.standardUncertaintySPerH, 2)}`;
  return rate.resolved ? words : `${words}, within doubt`;
}
