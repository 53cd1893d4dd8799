import { useLayoutEffect, useMemo, useRef, type ReactNode } from 'react';
import type { EntryId } from '../../../record/brand.ts';
import { devicePxPerPx } from '../../kit/zoomed.ts';
import type { AxisTime } from '../axisTime.ts';
import styles from './Timeline.module.css';
import { markAt } from './hitTest.ts';
import type { ChartLayout } from './laneLayout.ts';
import type { TimelineModel } from './model.ts';
import { paintTimeline } from './paint.ts';
import { readRoles } from './roles.ts';
import { timeAt, type TimeScale } from './timeScale.ts';
import { useChartGestures } from './useChartGestures.ts';
import { useLook } from './useLook.ts';
import type { TimeWindowControl } from './useTimeWindow.ts';

/** The drawn lanes. The canvas is for the eye and the finger; the list beside it is for keyboard and reader. */
export function Chart(props: {
  readonly model: TimelineModel;
  readonly layout: ChartLayout;
  readonly scale: TimeScale;
  readonly control: TimeWindowControl;
  readonly axis: AxisTime;
  readonly under: AxisTime | null;
  readonly selected: EntryId | null;
  readonly isFocused: boolean;
  readonly summary: string;
  readonly onSelect: (entry: EntryId) => void;
  readonly children?: ReactNode;
}) {
  const { model, layout, scale, axis, under, selected, isFocused } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const look = useLook();
  const chart = useMemo(() => ({ model, layout, scale }), [model, layout, scale]);

  useLayoutEffect(() => {
    const element = canvas.current;
    const ctx = element?.getContext('2d') ?? null;
    if (element === null || ctx === null || layout.widthPx <= 0) {
      return;
    }
    const pxPerCssPx = devicePxPerPx(element);
    element.width = Math.round(layout.widthPx * pxPerCssPx);
    element.height = Math.round(layout.heightPx * pxPerCssPx);
    const roles = readRoles(element);
    paintTimeline({ ctx, roles, ...chart, axis, under, selected, isFocused }, pxPerCssPx);
  }, [chart, layout, axis, under, selected, isFocused, look]);

  const gestures = useChartGestures(canvas, {
    onTap: (place) => {
      const entry = markAt(place, REACH_PX, chart);
      if (entry !== null) {
        props.onSelect(entry);
      }
    },
    onPan: (byPx) => {
      const { window, widthPx } = scale;
      props.control.pan((-byPx * (window.to - window.from)) / widthPx);
    },
    onZoom: (factor, xPx) => props.control.zoom(factor, timeAt(scale, xPx - layout.namesPx)),
  });

  return (
    <canvas
      ref={canvas}
      data-act="timeline"
      className={styles.chart}
      role="img"
      aria-label={props.summary}
      style={{ width: layout.widthPx, height: layout.heightPx }}
      {...gestures}
    />
  );
}

/** Half of a finger: the smallest target of a ground screen is 10 mm. */
const REACH_PX = 26;
