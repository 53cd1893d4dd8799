import type { LiveEstimate } from '../../analysis/results.ts';
import { gateWords } from '../../analysis/words/gates.ts';
import {
  missingNextWords,
  missingWords,
  noteWords,
  provisionalWords,
} from '../../analysis/words/reasons.ts';
import type { EpochMs } from '../../record/brand.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { decimalsFor, figure } from '../kit/number.ts';
import { ago, useSecond } from '../kit/time.ts';
import { useFly } from './flyContext.ts';
import { LivePlot } from './LivePlot.tsx';
import { isStale, useLive, type LiveNow } from './useLive.ts';
import { flowWords, laminarWords, netWords } from './liveFigures.ts';
import styles from './Live.module.css';

/** How much fuel flow comes off now, how sure that is, how old, and which gate strikes it. A record, not an instrument. */
export function Live() {
  const { view, sheet, clock, layout, sceneAt } = useFly();
  const now = useSecond(clock);
  const live = useLive(view, sceneAt(now).nextPoint);
  const small = layout.places.wing === null;
  return (
    <div className={`${styles.live} ${styles[layout.screenClass]}`} data-live={live.estimate.kind}>
      <p className={styles.title}>
        <b>Fuel-flow</b> <b>reduction</b>
      </p>
      <Age estimate={live.estimate} now={now} sheet={sheet} small={small} />
      <Figure estimate={live.estimate} sheet={sheet} />
      <Gates
        estimate={live.estimate}
        small={small}
        age={layout.screenClass === 'tall' ? ageWords(live.estimate, now, sheet) : null}
      />
      {small ? null : <LivePlot live={live} target={sheet?.targetReductionFraction ?? null} />}
      {small ? null : <Beside live={live} />}
    </div>
  );
}

function Age({
  estimate,
  now,
  sheet,
  small,
}: {
  readonly estimate: LiveEstimate;
  readonly now: EpochMs;
  readonly sheet: FlightSheet | null;
  readonly small: boolean;
}) {
  const words = estimate.at === null ? '' : ago(now - estimate.at);
  const stale = estimate.at !== null && isStale(estimate.at, now, sheet?.limits.readingEveryS ?? 0);
  return (
    <p className={styles.age}>
      {stale ? (
        <b>STALE{small ? '' : `, ${words}`}</b>
      ) : (
        `${small || words === '' ? '' : 'read '}${words}`
      )}
    </p>
  );
}

/** Age in the line of the gate, where the screen has no line of its own for it. */
function ageWords(estimate: LiveEstimate, now: EpochMs, sheet: FlightSheet | null): string | null {
  if (estimate.at === null) {
    return null;
  }
  return isStale(estimate.at, now, sheet?.limits.readingEveryS ?? 0)
    ? 'STALE'
    : ago(now - estimate.at);
}

function Figure({
  estimate,
  sheet,
}: {
  readonly estimate: LiveEstimate;
  readonly sheet: FlightSheet | null;
}) {
  switch (estimate.kind) {
    case 'notYet':
      return (
        <output className={styles.reason} aria-label="No figure yet">
          <b>{capital(missingWords(estimate.because))}</b>
          <span>{missingNextWords(estimate.because)}</span>
        </output>
      );
    case 'baselineReading':
      return (
        <output className={styles.reason} aria-label="Baseline reading">
          <b>Baseline {flowWords(estimate.flowAtCardKgPerS, sheet)}</b>
          <span>Suction off, reading {estimate.readingsInRun}</span>
        </output>
      );
    case 'value':
    case 'struck': {
      const percent = estimate.fuel.fraction * 100;
      const half = ((estimate.fuel.interval95.high - estimate.fuel.interval95.low) / 2) * 100;
      const decimals = Math.min(1, decimalsFor(half));
      return (
        <output
          className={
            estimate.kind === 'struck' ? `${styles.figure} ${styles.struck}` : styles.figure
          }
          aria-label="Fuel-flow reduction"
        >
          <b>{figure(percent, decimals)}</b>
          <span className={styles.percent}>%</span>
          <span className={styles.half}>±&#8288;{figure(half, decimals)}</span>
        </output>
      );
    }
  }
}

function Gates({
  estimate,
  small,
  age,
}: {
  readonly estimate: LiveEstimate;
  readonly small: boolean;
  readonly age: string | null;
}) {
  if (estimate.kind === 'notYet') {
    return <p className={styles.gate}>{age}</p>;
  }
  const [first, ...rest] = estimate.broken;
  if (first !== undefined) {
    return (
      <p className={styles.gate} data-gate={estimate.broken.join(' ')}>
        <b>Struck</b>
        <span>
          {capital(gateWords(first))}
          {rest.length > 0 ? ` +${rest.length}` : ''}
          {age === null ? '' : `, ${age}`}
        </span>
      </p>
    );
  }
  return (
    <p className={styles.gate} data-gate="">
      <b>Holds</b>
      <span>{age ?? holdsWords(estimate, small)}</span>
    </p>
  );
}

/** A line of its own opens with a capital. */
function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function holdsWords(estimate: Exclude<LiveEstimate, { kind: 'notYet' }>, small: boolean): string {
  if (estimate.kind === 'baselineReading') {
    return small ? '' : 'in baseline';
  }
  const passed = estimate.passed.length;
  return small ? `${passed}/${passed}` : `all ${passed} gates`;
}

/** Net, laminar share, the card and what it still wants; "Provisional record" always stands by the figure. */
function Beside({ live }: { readonly live: LiveNow }) {
  const { estimate, card } = live;
  const doubts =
    estimate.kind === 'notYet'
      ? []
      : [...estimate.provisional.map(provisionalWords), ...estimate.notes.map(noteWords)];
  return (
    <div className={styles.beside}>
      <p className={styles.provisional} style={{ marginInlineStart: pastTheBar(estimate) }}>
        Provisional record{doubts.length > 0 ? `: ${doubts[0]}` : ''}
      </p>
      <dl>
        <dt>Net</dt>
        <dd>{netWords(estimate)}</dd>
        <dt>Laminar</dt>
        <dd>{laminarWords(live.laminar)}</dd>
        <dt>{card?.point ?? 'Card'}</dt>
        <dd data-card={card?.point}>
          {card === null ? 'none' : `${card.usableReadings} of ${card.minimumReadings} readings`}
        </dd>
      </dl>
    </div>
  );
}

/** A figure near zero has its bar where these words begin: they then begin after it. */
function pastTheBar(estimate: LiveEstimate): string | undefined {
  if (estimate.kind !== 'value' && estimate.kind !== 'struck') {
    return undefined;
  }
  const { low, high } = estimate.fuel.interval95;
  if (high > 0.12) {
    return undefined;
  }
  // The axis is 90 mm for 40 %, or for 50 % from one step below zero; a longer axis brings the bar nearer to its start.
  const barEndMm = low < 0 ? (Math.max(high, 0) + 0.1) * 180 : high * 225;
  return `calc(${(barEndMm + 2.5).toFixed(1)} * var(--mm))`;
}
