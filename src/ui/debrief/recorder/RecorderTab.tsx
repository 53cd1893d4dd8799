import { useState } from 'react';
import type { PointResult } from '../../../analysis/results.ts';
import { flowUnitOf } from '../../../analysis/sheetUnits.ts';
import type { RecorderHead } from '../../../file/recorder/recorderHead.ts';
import { FilePick } from '../../kit/FilePick.tsx';
import { GroundButton } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import type { TimeWindow } from '../timeline/timeScale.ts';
import { keepMapping, keptMapping } from './keptMappings.ts';
import { guessedMapping } from './mapping.ts';
import { MappingForm } from './MappingForm.tsx';
import styles from './Recorder.module.css';
import { RecorderResult } from './RecorderResult.tsx';
import { RecorderStrip } from './RecorderStrip.tsx';
import { grouped, REFUSED_WORDS, sizeOf } from './recorderWords.ts';
import type { Recorder } from './useRecorder.ts';

/** Recorded parameters beside the record: open, say what the columns are, and hold the runs against them. */
export function RecorderTab({
  desk,
  recorder,
  points,
  window,
}: {
  readonly desk: Desk;
  readonly recorder: Recorder;
  readonly points: readonly PointResult[];
  /** The part of the flight that the timeline shows. */
  readonly window: TimeWindow;
}) {
  const { state } = recorder;
  const [isMapping, setMapping] = useState(false);
  const { sheet, date } = desk.view.state;
  const units = { flow: flowUnitOf(sheet), height: sheet?.heightUnit ?? 'ft' } as const;
  const formOf = (head: RecorderHead) => {
    const kept = keptMapping(localStorage, head);
    return (
      <MappingForm
        key={head.headers.join('\n')}
        head={head}
        first={kept ?? guessedMapping(head, units)}
        isKept={kept !== null}
        date={date ?? ''}
        engineCount={sheet?.aircraft.engineCount ?? 1}
        units={units}
        onRead={(mapping, startMs) => {
          keepMapping(localStorage, head, mapping);
          setMapping(false);
          recorder.read(mapping, startMs);
        }}
      />
    );
  };
  return (
    <div className={styles.recorder}>
      <section aria-label="Open a recorder file" className={styles.part}>
        <h2>Recorded parameters</h2>
        <p>
          A CSV of the flight recorder, plain or gzip. It is read where it lies: nothing of it is
          copied into the record.
        </p>
        <FilePick
          act="recorder-open"
          label="Choose a recorder file"
          accept=".csv,.txt,.gz,text/csv,application/gzip"
          onFiles={([file]) => {
            if (file !== undefined) {
              setMapping(false);
              recorder.open(file);
            }
          }}
        />
        {state.kind === 'looking' ? <p role="status">Looking at {state.name}…</p> : null}
        {state.kind === 'refused' ? (
          <p role="status" className={styles.note}>
            {state.name}: {REFUSED_WORDS[state.because]}
          </p>
        ) : null}
        {state.kind === 'reading' ? (
          <div className={styles.reading}>
            <progress
              aria-label={`Reading ${state.file.name}`}
              max={state.file.size}
              value={state.bytes}
            />
            <span>
              {sizeOf(state.bytes)} of {sizeOf(state.file.size)}, {grouped(state.rows)} rows
            </span>
            <GroundButton act="recorder-cancel" onPress={recorder.cancel}>
              Cancel
            </GroundButton>
          </div>
        ) : null}
      </section>
      {state.kind === 'mapping' || (state.kind === 'opened' && isMapping)
        ? formOf(state.head)
        : null}
      {state.kind === 'opened' && !isMapping ? (
        <>
          <RecorderResult
            desk={desk}
            opened={state}
            scribes={points}
            onMap={() => setMapping(true)}
          />
          <section aria-label="Recorder trace" className={styles.part}>
            <h2>Trace, over the part of the flight that Timeline shows</h2>
            <RecorderStrip opened={state} window={window} />
          </section>
        </>
      ) : null}
    </div>
  );
}
