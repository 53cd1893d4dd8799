import { useDeferredValue, useMemo, useRef, useState } from 'react';
import type { EntryId, EpochMs } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { axisTimeOf } from '../axisTime.ts';
import type { AxisControl } from '../useAxisTime.ts';
import { AxisChoice } from './AxisChoice.tsx';
import { Chart } from './Chart.tsx';
import { chartLayout, namesPxOf } from './laneLayout.ts';
import { markOf } from './marksInView.ts';
import { MarkList } from './MarkList.tsx';
import type { TimelineModel } from './model.ts';
import { Overview } from './Overview.tsx';
import { chartSummary } from './readerText.ts';
import styles from './Timeline.module.css';
import { timeAt, type TimeScale } from './timeScale.ts';
import { useBoxSize } from './useLook.ts';
import type { TimeWindowControl } from './useTimeWindow.ts';

function hoursWords(durationMs: number): string {
  const minutes = Math.round(durationMs / 60_000);
  return `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

/** Keys zoom about the selected mark while it is in view, else about the middle. */
function zoomCentre(model: TimelineModel, selected: EntryId | null, scale: TimeScale): EpochMs {
  const at = markOf(model, selected)?.at;
  return at !== undefined && at >= scale.window.from && at <= scale.window.to
    ? at
    : timeAt(scale, scale.widthPx / 2);
}

/** One axis, its lanes, the strip of the whole flight and the keys that move the window. */
export function Timeline(props: {
  readonly view: FlightView;
  readonly axis: AxisControl;
  readonly model: TimelineModel;
  /** Marks without any filter. */
  readonly markCount: number;
  readonly control: TimeWindowControl;
  readonly roomPx: number;
  readonly selected: EntryId | null;
  readonly onSelect: (entry: EntryId) => void;
  readonly onOpen: () => void;
  readonly onLeave: () => void;
  /** The table has the whole room: only the strip stays. */
  readonly isFolded: boolean;
  readonly onFold: () => void;
}) {
  const { view, model, control, roomPx } = props;
  const box = useRef<HTMLDivElement>(null);
  const { widthPx } = useBoxSize(box);
  const [isFocused, setFocused] = useState(false);
  const namesPx = namesPxOf(widthPx);
  const layout = useMemo(
    () => chartLayout(model.lanes, { widthPx, heightPx: roomPx, namesPx }),
    [model.lanes, widthPx, roomPx, namesPx],
  );
  const scale = useMemo(
    () => ({ window: control.window, widthPx: Math.max(1, widthPx - namesPx) }),
    [control.window, widthPx, namesPx],
  );
  const calmScale = useDeferredValue(scale);
  const { time, zeros } = props.axis;
  // What the eye would miss stands in the second row: take-off under UTC, UTC under all that counts from an event.
  const under = useMemo(() => {
    const second = time.zero === 0 ? 'fromTakeOff' : 'utc';
    const row = axisTimeOf(second, zeros);
    return row.choice === second ? row : null;
  }, [time, zeros]);
  const inView = control.window;
  const inViewWords = `${time.spoken(inView.from)} to ${time.spoken(inView.to)}`;
  const about = zoomCentre(model, props.selected, scale);
  const lengthMs = inView.to - inView.from;
  const beyond = useMemo(
    () =>
      model.marks.filter(({ at }) => at < model.flightSpan.from || at > model.flightSpan.to).length,
    [model],
  );

  return (
    <section className={styles.timeline} aria-label="Timeline">
      <div className={styles.strip}>
        <p className={styles.stripName}>
          <b>Whole flight</b>
          <span>
            {hoursWords(model.flightSpan.to - model.flightSpan.from)}
            {beyond === 0 ? '' : `, ${beyond} marks outside it`}
            {model.marks.length === props.markCount
              ? ''
              : `, ${model.marks.length} of ${props.markCount} marks`}
          </span>
        </p>
        <Overview model={model} control={control} axis={time} />
        <AxisChoice axis={props.axis} />
        <div className={styles.keys} role="group" aria-label="Part of the flight in view">
          <GroundButton act="pan-earlier" onPress={() => control.pan(-lengthMs / 2)}>
            Earlier
          </GroundButton>
          <GroundButton act="pan-later" onPress={() => control.pan(lengthMs / 2)}>
            Later
          </GroundButton>
          <GroundButton act="zoom-out" onPress={() => control.zoom(2, about)}>
            <span aria-hidden="true">−</span>
            <span className={styles.offScreen}>Zoom out</span>
          </GroundButton>
          <GroundButton act="zoom-in" onPress={() => control.zoom(0.5, about)}>
            <span aria-hidden="true">+</span>
            <span className={styles.offScreen}>Zoom in</span>
          </GroundButton>
          <GroundButton act="zoom-all" onPress={control.whole}>
            Whole
          </GroundButton>
          <GroundButton act="view-table" pressed={props.isFolded} onPress={props.onFold}>
            Table
          </GroundButton>
        </div>
      </div>
      <div ref={box} className={styles.lanes} hidden={props.isFolded}>
        <Chart
          model={model}
          layout={layout}
          scale={scale}
          control={control}
          axis={time}
          under={under}
          selected={props.selected}
          isFocused={isFocused}
          summary={chartSummary(model, view, inViewWords)}
          onSelect={props.onSelect}
        />
        <MarkList
          view={view}
          axis={time}
          model={model}
          layout={layout}
          scale={calmScale}
          selected={props.selected}
          onSelect={props.onSelect}
          onZoom={(factor) => control.zoom(factor, about)}
          onOpen={props.onOpen}
          onLeave={props.onLeave}
          onFocused={setFocused}
        />
      </div>
    </section>
  );
}
