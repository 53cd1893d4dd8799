import { useLayoutEffect } from 'react';
import { screenMm, useWindowPx } from './kit/mm.ts';
import { useSettings, type SettingsStore } from './kit/settings.ts';

/**
 * Keeps the theme, the millimetre and the text size of the whole page as the settings have them. face.js does the same before the
 * first paint; tokens are worked out at the root, so nothing below it may set them alone.
 */
export function useFace(store: SettingsStore): void {
  const { theme, pxPerMm: calibrated, textSize } = useSettings(store);
  const { widthPx, heightPx } = useWindowPx();
  const { pxPerMm } = screenMm(widthPx, heightPx, calibrated);
  useLayoutEffect(() => {
    const { dataset, style } = document.documentElement;
    dataset.theme = theme;
    style.setProperty('--mm', `${pxPerMm}px`);
    style.setProperty('--size', String(textSize));
  }, [theme, pxPerMm, textSize]);
}
