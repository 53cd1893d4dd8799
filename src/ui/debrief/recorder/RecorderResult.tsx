import type { RecordedPoint } from '../../../analysis/recorder/recorderResults.ts';
import type { PointResult } from '../../../analysis/results.ts';
import { flowIn, flowUnitOf, type FlowUnit } from '../../../analysis/sheetUnits.ts';
import { epochMs } from '../../../record/brand.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { GroundTable } from '../../kit/GroundTable.tsx';
import { figure } from '../../kit/number.ts';
import { whyReadOnly, type Desk } from '../context.ts';
import { reductionWords } from '../points/pointWords.ts';
import { clockWords } from '../timeWords.ts';
import styles from './Recorder.module.css';
import {
  CUT_WORDS,
  grouped,
  NO_NUMBER_WORDS,
  offsetWords,
  rowsWords,
  signedFigure,
  sizeOf,
  troubleWords,
} from './recorderWords.ts';
import { useRecordedPoints } from './useRecordedPoints.ts';
import type { OpenedRecorder } from './useRecorder.ts';

const MARK_WORDS = {
  engineStart: 'Engine start',
  engineStop: 'Engine stop',
  suctionFlow: 'Suction flow',
  liftOff: 'Lift-off',
  touchdown: 'Touchdown',
} as const;

/** The clock, what was odd in the file, and each run twice: from the scribe's readings and from the recorder. */
export function RecorderResult(props: {
  readonly desk: Desk;
  readonly opened: OpenedRecorder;
  readonly scribes: readonly PointResult[];
  readonly onMap: () => void;
}) {
  const { desk, opened } = props;
  const { read, offset } = opened;
  const unit = flowUnitOf(desk.view.state.sheet);
  const points = useRecordedPoints(desk.view, props.scribes, opened);
  const sentences = troubleWords(read.troubles, opened.head, opened.mapping);
  const agreeing = points.filter(({ difference }) => difference?.agrees === true).length;
  const compared = points.filter(({ difference }) => difference !== null).length;
  return (
    <section aria-label="Recorder beside the scribe" className={styles.part}>
      <p className={styles.say} role="status" data-act="recorder-clock">
        {read.even === null
          ? 'No row could be laid on a clock. Look at the time column again.'
          : offset === null
            ? 'Matching clock and flow…'
            : offsetWords(offset)}
      </p>
      {offset?.kind === 'offset' ? (
        <p>
          {offset.readings.agree} of {offset.readings.of} fuel readings agree with the recorded
          flow, and {offset.marks.filter(({ residualS }) => residualS !== null).length} of{' '}
          {offset.marks.length} marks lie on a recorded step. Recorded flow less gauges:{' '}
          {signedFigure(flowIn(unit, offset.flowBiasKgPerS), 0)} {unit}.
        </p>
      ) : null}
      {compared === 0 ? null : (
        <p className={styles.say}>
          {agreeing === compared
            ? `All ${compared} runs agree within both doubts.`
            : `${compared - agreeing} of ${compared} runs differ by more than both doubts.`}
        </p>
      )}
      {points.length === 0 ? null : (
        <div className={styles.scroll}>
          <GroundTable
            caption="Each run from the scribe and from the recorder, % fuel flow ± 95 %"
            rows={points}
            keyOf={({ point, run }) => `${point} ${run}`}
            columns={[
              {
                key: 'run',
                head: 'Run',
                cell: ({ point, run }) => (
                  <b>
                    {point} r{run}
                  </b>
                ),
              },
              { key: 'scribe', head: 'Scribe', cell: (row) => scribeWords(row, unit) },
              { key: 'recorder', head: 'Recorder', cell: (row) => recorderWords(row, unit) },
              { key: 'less', head: 'Recorder less scribe', cell: (row) => lessWords(row, unit) },
              {
                key: 'used',
                head: 'Seconds used',
                cell: ({ secondsUsed }) => grouped(secondsUsed),
              },
              { key: 'cut', head: 'Cut out', cell: cutWords },
            ]}
          />
        </div>
      )}
      {offset?.kind === 'offset' && offset.marks.length > 0 ? (
        <details className={styles.marks}>
          <summary data-act="recorder-marks">Marks that tie the clocks</summary>
          <GroundTable
            caption="Recorded step less mark, the offset taken out"
            rows={offset.marks}
            keyOf={({ kind, at }) => `${kind} ${at}`}
            columns={[
              { key: 'mark', head: 'Mark', cell: ({ kind }) => MARK_WORDS[kind] },
              { key: 'at', head: 'Marked, Z', cell: ({ at }) => clockWords(at) },
              {
                key: 'residual',
                head: 'Step later by, s',
                cell: ({ residualS }) =>
                  residualS === null ? 'no step near' : signedFigure(residualS),
              },
            ]}
          />
        </details>
      ) : null}
      <h2>The file</h2>
      <p>
        {opened.file.name}: {rowsWords(read.rows)}, {sizeOf(read.bytes)}, holding{' '}
        {sizeOf(read.memoryBytes)} while open.{' '}
        {Number.isFinite(read.fromMs)
          ? `${clockWords(epochMs(Math.round(read.fromMs)))} to ${clockWords(epochMs(Math.round(read.toMs)))} Z by its own clock.`
          : ''}
      </p>
      <p className={styles.hash}>SHA-256 {read.sha256}</p>
      {sentences.length === 0 ? <p>Nothing in it was left out.</p> : null}
      <ul className={styles.sentences}>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p className={styles.keys}>
        <GroundButton act="recorder-map" onPress={props.onMap}>
          Change the columns
        </GroundButton>
        <KeepReference desk={desk} opened={opened} />
      </p>
    </section>
  );
}

/** The record names the file by its hash; the file itself is never copied into it. */
function KeepReference({ desk, opened }: { readonly desk: Desk; readonly opened: OpenedRecorder }) {
  const { read, offset } = opened;
  const isKept = desk.view.standing.some(
    ({ standing, effective }) =>
      standing === 'stands' &&
      effective.kind === 'recorderReferenced' &&
      effective.body.sha256 === read.sha256,
  );
  const readOnly = whyReadOnly(desk.journal);
  if (isKept) return <span>The record names this file by its hash.</span>;
  if (readOnly !== null) return <span>{readOnly}</span>;
  const keep = (): void => {
    void desk.writer.write(
      (stamp) => ({
        stamp,
        kind: 'recorderReferenced',
        body: {
          file: opened.file.name.slice(0, 200),
          sha256: read.sha256,
          bytes: read.bytes,
          rows: read.rows,
          from: epochMs(Math.round(read.fromMs)),
          to: epochMs(Math.round(read.toMs)),
          channels: opened.mapping.channels.map(({ column }) =>
            (opened.head.headers[column] ?? '').slice(0, 200),
          ),
          ...(offset?.kind === 'offset' && {
            offsetS: Math.round(offset.offsetS * 100) / 100,
            offsetDoubtS: Math.round(offset.standardUncertaintyS * 100) / 100,
          }),
        },
      }),
      'The record names the recorder file.',
    );
  };
  return (
    <GroundButton
      act="recorder-keep"
      disabled={read.rows === 0 || offset === null || desk.writer.isSaving}
      onPress={keep}
    >
      Name this file in the record
    </GroundButton>
  );
}

function scribeWords({ scribe }: RecordedPoint, unit: FlowUnit): string {
  switch (scribe.kind) {
    case 'none':
      return 'no number';
    case 'baseline':
      return `${figure(flowIn(unit, scribe.flowAtCardKgPerS), 0)} ${unit}`;
    case 'valid':
    case 'indicative':
      return reductionWords(scribe.fuel);
  }
}

function recorderWords({ recorder }: RecordedPoint, unit: FlowUnit): string {
  switch (recorder.kind) {
    case 'none':
      return NO_NUMBER_WORDS[recorder.because];
    case 'baseline':
      return `${figure(flowIn(unit, recorder.flowAtCardKgPerS), 0)} ${unit}`;
    case 'reduction':
      return reductionWords(recorder.fuel);
  }
}

function lessWords({ difference, recorder }: RecordedPoint, unit: FlowUnit): string {
  if (difference === null) return '';
  const { value, standardUncertainty, agrees } = difference;
  const verdict = agrees ? 'agrees' : 'differs';
  return recorder.kind === 'baseline'
    ? `${signedFigure(flowIn(unit, value), 0)} ± ${figure(flowIn(unit, 2 * standardUncertainty), 0)} ${unit}, ${verdict}`
    : `${signedFigure(100 * value)} ± ${figure(200 * standardUncertainty, 1)}, ${verdict}`;
}

function cutWords({ secondsCut }: RecordedPoint): string {
  const parts = Object.entries(CUT_WORDS).flatMap(([gate, words]) => {
    const seconds = Object.entries(secondsCut).find(([name]) => name === gate)?.[1];
    return seconds === undefined ? [] : [`${words} ${seconds} s`];
  });
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}
