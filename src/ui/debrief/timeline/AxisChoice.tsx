import type { AxisChoice as Choice } from '../axisTime.ts';
import type { AxisControl } from '../useAxisTime.ts';
import styles from './Timeline.module.css';

/** How the axis, its cursor, the table and the reader say a time. What a flight cannot be counted from says why. */
export function AxisChoice({ axis }: { readonly axis: AxisControl }) {
  const { takeOff, hack } = axis.zeros;
  const choices: readonly { id: Choice; words: string; isThere: boolean }[] = [
    { id: 'utc', words: 'UTC', isThere: true },
    { id: 'dayOfYear', words: 'Day of year', isThere: true },
    {
      id: 'fromTakeOff',
      words: takeOff === null ? 'No take-off marked' : 'Take-off, min',
      isThere: takeOff !== null,
    },
    {
      id: 'sinceHack',
      words: hack === null ? 'No time hack taken' : `Hack ${hack.number}, s`,
      isThere: hack !== null,
    },
  ];
  return (
    <label className={styles.axisChoice}>
      <span className={styles.offScreen}>Times as</span>
      <select
        data-act="axis-time"
        value={axis.time.choice}
        onChange={(event) => {
          const chosen = choices.find(({ id }) => id === event.target.value);
          if (chosen !== undefined) {
            axis.choose(chosen.id);
          }
        }}
      >
        {choices.map(({ id, words, isThere }) => (
          <option key={id} value={id} disabled={!isThere}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
