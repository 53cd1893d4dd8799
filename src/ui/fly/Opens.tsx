import type { EpochMs } from '../../record/brand.ts';
import type { FlightState, Interval, IntervalKind } from '../../record/flightState.ts';
import { items } from '../../record/trail.ts';
import { running, useSecond } from '../kit/time.ts';
import { useFly } from './flyContext.ts';
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
/** Width of a letter, of a plate's edges with the gap after it, and of the words for the rest, in mm at text size 1. */
const LETTER_MM = 2.5;
const PLATE_MM = 4.3;
const REST_MM = 25;

/** Every open interval with its running time, also those of other pages. */
export function Opens() {
  const { state, clock, layout } = useFly();
  const now = useSecond(clock);
  const open = openOnes(state);
  const plates = open.map((interval) => ({
    id: interval.opened.by,
    kind: interval.kind,
    name: openWords(interval),
    time: timeWords(interval, open, now),
  }));
  const shown = fitting(plates, layout.places.opens.w / layout.textSize);
  return (
    <ul className={styles.opens}>
      {shown.map((plate) => (
        <li key={`${plate.kind}-${plate.id}`} className={styles.open}>
          <b>{plate.name}</b> {plate.time}
        </li>
      ))}
      {shown.length < open.length ? (
        <li className={styles.more}>and {open.length - shown.length} more</li>
      ) : null}
      {open.length === 0 ? <li className={styles.none}>Nothing open</li> : null}
    </ul>
  );
}

/** Recorder and photo panel run the whole flight: beside anything else their time gives way. */
function timeWords(interval: Interval, open: readonly Interval[], now: EpochMs): string {
  const background = (each: Interval): boolean =>
    each.kind === 'recorder' || each.kind === 'photoPanel';
  return background(interval) && !open.every(background) ? '' : running(now - interval.opened.at);
}

function fitting<Plate extends { readonly name: string; readonly time: string }>(
  plates: readonly Plate[],
  roomMm: number,
): readonly Plate[] {
  const width = (plate: Plate): number =>
    (plate.name.length + plate.time.length + (plate.time === '' ? 0 : 0.6)) * LETTER_MM + PLATE_MM;
  const wanted = plates.reduce((sum, plate) => sum + width(plate), 0);
  if (wanted <= roomMm) {
    return plates;
  }
  let left = roomMm - REST_MM;
  const shown: Plate[] = [];
  for (const plate of plates) {
    left -= width(plate);
    if (left < 0) {
      break;
    }
    shown.push(plate);
  }
  return shown;
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
