import type { EpochMs } from '../../record/brand.ts';
import type { PanelState } from '../../record/kinds.ts';
import type { FlightSheet, Wing } from '../../record/sheet.ts';
import type { CountedAs, WingLook } from './wingLooks.ts';

/** Probes or panels of one wing from the root to the tip, as one call left them. */
export interface SpanRow {
  readonly as: CountedAs;
  /** From the root outward; only those that somebody has called. */
  readonly order: readonly string[];
  readonly states: Readonly<Record<string, PanelState>>;
}

/** By probes where the call says anything of them, else by panels. */
export function spanRow(sheet: FlightSheet, look: WingLook): SpanRow {
  const probes = rowOf('probes', probesFromRoot(sheet, look.wing), look);
  const spoken = look.lostProbes.length > 0 || look.lostPanels.length === 0;
  return spoken && probes.order.length > 0
    ? probes
    : rowOf('panels', panelsFromRoot(sheet, look.wing), look);
}

function rowOf(as: CountedAs, ids: readonly string[], look: WingLook): SpanRow {
  const states = look.states[as];
  return { as, states, order: ids.filter((id) => (states[id] ?? 'notAssessed') !== 'notAssessed') };
}

function probesFromRoot(sheet: FlightSheet, wing: Wing): readonly string[] {
  const place = new Map(panelsFromRoot(sheet, wing).map((panel, index) => [panel, index]));
  return sheet.probes
    .filter((probe) => probe.wing === wing && probe.form === 'trailingEdgeTotal')
    .toSorted((a, b) => (place.get(a.panel) ?? Infinity) - (place.get(b.panel) ?? Infinity) || 0)
    .map(({ id }) => id);
}

/** Panels are numbered from the root. */
function panelsFromRoot(sheet: FlightSheet, wing: Wing): readonly string[] {
  return sheet.panels
    .filter((panel) => panel.wing === wing)
    .toSorted((a, b) => a.number - b.number)
    .map(({ id }) => id);
}

/** Unbroken stretches of what is not laminar, from the root outward. */
export function stretchesNotLaminar({ order, states }: SpanRow): readonly (readonly string[])[] {
  return stretches(order, (id) => states[id] !== 'laminar');
}

export function stretches(
  order: readonly string[],
  wanted: (id: string) => boolean,
): readonly (readonly string[])[] {
  const found: string[][] = [];
  let open: string[] | null = null;
  for (const id of order) {
    if (!wanted(id)) open = null;
    else if (open === null) found.push((open = [id]));
    else open.push(id);
  }
  return found;
}

/** Those that no call from `since` to `until` found laminar. */
export function neverLaminar(
  looks: readonly WingLook[],
  as: CountedAs,
  since: EpochMs,
  until: EpochMs,
): (id: string) => boolean {
  const within = looks.filter(({ at }) => at >= since && at <= until);
  const laminar = new Set(
    within.flatMap(({ states }) =>
      Object.keys(states[as]).filter((id) => states[as][id] === 'laminar'),
    ),
  );
  return (id) => within.length > 0 && !laminar.has(id);
}
