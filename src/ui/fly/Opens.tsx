import type { FlightState, Interval, IntervalKind } from '../../record/flightState.ts';
import { items } from '../../record/trail.ts';
import { running, useSecond } from '../kit/time.ts';
import { useFly } from './flyContext.ts';
import type { ScreenClass } from './layout.ts';
import styles from './Opens.module.css';

/** What closes soonest and hurts most when forgotten comes first. */
const ORDER: readonly string[] = [
  'moisture',
  'sampler',
  'turn',
  'testPoint',
  'turbulence',
  'suction',
  'recorder',
  'photoPanel',
];
const SHOWN: Readonly<Record<ScreenClass, number>> = {
  eight: 3,
  eightWide: 2,
  tall: 4,
  wide: 4,
  thirteen: 4,
};

/** Every open interval with its running time, also those of other pages. */
export function Opens() {
  const { state, clock, layout } = useFly();
  const now = useSecond(clock);
  const open = openOnes(state);
  const most = SHOWN[layout.screenClass];
  const shown = open.length > most ? open.slice(0, most - 1) : open;
  return (
    <ul className={styles.opens}>
      {shown.map((interval) => (
        <li key={`${interval.kind}-${interval.opened.by}`} className={styles.open}>
          <b>{openWords(interval)}</b> {running(now - interval.opened.at)}
        </li>
      ))}
      {shown.length < open.length ? (
        <li className={styles.more}>and {open.length - shown.length} more</li>
      ) : null}
      {open.length === 0 ? <li className={styles.none}>Nothing open</li> : null}
    </ul>
  );
}

/** Suction is an interval a wing; both together are one plate. */
function openOnes(state: FlightState): readonly Interval[] {
  const open = [...items(state.intervals)].filter((interval) => interval.closed === null);
  const suction = open.find((interval) => interval.kind === 'suction');
  return open
    .filter((interval) => interval.kind !== 'suction' || interval === suction)
    .toSorted((a, b) => rank(a) - rank(b));
}

function rank(interval: Interval): number {
  const place = ORDER.indexOf(interval.kind);
  return place === -1 ? ORDER.length : place;
}

const WORDS: Readonly<Partial<Record<IntervalKind, string>>> = {
  moisture: 'Cloud',
  sampler: 'Sample',
  turn: 'Turn',
  testPoint: 'Point',
  turbulence: 'Rough',
  suction: 'Suction',
  recorder: 'Rec',
  photoPanel: 'Photo',
};

function openWords(interval: Interval): string {
  const word = WORDS[interval.kind];
  if (word === undefined) {
    return interval.label;
  }
  return (interval.kind === 'moisture' || interval.kind === 'sampler') && interval.label !== ''
    ? interval.label
    : word;
}
