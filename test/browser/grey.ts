import type { Locator, Page } from 'playwright-core';

/** Takes all hue out of the page, as a print or an eye that tells no hues would. */
export async function inGrey(page: Page): Promise<void> {
  await page.evaluate(() => {
    document.documentElement.style.filter = 'grayscale(1)';
  });
}

/** A step of grey that an eye sees at a glance: of 255. */
const SEEN = 40;

/**
 * Share of a drawing's pixels that stand out from the ground, the colour at the middle of its upper edge.
 *
 * @param drawing what is drawn on the ground alone
 */
export async function inkShare(drawing: Locator): Promise<number> {
  const png = (await drawing.screenshot()).toString('base64');
  return drawing.page().evaluate(
    async ({ data, seen }) => {
      const bytes = Uint8Array.from(atob(data), (char) => char.charCodeAt(0));
      const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const canvas = new OffscreenCanvas(image.width, image.height);
      const pen = canvas.getContext('2d');
      if (pen === null) throw new Error('the page must have a canvas');
      pen.drawImage(image, 0, 0);
      const { data: pixels } = pen.getImageData(0, 0, image.width, image.height);
      const grey = (pixel: number): number => pixels[pixel * 4] ?? 0;
      const ground = grey(Math.floor(image.width / 2));
      let inked = 0;
      for (let pixel = 0; pixel < image.width * image.height; pixel += 1) {
        if (Math.abs(grey(pixel) - ground) >= seen) inked += 1;
      }
      return inked / (image.width * image.height);
    },
    { data: png, seen: SEEN },
  );
}
