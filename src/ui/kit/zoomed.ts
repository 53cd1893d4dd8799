/**
 * How much larger an element is drawn than its own pixels say: what the text size made of it. Places of a touch come in
 * pixels of the window, a canvas counts in its own.
 */
function zoomOf(element: Element): number {
  const { width } = element.getBoundingClientRect();
  const ownPx = element instanceof HTMLElement ? element.offsetWidth : 0;
  // In hundredths, as text sizes are: a box of a broken width has a whole `offsetWidth`, and is not zoomed for that.
  return width > 0 && ownPx > 0 ? Math.round((100 * width) / ownPx) / 100 : 1;
}

/** Where a touch is, in the element's own pixels from its top left corner. */
export function placeWithin(
  element: Element,
  at: { readonly clientX: number; readonly clientY: number },
): { readonly xPx: number; readonly yPx: number } {
  const { left, top } = element.getBoundingClientRect();
  const zoom = zoomOf(element);
  return { xPx: (at.clientX - left) / zoom, yPx: (at.clientY - top) / zoom };
}

/** Device pixels for one pixel of the element: a canvas with fewer is blurred. */
export function devicePxPerPx(element: Element): number {
  return (globalThis.devicePixelRatio || 1) * zoomOf(element);
}
