import type { Wing } from '../../record/sheet.ts';
import { padGrid } from './cellGrid.ts';
import type { Fly } from './flyContext.ts';
import { panelStates } from './wingState.ts';

/** A panel's key and some of its probes; a long panel takes several. */
export interface ProbeLine {
  readonly panel: string;
  readonly first: boolean;
  readonly probes: readonly string[];
}

export interface ProbeLines {
  /** Panels stand as columns, as seen from above, or as rows where that takes fewer pages. */
  readonly upright: boolean;
  readonly pages: readonly (readonly ProbeLine[])[];
  /** Cells of a line, the panel's own key among them. */
  readonly cells: number;
}

export function probeColumns(fly: Pick<Fly, 'sheet' | 'state' | 'layout'>, wing: Wing): ProbeLines {
  const { columns, rows } = padGrid(fly.layout.places.cells, 15);
  const upright = linesOf(fly, wing, rows, columns);
  const lying = linesOf(fly, wing, columns, rows);
  return upright.pages.length <= lying.pages.length
    ? { ...upright, upright: true }
    : { ...lying, upright: false };
}

function linesOf(
  fly: Pick<Fly, 'sheet' | 'state'>,
  wing: Wing,
  cellsALine: number,
  linesAPage: number,
): Omit<ProbeLines, 'upright'> {
  const room = Math.max(1, cellsALine - 1);
  const lines = panelStates(fly.sheet, fly.state, wing).flatMap((panel): readonly ProbeLine[] => {
    const probes = panel.probes.map((probe) => probe.id);
    return Array.from({ length: Math.max(1, Math.ceil(probes.length / room)) }, (_, index) => ({
      panel: panel.id,
      first: index === 0,
      probes: probes.slice(index * room, (index + 1) * room),
    }));
  });
  const pageCount = Math.max(1, Math.ceil(lines.length / Math.max(1, linesAPage)));
  const perPage = Math.ceil(lines.length / pageCount);
  return {
    pages: Array.from({ length: pageCount }, (_, page) =>
      lines.slice(page * perPage, (page + 1) * perPage),
    ),
    cells: 1 + Math.max(1, ...lines.map((line) => line.probes.length)),
  };
}
