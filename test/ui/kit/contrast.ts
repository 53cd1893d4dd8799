/** Red, green and blue of sRGB, 0 to 255 each. */
export type Rgb = readonly [red: number, green: number, blue: number];

/** Relative luminance of sRGB, 0 to 1: WCAG 2.2, "relative luminance". */
export function luminance(rgb: Rgb): number {
  const [red = 0, green = 0, blue = 0] = rgb.map((value) => {
    const part = value / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio, 1 to 21: WCAG 2.2, "contrast ratio". */
export function contrast(a: Rgb, b: Rgb): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].toSorted((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}
