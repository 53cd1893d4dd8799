import type { FlightState, TimeHack } from '../../../record/flightState.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { Caution } from '../../kit/Caution.tsx';
import { clockText, driftWords, offsetMs, offsetWords, shownAt } from './hackTime.ts';
import styles from '../Brief.module.css';

/** Every clock of the flight sheet against the master, by the newest hack that read it. */
export function ClockTable({ state, sheet }: { state: FlightState; sheet: FlightSheet }) {
  const { hacks } = state;
  const last = hacks.at(-1);
  const clocks = sheet.clocks.some((clock) => clock.id === 'tablet')
    ? sheet.clocks
    : [
        ...sheet.clocks,
        { id: 'tablet', owner: 'scribe tablet', scale: 'unknown', resolutionS: 0.1 },
      ];
  return (
    <table className={styles.table}>
      <caption className={styles.reader}>Clocks against the master</caption>
      <thead>
        <tr>
          <th scope="col">Clock</th>
          <th scope="col">Showed</th>
          <th scope="col">Against master</th>
        </tr>
      </thead>
      <tbody>
        {clocks.map((clock) => {
          const hack = hacks.findLast((one) => offsetMs(one, clock.id) !== null);
          return (
            <tr key={clock.id}>
              <td>{clock.id === 'tablet' ? 'This tablet' : clock.owner || clock.id}</td>
              <td>{hack === undefined ? '' : shownText(hack, clock.id)}</td>
              <td>
                {hack === undefined ? (
                  clock.id === 'tablet' ? (
                    <Caution words="unknown" />
                  ) : (
                    'not read'
                  )
                ) : clock.id === last?.masterClock ? (
                  'master'
                ) : (
                  againstMaster(hacks, hack, clock)
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function shownText(hack: TimeHack, clock: string): string {
  const shown = shownAt(hack, clock);
  return shown === null ? '' : clockText(shown);
}

function againstMaster(
  hacks: readonly TimeHack[],
  hack: TimeHack,
  clock: { readonly id: string; readonly resolutionS: number },
): string {
  const doubtS = Math.max(hack.doubtS ?? 0, clock.resolutionS);
  const offset = offsetMs(hack, clock.id) ?? 0;
  const first = hacks.find((one) => offsetMs(one, clock.id) !== null);
  const drift =
    first === undefined || first === hack ? '' : driftWords(first, hack, clock.id, doubtS);
  return drift === '' ? offsetWords(offset, doubtS) : `${offsetWords(offset, doubtS)}, ${drift}`;
}
