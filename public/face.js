// Sets theme, millimetre and text size before the first paint, so that no bright frame flashes in a dark cabin.
// A classic script in the head: it must block. The screens keep these three keys up to date.
(() => {
  const root = document.documentElement;
  /** @param {string} key */
  const kept = (key) => {
    try {
      return localStorage.getItem(key);
    } catch {
      return null; // storage refused: the defaults serve
    }
  };
  const theme = kept('kneeline-theme');
  root.dataset.theme = ['day', 'sun', 'dark', 'night', 'night-red'].includes(theme) ? theme : 'day';

  // Uncalibrated, the screen's short side tells a 10 to 13 inch tablet from an 8 inch one.
  const shortSidePx = Math.min(screen.width, screen.height);
  const calibratedPxPerMm = Number(kept('kneeline-mm'));
  const pxPerMm =
    calibratedPxPerMm >= 3 && calibratedPxPerMm <= 12
      ? calibratedPxPerMm
      : shortSidePx >= 800
        ? 5.2
        : 6.42;
  root.style.setProperty('--mm', `${pxPerMm}px`);

  const size = Number(kept('kneeline-size'));
  if (size >= 1 && size <= 1.5) root.style.setProperty('--size', String(size));
})();
