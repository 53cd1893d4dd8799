import type { EpochMs } from '../../record/brand.ts';
import { figure } from '../kit/number.ts';
import { useFly } from './flyContext.ts';
import {
  acrossPercent,
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
}: {
  readonly live: LiveNow;
  readonly target: number | null;
}) {
  const { sheet, layout } = useFly();
  const { estimate, history } = live;
  const given = history.filter(
    (each): each is Given => each.kind === 'value' || each.kind === 'struck',
  );
  const scale = plotScale(given, target);
  const newestAt = given.at(-1)?.at ?? null;
  const now = estimate.kind === 'value' || estimate.kind === 'struck' ? estimate : null;
  return (
    <div
      className={layout.screenClass === 'tall' ? `${styles.plot} ${styles.narrow}` : styles.plot}
      aria-hidden="true"
    >
      <div className={styles.inner}>
        <span className={styles.zero} style={{ left: at(scale, 0) }} />
        {scale.ticks.map((tick) => (
          <span key={tick} className={styles.tick} style={{ left: at(scale, tick) }} />
        ))}
        {newestAt === null ? null : (
          <svg className={styles.history} viewBox="0 0 100 100" preserveAspectRatio="none">
            {stretches(history, 2000 * (sheet?.limits.readingEveryS ?? 300)).map((part) => (
              <Stretch key={part[0]?.glance ?? 0} part={part} scale={scale} newestAt={newestAt} />
            ))}
          </svg>
        )}
        {now === null ? null : <Bar now={now} scale={scale} />}
        {target === null ? null : (
          <span className={styles.target} style={{ left: at(scale, target) }} />
        )}
        <span className={styles.newest}>now</span>
        <span className={styles.oldest}>{'\u2212'}30 min</span>
      </div>
      <div className={styles.labels}>
        {scale.ticks
          .filter((tick) => target === null || isClear(tick, target, layout.textSize))
          .map((tick) => (
            <span
              key={tick}
              className={tick === scale.ticks.at(-1) ? styles.lastLabel : undefined}
              style={{ left: at(scale, tick) }}
            >
              {figure(tick * 100, 0)}
            </span>
          ))}
        {target === null ? null : (
          <span className={styles.targetLabel} style={{ left: at(scale, target) }}>
            <b>{figure(target * 100, 0)}</b> <i>target</i>
          </span>
        )}
      </div>
    </div>
  );
}

/** Whether a figure of the axis stands clear of the target's figure and of the word after it. */
function isClear(tick: number, target: number, textSize: number): boolean {
  return tick < target ? target - tick > 0.035 : tick - target > 0.105 * textSize;
}

function at(scale: PlotScale, fraction: number): string {
  return `${acrossPercent(scale, fraction)}%`;
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
  const down = (each: Given): number => Math.min(100, ((newestAt - each.at) / TREND_MS) * 100);
  const point = (each: Given, fraction: number): string =>
    `${acrossPercent(scale, fraction).toFixed(2)},${down(each).toFixed(2)}`;
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
