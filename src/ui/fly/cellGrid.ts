/** How many cells of at least so many millimetres, 4 mm apart, fit a place. */
export function padGrid(
  place: { readonly w: number; readonly h: number },
  leastMm: number,
): { readonly columns: number; readonly rows: number } {
  return {
    columns: Math.max(1, Math.floor((place.w + 4.01) / (leastMm + 4))),
    rows: Math.max(1, Math.floor((place.h + 4.01) / (leastMm + 4))),
  };
}
