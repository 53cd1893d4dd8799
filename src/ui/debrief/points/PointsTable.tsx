import type { PointResult } from '../../../analysis/results.ts';
import { flowUnitOf } from '../../../analysis/sheetUnits.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { figure } from '../../kit/number.ts';
import styles from './Points.module.css';
import { figureOf, pointScaleOf, shareOf, ticksOf } from './pointScale.ts';
import { flowWords, inPlaceWords, reductionWords } from './pointWords.ts';
import { Whisker } from './Whisker.tsx';

const keyOf = ({ point, run }: PointResult): string => `${point} ${run}`;

/** Results by test point on one axis. With `onChoose` the rows open what each number was made of. */
export function PointsTable(props: {
  readonly points: readonly PointResult[];
  readonly sheet: FlightSheet | null;
  readonly chosen?: PointResult | null;
  readonly onChoose?: (point: PointResult) => void;
}) {
  const { points, sheet } = props;
  const targetPct =
    sheet?.targetReductionFraction === undefined ? null : 100 * sheet.targetReductionFraction;
  const scale = pointScaleOf(points, sheet?.targetReductionFraction);
  const chosen = props.chosen ?? null;
  return (
    <table
      className={props.onChoose === undefined ? styles.points : `${styles.points} ${styles.live}`}
    >
      <caption>
        Reduction by test point <span>% fuel flow, 68 and 95 %</span>
      </caption>
      <thead>
        <tr>
          <th scope="col" className={styles.name}>
            Point
          </th>
          <th scope="col" className={styles.setting}>
            Setting
          </th>
          <th scope="col">
            <div className={styles.axis}>
              {ticksOf(scale)
                .filter((value) => value % 20 === 0 || props.onChoose !== undefined)
                .map((value) => (
                  <span key={value} style={{ left: `${100 * shareOf(scale, value)}%` }}>
                    {figure(value, 0)}
                  </span>
                ))}
            </div>
          </th>
          <th scope="col" className={styles.value}>
            % ± 95 %
          </th>
        </tr>
      </thead>
      <tbody>
        {points.map((point) => (
          <tr
            key={keyOf(point)}
            className={
              chosen !== null && keyOf(chosen) === keyOf(point) ? styles.chosen : undefined
            }
            onClick={props.onChoose === undefined ? undefined : () => props.onChoose?.(point)}
          >
            <th scope="row" className={styles.name}>
              <PointName
                point={point}
                isChosen={chosen !== null && keyOf(chosen) === keyOf(point)}
                isLive={props.onChoose !== undefined}
              />
            </th>
            <td className={styles.setting}>
              <div>{point.setting}</div>
            </td>
            <td>
              <Whisker
                scale={scale}
                figure={figureOf(point)}
                targetPct={targetPct}
                isHollow={point.result.kind === 'indicative'}
                words={inPlaceWords(point)}
              />
            </td>
            <td className={styles.value} data-act={`result-${point.point}-${point.run}`}>
              <PointValue point={point} sheet={sheet} />
            </td>
          </tr>
        ))}
        {points.length === 0 ? (
          <tr>
            <td colSpan={4} className={styles.none}>
              No test point was started yet.
            </td>
          </tr>
        ) : null}
      </tbody>
    </table>
  );
}

function PointName(props: {
  readonly point: PointResult;
  readonly isChosen: boolean;
  readonly isLive: boolean;
}) {
  const { point, run } = props.point;
  const words = (
    <>
      {point} <span>r{run}</span>
    </>
  );
  return props.isLive ? (
    <button type="button" data-act={`point-${point}-${run}`} aria-pressed={props.isChosen}>
      {words}
    </button>
  ) : (
    words
  );
}

function PointValue({
  point,
  sheet,
}: {
  readonly point: PointResult;
  readonly sheet: FlightSheet | null;
}) {
  const { result } = point;
  const unit = flowUnitOf(sheet);
  switch (result.kind) {
    case 'none':
      return <span className={styles.quiet}>{point.state}</span>;
    case 'baseline':
      return (
        <span>
          {flowWords(unit, result.flowAtCardKgPerS)} {unit}
        </span>
      );
    case 'valid':
      return <b>{reductionWords(result.fuel)}</b>;
    case 'indicative':
      return (
        <>
          {reductionWords(result.fuel)} <span className={styles.quiet}>indicative</span>
        </>
      );
  }
}
