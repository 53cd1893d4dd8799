import { useDeferredValue, useEffect, useMemo, useRef, useState } from 'react';
import type { PointResult } from '../../analysis/results.ts';
import { GroundButton } from '../kit/Ground.tsx';
import type { Desk } from './context.ts';
import styles from './Debrief.module.css';
import { EntryDetail } from './detail/EntryDetail.tsx';
import { FlightSummary } from './FlightSummary.tsx';
import { PointsTable } from './points/PointsTable.tsx';
import recorderStyles from './recorder/Recorder.module.css';
import { RecorderStrip } from './recorder/RecorderStrip.tsx';
import type { RecorderState } from './recorder/useRecorder.ts';
import { EntryTable } from './table/EntryTable.tsx';
import { EVERY_ROW, filtered, type Row } from './table/rows.ts';
import type { OpenItem } from './sign/openItems.ts';
import { stepFrom } from './timeline/markSteps.ts';
import type { TimelineModel } from './timeline/model.ts';
import { narrowed } from './timeline/narrowed.ts';
import { Timeline } from './timeline/Timeline.tsx';
import { useBoxSize } from './timeline/useLook.ts';
import type { TimeWindowControl } from './timeline/useTimeWindow.ts';

/** Below this the selected entry takes the place of the results instead of a column of its own. */
const WIDE_FROM_PX = 1100;

/** The axis with its lanes, the table under it, and the selected entry beside them. */
export function TimelineTab(props: {
  readonly desk: Desk;
  readonly model: TimelineModel;
  readonly control: TimeWindowControl;
  readonly recorder: RecorderState;
  readonly rows: readonly Row[];
  readonly points: readonly PointResult[];
  readonly struckCount: number;
  readonly onLeave: () => void;
  readonly onPoints: () => void;
  readonly openItems: readonly OpenItem[];
}) {
  const { desk } = props;
  const { view, selected } = desk;
  const box = useRef<HTMLDivElement>(null);
  const { widthPx, heightPx } = useBoxSize(box);
  const [opened, setOpened] = useState(0);
  const [isFolded, setFolded] = useState(false);
  const [filter, setFilter] = useState(EVERY_ROW);
  const calmFilter = useDeferredValue(filter);
  const listed = useMemo(() => filtered(props.rows, calmFilter), [props.rows, calmFilter]);
  const model = useMemo(
    () => narrowed(props.model, listed, selected),
    [props.model, listed, selected],
  );
  const standing = selected === null ? undefined : view.byId(selected);

  useEffect(() => {
    if (opened > 0) {
      document.getElementById('entry-detail')?.focus();
    }
  }, [opened]);

  const step = (way: 'earlier' | 'later'): void => {
    const next = stepFrom(model, selected, way);
    if (next !== undefined) {
      desk.select(next.entry);
    }
  };
  const points = (
    <>
      <PointsTable points={props.points} sheet={view.state.sheet} />
      <p className={styles.more}>
        <GroundButton act="open-points" onPress={props.onPoints}>
          How each was made
        </GroundButton>
      </p>
    </>
  );
  const detail =
    standing === undefined ? null : <EntryDetail desk={desk} standing={standing} onStep={step} />;
  const recorded = props.recorder.kind === 'opened' && !isFolded ? props.recorder : null;
  const isWide = widthPx === 0 || widthPx >= WIDE_FROM_PX;
  return (
    <div ref={box} className={styles.timelineTab} data-wide={isWide ? 'yes' : 'no'}>
      <div className={styles.axisPart}>
        <Timeline
          view={view}
          axis={desk.axis}
          model={model}
          markCount={props.model.marks.length}
          control={props.control}
          roomPx={0.6 * heightPx - 60 - (recorded === null ? 0 : 100)}
          selected={selected}
          onSelect={desk.select}
          onOpen={() => setOpened((times) => times + 1)}
          onLeave={props.onLeave}
          isFolded={isFolded}
          onFold={() => setFolded(!isFolded)}
        />
        {recorded === null ? null : (
          <div
            className={recorderStyles.under}
            role="group"
            aria-label="Recorder under the timeline"
            // More channels than fit are scrolled to, and the keyboard must get there.
            // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
            tabIndex={0}
          >
            <RecorderStrip opened={recorded} window={props.control.window} rowPx={32} />
          </div>
        )}
      </div>
      <div className={styles.tablePart}>
        <EntryTable
          rows={props.rows}
          listed={listed}
          filter={filter}
          onFilter={setFilter}
          onStep={step}
          axis={desk.axis.time}
          panels={(view.state.sheet?.panels ?? []).map(({ id }) => id)}
          struckCount={props.struckCount}
          selected={selected}
          onSelect={desk.select}
        />
      </div>
      {isWide ? (
        <>
          <div className={styles.pointsPart}>{points}</div>
          <div className={styles.detailPart}>
            {detail ?? (
              <FlightSummary
                desk={desk}
                points={props.points}
                openItems={props.openItems}
                onOpen={desk.select}
              />
            )}
          </div>
        </>
      ) : (
        <div className={styles.detailPart}>
          {detail}
          {points}
        </div>
      )}
    </div>
  );
}
