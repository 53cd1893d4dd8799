import type { Page } from 'playwright-core';

/** What a picture of the screen as it stands is made of. */
export interface Pixels {
  /** Relative luminance of WCAG 2.2, 0 to 1. */
  readonly brightest: number;
  readonly meanLuminance: number;
  /** Share of pixels with a hue. */
  readonly hueShare: number;
  /** Share of pixels that are neither of the two tones nor the soft edge between them. */
  readonly midToneShare: number;
}

/** Takes a picture of the page and counts its pixels. */
export async function pixelsOf(page: Page): Promise<Pixels> {
  const png = (await page.screenshot()).toString('base64');
  return page.evaluate(countInPage, png);
}

/** Runs in the page, so it must stand on its own. */
async function countInPage(png: string): Promise<Pixels> {
  const bytes = Uint8Array.from(atob(png), (char) => char.charCodeAt(0));
  const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
  const { width, height } = image;
  const pen = new OffscreenCanvas(width, height).getContext('2d');
  if (pen === null) throw new Error('the page must have a canvas');
  pen.drawImage(image, 0, 0);
  const { data } = pen.getImageData(0, 0, width, height);
  const linear = Float64Array.from({ length: 256 }, (_, value) => {
    const part = value / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  const part = (value: number): number => linear[value] ?? 0;
  let brightest = 0;
  let sum = 0;
  let hued = 0;
  const isTone = new Uint8Array(width * height);
  for (let pixel = 0; pixel < width * height; pixel += 1) {
    const [red = 0, green = 0, blue = 0] = data.subarray(pixel * 4, pixel * 4 + 3);
    const luminance = 0.2126 * part(red) + 0.7152 * part(green) + 0.0722 * part(blue);
    brightest = Math.max(brightest, luminance);
    sum += luminance;
    if (Math.max(red, green, blue) - Math.min(red, green, blue) > 24) hued += 1;
    isTone[pixel] = green < 24 || green > 231 ? 1 : 0;
  }
  const near = [-width, -1, 1, width];
  let midTones = 0;
  for (let pixel = width; pixel < width * (height - 1); pixel += 1) {
    const flat = isTone[pixel] === 0 && near.every((step) => isTone[pixel + step] === 0);
    if (flat) midTones += 1;
  }
  const count = width * height;
  return {
    brightest,
    meanLuminance: sum / count,
    hueShare: hued / count,
    midToneShare: midTones / count,
  };
}
