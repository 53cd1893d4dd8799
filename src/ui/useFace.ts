import { useLayoutEffect } from 'react';
import { screenMm, useWindowPx } from './kit/mm.ts';
import { useSettings, type SettingsStore } from './kit/settings.ts';

/**
 * Keeps the theme, the millimetre and the text size of the whole page as the settings have them. face.js does the same before the
 * first paint; tokens are worked out at the root, so nothing below it may set them alone. On the ground the text size
 * enlarges all there is; in the air every part of the screen takes what it can hold.
 */
export function useFace(store: SettingsStore, place: 'ground' | 'air'): void {
  const { theme, pxPerMm: calibrated, textSize } = useSettings(store);
  const { widthPx, heightPx } = useWindowPx();
  const { pxPerMm } = screenMm(widthPx, heightPx, calibrated);
  useLayoutEffect(() => {
    const { dataset, style } = document.documentElement;
    dataset.theme = theme;
    dataset.place = place;
    style.setProperty('--mm', `${pxPerMm}px`);
    style.setProperty('--size', String(textSize));
  }, [theme, pxPerMm, textSize, place]);
}
