import { useSyncExternalStore } from 'react';

/** A screen in the units that fingers know. */
export interface ScreenMm {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pxPerMm: number;
}

/** Pixels in a millimetre on 10 to 13 inch tablets, and on the densest one, an 8 inch kneeboard. From memory, unverified. */
const LARGE_PX_PER_MM = 5.2;
const DENSE_PX_PER_MM = 6.42;
const LARGE_FROM_PX = 800;

/**
 * Millimetres of a screen whose card calibration may be missing.
 * Uncalibrated, the denser class is taken wherever the short side leaves a doubt, so that an error makes targets larger.
 */
export function screenMm(
  widthPx: number,
  heightPx: number,
  calibratedPxPerMm: number | null,
): ScreenMm {
  const guess = Math.min(widthPx, heightPx) >= LARGE_FROM_PX ? LARGE_PX_PER_MM : DENSE_PX_PER_MM;
  const pxPerMm = calibratedPxPerMm ?? guess;
  return { widthMm: widthPx / pxPerMm, heightMm: heightPx / pxPerMm, pxPerMm };
}

/** The size of the window, anew when it is turned or resized. */
export function useWindowPx(): { readonly widthPx: number; readonly heightPx: number } {
  const size = useSyncExternalStore(
    watchWindow,
    () => `${window.innerWidth}x${window.innerHeight}`,
  );
  const [widthPx = 0, heightPx = 0] = size.split('x').map(Number);
  return { widthPx, heightPx };
}

function watchWindow(listener: () => void): () => void {
  window.addEventListener('resize', listener);
  return () => window.removeEventListener('resize', listener);
}
