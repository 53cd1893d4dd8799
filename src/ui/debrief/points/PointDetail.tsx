import type { PointNumber, PointResult } from '../../../analysis/results.ts';
import { flowIn, flowUnitOf } from '../../../analysis/sheetUnits.ts';
import { methodWords, stateWords } from '../../../analysis/words/points.ts';
import { missingWords, noDragWords, provisionalWords } from '../../../analysis/words/reasons.ts';
import { figure } from '../../kit/number.ts';
import type { Desk } from '../context.ts';
import styles from './Points.module.css';
import { flowWords, reductionWords } from './pointWords.ts';

/** One run: its numbers side by side, and what they were made of. */
export function PointDetail({ desk, point }: { readonly desk: Desk; readonly point: PointResult }) {
  return (
    <section className={styles.detail} aria-label={`${point.point} run ${point.run}`}>
      <h2>
        {point.point} r{point.run} <span>{point.title}</span>
      </h2>
      <p>
        {point.setting}; {stateWords(point)}; n = {point.readingsUsed.length}
      </p>
      <Numbers desk={desk} result={point.result} />
      <p className={styles.quiet}>Decisions rest with the test team, not with this page.</p>
    </section>
  );
}

function Numbers({ desk, result }: { readonly desk: Desk; readonly result: PointNumber }) {
  const unit = flowUnitOf(desk.view.state.sheet);
  switch (result.kind) {
    case 'none':
      return <p className={styles.say}>No number: {missingWords(result.because)}.</p>;
    case 'baseline':
      return (
        <dl className={styles.facts}>
          <dt>Flow at card</dt>
          <dd>
            {flowWords(unit, result.flowAtCardKgPerS)} ±{' '}
            {figure(1.96 * flowIn(unit, result.standardUncertaintyKgPerS), 0)} {unit}
          </dd>
          <dt>Method</dt>
          <dd>{methodWords({ result })}</dd>
        </dl>
      );
    case 'valid':
    case 'indicative': {
      const { madeOf, drag } = result;
      const parts = madeOf.uncertaintyParts;
      return (
        <>
          <p className={styles.say}>
            {reductionWords(result.fuel)} % less fuel flow
            {result.kind === 'indicative' ? ', indicative: the run was not finished' : ''}
          </p>
          <dl className={styles.facts}>
            <dt>Drag</dt>
            <dd>{'because' in drag ? noDragWords(drag.because) : `${reductionWords(drag)} %`}</dd>
            <dt>Gross saving</dt>
            <dd>
              {flowWords(unit, result.grossKgPerS)} {unit}
            </dd>
            <dt>Suction unit</dt>
            <dd>
              {flowWords(unit, result.suctionUnitKgPerS)}{' '}
              {result.suctionUnitKgPerS === null ? '' : unit}
            </dd>
            <dt>Net saving</dt>
            <dd>
              {result.netKgPerS === null
                ? 'cannot be given'
                : `${flowWords(unit, result.netKgPerS)} ${unit}`}
              {result.netFraction === null ? '' : `, ${figure(100 * result.netFraction, 1)} %`}
            </dd>
            <dt>Method</dt>
            <dd>{methodWords({ result })}</dd>
            <dt>Made of</dt>
            <dd>
              {madeOf.entries.length} entries; baseline {madeOf.baselineRuns.join(', ')}:{' '}
              {flowWords(unit, madeOf.baselineAtThatWeightKgPerS)} {unit} at the same weight; flow
              at card {flowWords(unit, madeOf.flowAtCardKgPerS)} {unit}
            </dd>
            {madeOf.borrowedFrom === null ? null : (
              <>
                <dt>Borrowed</dt>
                <dd>{madeOf.borrowedFrom}</dd>
              </>
            )}
            <dt>Doubt, 1 σ</dt>
            <dd>
              run {figure(100 * parts.run, 2)}, baseline {figure(100 * parts.baseline, 2)},
              calibration {figure(100 * parts.calibration, 2)}, weight{' '}
              {figure(100 * parts.weight, 2)} %
            </dd>
            {result.provisional.length === 0 ? null : (
              <>
                <dt>Provisional</dt>
                <dd>{result.provisional.map(provisionalWords).join('; ')}</dd>
              </>
            )}
          </dl>
        </>
      );
    }
  }
}
