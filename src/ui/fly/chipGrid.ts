import type { Place } from './places.ts';

const CHIP_HEIGHT_MM = 15;
const GAP_MM = 4;

export interface ChipGrid {
  readonly columns: number;
  readonly rows: number;
}

/** As many chips as fit a place below its heading, wide enough for the longest of their labels. */
export function chipGrid(place: Place, labels: readonly string[], textSize: number): ChipGrid {
  const headMm = 10.4 * textSize;
  const longest = Math.max(0, ...labels.map((label) => label.length));
  const rows = Math.max(1, Math.floor((place.h - headMm + GAP_MM) / (CHIP_HEIGHT_MM + GAP_MM)));
  const leastWidth = (longest <= 14 ? 18 : longest <= 24 || rows <= 2 ? 27 : 40) * textSize;
  const columns = Math.max(2, Math.floor((place.w + GAP_MM) / (leastWidth + GAP_MM)));
  return { columns, rows };
}

/** The labels of one page, when `fixed` places are kept for keys that are always there and one more for paging. */
export function chipPage<Item>(
  all: readonly Item[],
  room: number,
  page: number,
): { readonly items: readonly Item[]; readonly pages: number } {
  if (all.length <= room) {
    return { items: all, pages: 1 };
  }
  const perPage = Math.max(1, room - 1);
  const pages = Math.ceil(all.length / perPage);
  const from = (page % pages) * perPage;
  return { items: all.slice(from, from + perPage), pages };
}
