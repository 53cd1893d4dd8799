import { useRef, type RefObject } from 'react';
import { useBoxSize } from '../../timeline/useLook.ts';

/** Where nothing is laid out, as in a test, a plot is drawn this wide. */
const UNMEASURED_PX = 640;

/** The box that a plot fills, and its width in CSS px: text is never scaled. */
export function usePlotWidth(): {
  readonly box: RefObject<HTMLDivElement | null>;
  readonly widthPx: number;
} {
  const box = useRef<HTMLDivElement>(null);
  const { widthPx } = useBoxSize(box);
  return { box, widthPx: widthPx === 0 ? UNMEASURED_PX : widthPx };
}
