import { useLayoutEffect, useMemo, useRef, type PointerEvent } from 'react';
import { epochMs } from '../../../record/brand.ts';
import { devicePxPerPx, placeWithin } from '../../kit/zoomed.ts';
import type { AxisTime } from '../axisTime.ts';
import styles from './Timeline.module.css';
import type { TimelineModel } from './model.ts';
import { readRoles, type Roles } from './roles.ts';
import { timeAt, xOf, type TimeScale, type TimeWindow } from './timeScale.ts';
import { useBoxSize, useLook } from './useLook.ts';
import type { TimeWindowControl } from './useTimeWindow.ts';

/** The whole flight on one strip, the part in view framed; a touch brings that part into view. */
export function Overview(props: {
  readonly model: TimelineModel;
  readonly control: TimeWindowControl;
  readonly axis: AxisTime;
}) {
  const { model, control, axis } = props;
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const { widthPx, heightPx } = useBoxSize(box);
  const look = useLook();
  const shown = useMemo(
    () => spanning(model.flightSpan, control.window),
    [model.flightSpan, control.window],
  );
  const scale = useMemo(() => ({ window: shown, widthPx }), [shown, widthPx]);

  useLayoutEffect(() => {
    const element = canvas.current;
    const ctx = element?.getContext('2d') ?? null;
    if (element === null || ctx === null || widthPx <= 0) {
      return;
    }
    const pxPerCssPx = devicePxPerPx(element);
    element.width = Math.round(widthPx * pxPerCssPx);
    element.height = Math.round(heightPx * pxPerCssPx);
    ctx.setTransform(pxPerCssPx, 0, 0, pxPerCssPx, 0, 0);
    paintOverview({
      ctx,
      roles: readRoles(element),
      model,
      scale,
      inView: control.window,
      heightPx,
    });
  }, [scale, widthPx, heightPx, model, control.window, look]);

  const centre = (event: PointerEvent): void => {
    const half = (control.window.to - control.window.from) / 2;
    const { xPx } = placeWithin(event.currentTarget, event);
    const middle = timeAt(scale, xPx);
    control.show({
      from: epochMs(Math.round(middle - half)),
      to: epochMs(Math.round(middle + half)),
    });
  };
  return (
    <div ref={box} className={styles.overview}>
      <canvas
        ref={canvas}
        data-act="overview"
        role="img"
        aria-label={`Whole flight, ${axis.spoken(shown.from)} to ${axis.spoken(shown.to)}; in view ${axis.spoken(control.window.from)} to ${axis.spoken(control.window.to)}.`}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          centre(event);
        }}
        onPointerMove={(event) => {
          if (event.currentTarget.hasPointerCapture(event.pointerId)) {
            centre(event);
          }
        }}
      />
    </div>
  );
}

/** The flight, and whatever lies in view beyond it. */
function spanning(flight: TimeWindow, inView: TimeWindow): TimeWindow {
  return {
    from: flight.from < inView.from ? flight.from : inView.from,
    to: flight.to > inView.to ? flight.to : inView.to,
  };
}

function paintOverview(of: {
  readonly ctx: CanvasRenderingContext2D;
  readonly roles: Roles;
  readonly model: TimelineModel;
  readonly scale: TimeScale;
  readonly inView: TimeWindow;
  readonly heightPx: number;
}): void {
  const { ctx, roles, model, scale, inView, heightPx } = of;
  const foot = heightPx - 9.5;
  ctx.clearRect(0, 0, scale.widthPx, heightPx);
  ctx.strokeStyle = roles.rule;
  ctx.lineWidth = 1;
  ctx.strokeRect(-2, foot, scale.widthPx + 4, 0.01);
  for (const span of model.spans) {
    if (span.lane === 'suction' || span.lane === 'moisture') {
      const left = xOf(scale, span.from);
      const right = span.to === null ? scale.widthPx : xOf(scale, span.to);
      ctx.fillStyle = span.lane === 'suction' ? roles.mark : roles.trb;
      ctx.fillRect(left, span.lane === 'suction' ? 8 : 16, Math.max(1.5, right - left), 5);
    }
  }
  ctx.strokeStyle = roles.ink;
  for (const run of model.fuel.runs) {
    const x = Math.round(xOf(scale, run.from)) + 0.5;
    ctx.beginPath();
    ctx.moveTo(x, foot - 8);
    ctx.lineTo(x, foot);
    ctx.stroke();
  }
  const left = xOf(scale, inView.from);
  const right = xOf(scale, inView.to);
  ctx.lineWidth = 2.4;
  ctx.strokeRect(
    Math.max(1.2, left),
    2.5,
    Math.min(scale.widthPx - 1.2, right) - Math.max(1.2, left),
    heightPx - 5,
  );
}
