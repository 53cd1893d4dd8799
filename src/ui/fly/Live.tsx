import type { LiveEstimate } from '../../analysis/results.ts';
import { gateWords } from '../../analysis/words/gates.ts';
import { missingNextWords, missingWords } from '../../analysis/words/reasons.ts';
import type { EpochMs } from '../../record/brand.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { decimalsFor, figure } from '../kit/number.ts';
import { ago, useSecond } from '../kit/time.ts';
import { useFly } from './flyContext.ts';
import { LiveBeside } from './LiveBeside.tsx';
import { LivePlot } from './LivePlot.tsx';
import { liveRoom } from './liveRoom.ts';
import { flowWords, netParts } from './liveFigures.ts';
import type { ScreenClass } from './layout.ts';
import { isStale, useLive } from './useLive.ts';
import styles from './Live.module.css';

/** "28.6" and "1.0": beside the net figure more letters want smaller ones. */
const USUAL_LETTERS = 7;

/** How much fuel flow comes off now, how sure that is, how old, and which gate strikes it. A record, not an instrument. */
export function Live() {
  const { view, sheet, clock, layout, sceneAt } = useFly();
  const now = useSecond(clock);
  const live = useLive(view, sceneAt(now).nextPoint);
  const { estimate } = live;
  const room = liveRoom(layout);
  return (
    <div className={`${styles.live} ${styles[layout.screenClass]}`} data-live={estimate.kind}>
      <p className={styles.title}>
        <b>
          Fuel-flow <i>reduction</i>
        </b>
        {room === null || room.wordsBelow ? null : (
          <span>{layout.screenClass === 'tall' ? 'provisional' : 'provisional record'}</span>
        )}
      </p>
      <Figure estimate={estimate} sheet={sheet} />
      {room === null || room.netBelow ? null : <Net estimate={estimate} />}
      <Gate
        estimate={estimate}
        age={ageWords(estimate, now, sheet)}
        room={GATE_ROOM[layout.screenClass]}
      />
      {room === null ? null : (
        <>
          <LiveBeside live={live} room={room} />
          <LivePlot
            live={live}
            target={sheet?.targetReductionFraction ?? null}
            widthMm={room.plotMm}
          />
        </>
      )}
    </div>
  );
}

/** How long ago the reading was that the figure is made of; from two reading intervals on it is of the past. */
function ageWords(
  estimate: LiveEstimate,
  now: EpochMs,
  sheet: FlightSheet | null,
): { readonly stale: boolean; readonly words: string } | null {
  return estimate.at === null
    ? null
    : {
        stale: isStale(estimate.at, now, sheet?.limits.readingEveryS ?? 0),
        words: ago(now - estimate.at),
      };
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
      const words = [figure(percent, decimals), figure(half, decimals)] as const;
      const looks = [
        styles.figure,
        estimate.kind === 'struck' ? styles.struck : '',
        words.join('').length > USUAL_LETTERS ? styles.long : '',
      ];
      return (
        <output className={looks.join(' ')} aria-label="Fuel-flow reduction">
          <b>{words[0]}</b>
          <span className={styles.percent}>%</span>
          <span className={styles.half}>±&#8288;{words[1]}</span>
        </output>
      );
    }
  }
}

/** What is left once the suction's own fuel is taken off, beside the gross figure. */
function Net({ estimate }: { readonly estimate: LiveEstimate }) {
  const net = netParts(estimate);
  switch (net.kind) {
    case 'notYet':
      return null;
    case 'notMetered':
      return (
        <p className={styles.net} data-net="notMetered">
          <span>Net</span>
          <span>not metered</span>
        </p>
      );
    case 'net':
      return (
        <p className={styles.net} data-net="net">
          <span>Net&nbsp;%</span>
          <b>{net.percent}</b>
          <span>±&#8288;{net.half}</span>
        </p>
      );
  }
}

/** From a line of its own down to a corner of the one line of an 8 inch screen. */
type GateRoom = 'full' | 'some' | 'little' | 'least';
const GATE_ROOM: Readonly<Record<ScreenClass, GateRoom>> = {
  thirteen: 'full',
  wide: 'full',
  tall: 'some',
  eight: 'little',
  eightWide: 'least',
};

function Gate({
  estimate,
  age,
  room,
}: {
  readonly estimate: LiveEstimate;
  readonly age: ReturnType<typeof ageWords>;
  readonly room: GateRoom;
}) {
  const said = estimate.kind === 'notYet' ? null : gateSaid(estimate, room);
  return (
    <p
      className={styles.gate}
      data-gate={estimate.kind === 'notYet' ? undefined : estimate.broken.join(' ')}
    >
      <span>
        {said === null ? null : (
          <>
            <b>{said.what}</b> {said.words}
          </>
        )}
      </span>
      {age === null ? null : (
        <span data-stale={age.stale}>
          {age.stale ? <b>STALE </b> : null}
          {agePart(age, room)}
        </span>
      )}
    </p>
  );
}

function agePart(
  { stale, words }: NonNullable<ReturnType<typeof ageWords>>,
  room: GateRoom,
): string {
  if (room === 'full' || room === 'some' || (room === 'little' && !stale)) {
    return words;
  }
  return stale && room === 'least' ? '' : words.replace(' ago', '');
}

/** A line of its own opens with a capital. */
function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function gateSaid(
  estimate: Exclude<LiveEstimate, { kind: 'notYet' }>,
  room: GateRoom,
): { readonly what: string; readonly words: string } {
  const [first, ...rest] = estimate.broken;
  const isSmall = room === 'little' || room === 'least';
  if (first !== undefined) {
    return {
      what: isSmall ? '' : 'Struck',
      words: `${gateWords(first)}${rest.length > 0 ? ` +${rest.length}` : ''}`,
    };
  }
  if (estimate.kind === 'baselineReading') {
    return { what: 'Holds', words: isSmall ? '' : 'in baseline' };
  }
  const passed = estimate.passed.length;
  if (room === 'least') {
    return { what: 'Holds', words: '' };
  }
  return { what: 'Holds', words: room === 'full' ? `all ${passed} gates` : `${passed}/${passed}` };
}
