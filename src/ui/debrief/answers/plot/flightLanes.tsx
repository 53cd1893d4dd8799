import { heldWing } from '../../../../analysis/coverage/heldArea.ts';
import type { FlightResults } from '../../../../analysis/flightResults.ts';
import { epochMs, type EpochMs } from '../../../../record/brand.ts';
import type { PanelState } from '../../../../record/kinds.ts';
import type { FlightSheet, Wing } from '../../../../record/sheet.ts';
import type { Span } from '../../timeline/model.ts';
import type { TimeWindow } from '../../timeline/timeScale.ts';
import type { AnswerDesk } from '../answerDesk.ts';
import styles from './Plot.module.css';
import type { LanePen, TimeLane } from './TimePlot.tsx';

const BAR_PX = 22;
const CURVE_PX = 78;
const PANEL_PX = 20;
const MARGIN_MS = 6 * 60_000;
const CHARACTER_PX = 7.4;

const spansOf = ({ model }: AnswerDesk, lane: string): readonly Span[] =>
  model.spans.filter((span) => span.lane === lane);

/** The time around suction on, where flow can be laminar; the whole flight where it never was. */
export function suctionWindow(of: AnswerDesk): TimeWindow {
  const spans = spansOf(of, 'suction');
  const ends = spans.flatMap(({ from, to }) => [from, to ?? of.model.airborneSpan.to]);
  return ends.length === 0
    ? of.model.airborneSpan
    : {
        from: epochMs(Math.min(...ends) - MARGIN_MS),
        to: epochMs(Math.max(...ends) + MARGIN_MS),
      };
}

/** Moisture or suction: a bar an interval, with its words where they fit. */
export function barLane(of: AnswerDesk, lane: 'moisture' | 'suction', name: string): TimeLane {
  return {
    key: lane,
    name,
    heightPx: BAR_PX,
    draw: (pen) =>
      spansOf(of, lane).map((span) => <Bar key={`${span.from}`} span={span} pen={pen} />),
  };
}

function Bar({ span, pen }: { readonly span: Span; readonly pen: LanePen }) {
  const [left, right] = edges(span, pen);
  const isSolid = span.look === 'solid' && span.to !== null;
  if (right <= left) return null;
  const fits = span.words.length * CHARACTER_PX + 8 < right - left;
  return (
    <g>
      <rect
        className={isSolid ? styles.bar : styles.whole}
        x={left}
        y={3}
        width={Math.max(1, right - left - 1)}
        height={pen.heightPx - 6}
      />
      {fits ? (
        <text
          className={isSolid ? styles.onFill : undefined}
          x={left + 5}
          y={pen.heightPx / 2 + 4.5}
        >
          {span.words}
        </text>
      ) : null}
    </g>
  );
}

function edges(span: Span, { x, fromPx, toPx }: LanePen): readonly [number, number] {
  const left = Math.max(fromPx, x(span.from));
  return [left, span.to === null ? toPx : Math.min(toPx, x(span.to))];
}

/** Laminar share of one wing's area as called, from call to call; a gap where nothing was called. */
export function shareLane(of: AnswerDesk, sheet: FlightSheet, wing: Wing): TimeLane {
  const { view, base } = of.desk;
  const { held } = heldWing(view.state, sheet, wing);
  const steps = held.map(({ from, by, laminarM2, observedM2 }) => ({
    at: shownBy(of, from, by),
    share: observedM2 > 0 ? laminarM2 / observedM2 : null,
  }));
  const end = view.state.lastAt ?? base.fits[0]?.middle?.at ?? of.model.airborneSpan.to;
  const losses = of.results.losses.filter((loss) => loss.wing === wing);
  return {
    key: `share-${wing}`,
    name: `${wing === 'L' ? 'Left' : 'Right'} %`,
    heightPx: CURVE_PX,
    opens: true,
    draw: (pen) => (
      <>
        {[0, 50, 100].map((share) => (
          <g key={share}>
            <line
              className={share === 0 ? styles.zero : styles.grid}
              x1={pen.fromPx}
              x2={pen.toPx}
              y1={down(share / 100)}
              y2={down(share / 100)}
            />
            <text className={styles.told} x={pen.fromPx - 6} y={down(share / 100) + 4.5}>
              {share}
            </text>
          </g>
        ))}
        <path className={styles.curve} d={stepPath(steps, end, pen)} />
        {losses.map((loss) => (
          <LossMark
            key={`${loss.seen.by} ${loss.kind} ${loss.probes.join()}`}
            of={of}
            loss={loss}
            pen={pen}
          />
        ))}
      </>
    ),
  };
}

const down = (share: number): number => CURVE_PX - 10 - share * (CURVE_PX - 24);

function stepPath(
  steps: readonly { readonly at: EpochMs; readonly share: number | null }[],
  end: EpochMs,
  { x, fromPx, toPx }: LanePen,
): string {
  const inside = (at: EpochMs): number => Math.min(toPx, Math.max(fromPx, x(at)));
  return steps
    .map(({ at, share }, index) => {
      if (share === null) return '';
      const level = down(share).toFixed(1);
      const isJoined = (steps[index - 1]?.share ?? null) !== null;
      const until = steps[index + 1]?.at ?? end;
      return `${isJoined ? 'L' : 'M'}${inside(at).toFixed(1)} ${level}H${inside(until).toFixed(1)}`;
    })
    .join('');
}

/** A loss called stands as a filled mark at the top; flow that never came, hollow. */
function LossMark({
  of,
  loss,
  pen,
}: {
  readonly of: AnswerDesk;
  readonly loss: FlightResults['losses'][number];
  readonly pen: LanePen;
}) {
  const at = pen.x(shownBy(of, loss.seen.at, loss.seen.by));
  return at < pen.fromPx || at > pen.toPx ? null : (
    <path
      className={loss.kind === 'lost' ? styles.loss : styles.never}
      d={`M${at - 5} 3h10l-5 9z`}
    />
  );
}

function shownBy(
  of: AnswerDesk,
  at: EpochMs,
  by: Parameters<AnswerDesk['desk']['view']['byId']>[0],
): EpochMs {
  const entry = of.desk.view.byId(by)?.entry;
  return entry === undefined ? at : of.desk.base.shown(at, entry.rec);
}

/** What each panel was called, four states told apart by fill alone. */
export function panelLanes(of: AnswerDesk, sheet: FlightSheet, wing: Wing): readonly TimeLane[] {
  return sheet.panels
    .filter((panel) => panel.wing === wing)
    .toSorted((a, b) => a.number - b.number)
    .map(({ id }, index) => ({
      key: `panel-${id}`,
      name: id,
      heightPx: PANEL_PX,
      opens: index === 0,
      draw: (pen) => {
        const spans = spansOf(of, `panel:${id}`);
        return spans.length === 0 ? (
          <State state="notAssessed" box={[pen.fromPx, 2.5, pen.toPx - pen.fromPx, PANEL_PX - 5]} />
        ) : (
          spans.map((span) => {
            const [left, right] = edges(span, pen);
            return right <= left || span.look === 'outline' || span.look === 'solid' ? null : (
              <State
                key={`${span.from}`}
                state={span.look}
                box={[left, 2.5, Math.max(1, right - left - 1), PANEL_PX - 5]}
              />
            );
          })
        );
      },
    }));
}

/** More fill, more turbulent: an outline, its lower half, all of it; dashes where nobody called it. */
export function State({
  state,
  box: [x, y, width, height],
}: {
  readonly state: PanelState;
  readonly box: readonly [x: number, y: number, width: number, height: number];
}) {
  return (
    <>
      <rect className={styles[state]} x={x} y={y} width={width} height={height} />
      {state === 'intermittent' ? (
        <rect className={styles.half} x={x} y={y + height / 2} width={width} height={height / 2} />
      ) : null}
    </>
  );
}
