import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { Envelope } from '../../../analysis/recorder/envelope.ts';
import { CHANNEL_USES, type ChannelUse } from '../../../analysis/recorder/trace.ts';
import { fromSi, isUnit } from '../../../aero/units.ts';
import { figure } from '../../kit/number.ts';
import { devicePxPerPx } from '../../kit/zoomed.ts';
import { namesPxOf } from '../timeline/laneLayout.ts';
import { readRoles } from '../timeline/roles.ts';
import type { TimeWindow } from '../timeline/timeScale.ts';
import { useBoxSize, useLook } from '../timeline/useLook.ts';
import type { MappedChannel } from './mapping.ts';
import styles from './Recorder.module.css';
import { unitWords, USE_WORDS } from './recorderWords.ts';
import type { OpenedRecorder } from './useRecorder.ts';

/** Two lines of words beside each trace. */
const USUAL_ROW_PX = 46;
const INSET_PX = 6;

interface Drawn {
  readonly window: TimeWindow;
  readonly channels: readonly Envelope[];
}

/** Recorded channels on the axis of the timeline: least and greatest value a pixel, whatever the number of rows. */
export function RecorderStrip({
  opened,
  window,
  rowPx = USUAL_ROW_PX,
}: {
  readonly opened: OpenedRecorder;
  readonly window: TimeWindow;
  readonly rowPx?: number;
}) {
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const { widthPx } = useBoxSize(box);
  const look = useLook();
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  const { port, offset, mapping } = opened;
  const offsetMs = offset?.kind === 'offset' ? Math.round(offset.offsetS * 1000) : 0;
  const namesPx = namesPxOf(widthPx);
  const parts = Math.max(1, Math.floor(widthPx - namesPx));

  useEffect(() => {
    let isWanted = true;
    void port.strip(window.from + offsetMs, window.to + offsetMs, parts).then((channels) => {
      if (isWanted) setDrawn({ window, channels });
    });
    return () => {
      isWanted = false;
    };
  }, [port, window, offsetMs, parts]);

  useLayoutEffect(() => {
    const element = canvas.current;
    const ctx = element?.getContext('2d') ?? null;
    if (element === null || ctx === null || drawn === null || widthPx <= 0) return;
    const scale = devicePxPerPx(element);
    element.width = Math.round(widthPx * scale);
    element.height = Math.round(mapping.channels.length * rowPx * scale);
    ctx.setTransform(scale, 0, 0, scale, 0, 0);
    const roles = readRoles(element);
    ctx.fillStyle = roles.ground;
    ctx.fillRect(0, 0, widthPx, mapping.channels.length * rowPx);
    const channels = mapping.channels.map((channel, index) => ({ channel, index }));
    for (const [place, { channel, index }] of channels.toSorted(inOrder).entries()) {
      const envelope = drawn.channels[index];
      const topPx = place * rowPx;
      const range = envelope === undefined ? null : rangeOf(envelope);
      ctx.strokeStyle = roles.hair;
      ctx.lineWidth = 1;
      ctx.beginPath();
      ctx.moveTo(0, topPx + rowPx - 0.5);
      ctx.lineTo(widthPx, topPx + rowPx - 0.5);
      ctx.stroke();
      ctx.textAlign = 'left';
      ctx.fillStyle = roles.ink;
      ctx.font = `700 11.5px ${roles.font}`;
      ctx.fillText(
        shortName(channel.use, channel.engine, opened.head.headers[channel.column] ?? ''),
        0,
        topPx + 0.37 * rowPx,
        namesPx - 8,
      );
      if (envelope === undefined || range === null) continue;
      ctx.font = `400 11.5px ${roles.font}`;
      ctx.fillStyle = roles.quiet;
      ctx.fillText(rangeWords(range, channel.unit), 0, topPx + 0.76 * rowPx, namesPx - 8);
      const y = (value: number): number =>
        topPx +
        rowPx -
        INSET_PX -
        ((value - range.low) / (range.high - range.low || 1)) * (rowPx - 2 * INSET_PX);
      ctx.strokeStyle = roles.lam;
      ctx.beginPath();
      let isDown = false;
      for (let part = 0; part < parts; part += 1) {
        const low = envelope.low[part] ?? Number.NaN;
        const high = envelope.high[part] ?? Number.NaN;
        if (Number.isNaN(low)) {
          // Fewer rows than pixels: the line goes on to the next row; a gap in the recording is longer than that.
          continue;
        }
        const x = namesPx + part + 0.5;
        if (isDown) ctx.lineTo(x, y(low));
        else ctx.moveTo(x, y(low));
        ctx.lineTo(x, y(high));
        isDown = true;
      }
      ctx.stroke();
    }
  }, [drawn, widthPx, namesPx, parts, rowPx, mapping, look, opened.head]);

  return (
    <div ref={box} className={styles.strip}>
      <canvas
        ref={canvas}
        data-act="recorder-strip"
        role="img"
        aria-label={`Recorder, ${mapping.channels.length} channels on the axis of the timeline`}
        style={{ width: widthPx, height: mapping.channels.length * rowPx }}
      />
    </div>
  );
}

/** The flows lead, for they are what the runs rest on: the file may have its columns in any order. */
function inOrder(
  { channel: a }: { readonly channel: MappedChannel },
  { channel: b }: { readonly channel: MappedChannel },
): number {
  return (
    CHANNEL_USES.indexOf(a.use) - CHANNEL_USES.indexOf(b.use) || (a.engine ?? 0) - (b.engine ?? 0)
  );
}

function shortName(use: ChannelUse, engine: number | null, header: string): string {
  if (use === 'other') return header;
  const short: Partial<Record<ChannelUse, string>> = {
    fuelFlow: 'Flow',
    suctionFuelFlow: 'Suction unit',
    pressureAltitude: 'Height',
    staticAirTemp: 'Static temp',
    totalAirTemp: 'Total temp',
  };
  return `${short[use] ?? USE_WORDS[use]}${engine === null ? '' : ` ${engine}`}`;
}

function rangeOf({ low, high }: Envelope): { low: number; high: number } | null {
  let [least, most] = [Infinity, -Infinity];
  for (const value of low) if (value < least) least = value;
  for (const value of high) if (value > most) most = value;
  return least <= most ? { low: least, high: most } : null;
}

function rangeWords({ low, high }: { low: number; high: number }, unit: string | null): string {
  const shown = (si: number): number => {
    if (unit === null || !isUnit(unit)) return si;
    const value = fromSi({ value: si, unit });
    return value.kind === 'ready' ? value.value : si;
  };
  const [a, b] = [shown(low), shown(high)];
  const decimals = Math.max(
    0,
    Math.min(3, 2 - Math.floor(Math.log10(Math.max(Math.abs(b - a), 1e-3)))),
  );
  return `${figure(a, decimals)} to ${figure(b, decimals)} ${unitWords(unit)}`;
}
