import type { CSSProperties } from 'react';
import type { EpochMs } from '../../record/brand.ts';
import { figure } from '../kit/number.ts';
import { useFly } from './flyContext.ts';
import { expectedRange } from './liveFigures.ts';
import {
  acrossPercent,
  clearTicks,
  plotScale,
  stretches,
  type Given,
  type PlotScale,
} from './livePlotScale.ts';
import type { LiveNow } from './useLive.ts';
import styles from './LivePlot.module.css';

const TREND_MS = 1_800_000;
/** Half width of the 68 % band over that of the 95 % one, of a normal distribution. */
const INNER_SHARE = 0.51;

/** One value axis: the interval now as a bar on top, its last 30 minutes below, like paper from a recorder. */
export function LivePlot({
  live,
  target,
  widthMm,
}: {
  readonly live: LiveNow;
  readonly target: number | null;
  readonly widthMm: number;
}) {
  const { sheet, layout } = useFly();
  const { estimate, history } = live;
  const given = history.filter(
    (each): each is Given => each.kind === 'value' || each.kind === 'struck',
  );
  const predicted = expectedRange(live.expected);
  const scale = plotScale(given, target, predicted);
  const newestAt = given.at(-1)?.at ?? null;
  const now = estimate.kind === 'value' || estimate.kind === 'struck' ? estimate : null;
  const shown = clearTicks(scale, target, widthMm / layout.textSize);
  return (
    <div className={styles.plot} style={widthOf(widthMm)} aria-hidden="true">
      <div className={styles.inner}>
        <span className={styles.zero} style={{ left: at(scale, 0) }} />
        {predicted === null ? null : <Predicted range={predicted} scale={scale} />}
        {scale.ticks.map((tick) => (
          <span key={tick} className={styles.tick} style={{ left: at(scale, tick) }} />
        ))}
        {newestAt === null ? null : (
          <div className={styles.history}>
            <svg viewBox="0 0 100 100" preserveAspectRatio="none">
              {stretches(history, 2000 * (sheet?.limits.readingEveryS ?? 300)).map((part) => (
                <Stretch key={part[0]?.glance ?? 0} part={part} scale={scale} newestAt={newestAt} />
              ))}
            </svg>
            {given.map((each) =>
              each.kind === 'struck' && each !== given.at(-1) ? (
                <span
                  key={each.glance}
                  className={styles.struck}
                  style={{ left: at(scale, each.fuel.fraction), top: `${down(each, newestAt)}%` }}
                />
              ) : null,
            )}
          </div>
        )}
        {target === null ? null : (
          <span className={styles.target} style={{ left: at(scale, target) }} />
        )}
        {now === null ? null : <Bar now={now} scale={scale} />}
      </div>
      <div className={styles.labels}>
        {shown.map((tick) => (
          <span key={tick} className={labelClass(scale, tick)} style={{ left: at(scale, tick) }}>
            {figure(tick * 100, 0)}
          </span>
        ))}
        {target === null ? null : (
          <b className={labelClass(scale, target)} style={{ left: at(scale, target) }}>
            {figure(target * 100, 0)}
          </b>
        )}
      </div>
    </div>
  );
}

function widthOf(widthMm: number): CSSProperties & Readonly<Record<'--w', number>> {
  return { '--w': widthMm };
}

/** The figures at the ends of the axis stand inside it. */
function labelClass({ low, high }: PlotScale, value: number): string | undefined {
  const share = (value - low) / (high - low);
  return share < 0.04 ? styles.first : share > 0.96 ? styles.last : undefined;
}

function at(scale: PlotScale, fraction: number): string {
  return `${acrossPercent(scale, fraction)}%`;
}

function down(each: Given, newestAt: EpochMs): number {
  return Math.min(100, ((newestAt - each.at) / TREND_MS) * 100);
}

/** The open box behind: what the laminar area predicts. Where the bar lies in it, fuel and flow agree. */
function Predicted({
  range,
  scale,
}: {
  readonly range: { readonly fraction: number; readonly half: number | null };
  readonly scale: PlotScale;
}) {
  const half = range.half ?? 0;
  const low = acrossPercent(scale, range.fraction - half);
  const high = acrossPercent(scale, range.fraction + half);
  return <span className={styles.predicted} style={{ left: `${low}%`, width: `${high - low}%` }} />;
}

function Bar({ now, scale }: { readonly now: Given; readonly scale: PlotScale }) {
  const low = acrossPercent(scale, now.fuel.interval95.low);
  const high = acrossPercent(scale, now.fuel.interval95.high);
  return (
    <>
      <span
        className={now.kind === 'struck' ? `${styles.bar} ${styles.hollow}` : styles.bar}
        style={{ left: `${low}%`, width: `${high - low}%` }}
      />
      <span className={styles.slit} style={{ left: at(scale, now.fuel.fraction) }} />
    </>
  );
}

function Stretch({
  part,
  scale,
  newestAt,
}: {
  readonly part: readonly Given[];
  readonly scale: PlotScale;
  readonly newestAt: EpochMs;
}) {
  const point = (each: Given, fraction: number): string =>
    `${acrossPercent(scale, fraction).toFixed(2)},${down(each, newestAt).toFixed(2)}`;
  const band = (share: number): string =>
    [
      ...part.map((each) =>
        point(each, each.fuel.fraction - share * (each.fuel.fraction - each.fuel.interval95.low)),
      ),
      ...part
        .toReversed()
        .map((each) =>
          point(
            each,
            each.fuel.fraction + share * (each.fuel.interval95.high - each.fuel.fraction),
          ),
        ),
    ].join(' ');
  return (
    <>
      <polygon className={styles.band95} points={band(1)} />
      <polygon className={styles.band68} points={band(INNER_SHARE)} />
      <polyline
        className={styles.line}
        points={part.map((each) => point(each, each.fuel.fraction)).join(' ')}
      />
    </>
  );
}
