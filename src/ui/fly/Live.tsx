import type { LiveEstimate } from '../../analysis/results.ts';
import type { EpochMs } from '../../record/brand.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { decimalsFor, figure } from '../kit/number.ts';
import { ago, running, useSecond } from '../kit/time.ts';
import { useFly } from './flyContext.ts';
import { LivePlot } from './LivePlot.tsx';
import { GATE_WORDS, MISSING_WORDS, NOTE_WORDS, PROVISIONAL_WORDS } from './liveWords.ts';
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
      <Age estimate={live.estimate} now={now} sheet={sheet} />
      <Figure estimate={live.estimate} sheet={sheet} />
      <Gates estimate={live.estimate} now={small ? now : null} />
      {small ? null : <LivePlot live={live} target={sheet?.targetReductionFraction ?? null} />}
      {small ? null : <Beside live={live} />}
    </div>
  );
}

function Age({
  estimate,
  now,
  sheet,
}: {
  readonly estimate: LiveEstimate;
  readonly now: EpochMs;
  readonly sheet: FlightSheet | null;
}) {
  if (estimate.at === null) {
    return <p className={styles.age} />;
  }
  const age = ago(now - estimate.at);
  return (
    <p className={styles.age}>
      {isStale(estimate.at, now, sheet?.limits.readingEveryS ?? 0) ? (
        <b>STALE, {age}</b>
      ) : (
        `read ${age}`
      )}
    </p>
  );
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
          <b>{MISSING_WORDS[estimate.because][0]}</b>
          <span>{MISSING_WORDS[estimate.because][1]}</span>
        </output>
      );
    case 'baselineReading':
      return (
        <output className={styles.reason} aria-label="Baseline reading">
          <b>Baseline {flowWords(estimate.flowAtCardKgPerS, sheet)}</b>
          <span>Suction off, reading {estimate.readingsInRun} of the run</span>
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
  now,
}: {
  readonly estimate: LiveEstimate;
  readonly now: EpochMs | null;
}) {
  const age = now === null || estimate.at === null ? null : running(now - estimate.at);
  if (estimate.kind === 'notYet') {
    return <p className={styles.gate}>{age}</p>;
  }
  const [first, ...rest] = estimate.broken;
  if (first !== undefined) {
    return (
      <p className={styles.gate} data-gate={estimate.broken.join(' ')}>
        <b>Struck</b>
        <span>
          {GATE_WORDS[first]}
          {rest.length > 0 ? ` +${rest.length}` : ''} {age}
        </span>
      </p>
    );
  }
  return (
    <p className={styles.gate} data-gate="">
      <b>Holds</b>
      <span>
        {age ??
          (estimate.kind === 'baselineReading'
            ? 'for the baseline'
            : `${estimate.passed.length} of ${estimate.passed.length} gates`)}
      </span>
    </p>
  );
}

/** Net, laminar share, the card and what it still wants; "Provisional record" always stands by the figure. */
function Beside({ live }: { readonly live: LiveNow }) {
  const { estimate, card } = live;
  const doubts =
    estimate.kind === 'notYet'
      ? []
      : [
          ...estimate.provisional.map((each) => PROVISIONAL_WORDS[each]),
          ...estimate.notes.map((each) => NOTE_WORDS[each]),
        ];
  return (
    <div className={styles.beside}>
      <p className={styles.provisional}>
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
