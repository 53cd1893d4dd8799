import type { Page } from 'playwright-core';

/** Three tablets either way up, in CSS px: 8 inch kneeboard, 10 to 11 inch, 13 inch. */
export const VIEWPORTS = [
  { width: 744, height: 1133 },
  { width: 1133, height: 744 },
  { width: 820, height: 1180 },
  { width: 1180, height: 820 },
  { width: 1024, height: 1366 },
  { width: 1366, height: 1024 },
] as const;

/** CSS px in a millimetre: 10 to 13 inch tablets, and the densest ones. From memory, unverified. */
export const MM_SCALES = [5.2, 6.42] as const;

export interface Size {
  readonly width: number;
  readonly height: number;
}

export function sizeWords({ width, height }: Size, pxPerMm: number): string {
  return `${width}x${height} ${pxPerMm.toFixed(2)}`;
}

/** Turns the tablet, or takes another one, where it stands; resolves when the screen is drawn so. */
export async function turnTo(page: Page, { width, height }: Size): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.evaluate(async () => {
    await document.fonts.ready;
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  });
}
