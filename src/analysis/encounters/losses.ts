import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { Timed } from '../../record/flightState.ts';
import { WINGS, type FlightSheet, type Wing } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';
import { airLooks } from './airDepartures.ts';
import { probeRecords } from './chronicProbes.ts';
import { evidenceFor, type Evidence, type Tried } from './evidence.ts';
import { settingsOf, suctionOnSince, type Settings } from './settings.ts';
import { neverLaminar, spanRow, stretches } from './span.ts';
import { timeDoubtS } from './timeDoubt.ts';
import { watchOf } from './watch.ts';
import type { Seen } from './wingInMoisture.ts';
import { countBy, countSpoken, wingLooks, type LaminarCount } from './wingLooks.ts';

/** Where and when flow was lost, or never came, and what speaks for which cause. */
export interface Loss {
  /** `neverLaminar`: neighbours that did not come in at the first setting after suction on. */
  readonly kind: 'lost' | 'neverLaminar';
  readonly wing: Wing;
  readonly seen: Seen;
  /** By name, where somebody said which; empty where only a count fell. */
  readonly probes: readonly string[];
  readonly panels: readonly string[];
  readonly from: LaminarCount | null;
  readonly to: LaminarCount | null;
  readonly byCommand: boolean;
  /** Found in a reading of probes: it happened then or before. */
  readonly inReading: boolean;
  /** Every candidate, in the fixed order. */
  readonly evidence: readonly Evidence[];
  /** What people decided, oldest first; the candidates stay beside it. */
  readonly causes: readonly CauseAssigned[];
}

export interface CauseAssigned {
  readonly cause: string;
  readonly reason: string;
  readonly author: string;
  readonly role: string;
  readonly at: EpochMs;
  readonly by: EntryId;
}

/** @param earlier flights before this one, where they are at hand: they tell which probe is chronic */
export function losses(view: FlightView, earlier: readonly FlightView[] = []): readonly Loss[] {
  const { sheet } = view.state;
  if (sheet === null) return [];
  const settings = settingsOf(view.state, sheet);
  const causes = causesOf(view);
  const common = {
    state: view.state,
    sheet,
    moisture: watchOf(view).moisture,
    air: airLooks(view.state, sheet),
    earlier: earlier.length === 0 ? null : probeRecords(earlier),
  };
  return WINGS.flatMap((wing) => {
    const of = { ...common, wing, looks: wingLooks(view.state, sheet, wing) };
    return [...neverCame(view, of, settings), ...lostOn(view, of, settings)];
  })
    .map((loss) => ({ ...loss, causes: causes.get(loss.seen.by) ?? [] }))
    .toSorted((a, b) => a.seen.at - b.seen.at || a.wing.localeCompare(b.wing));
}

type OfWing = Pick<Tried, 'state' | 'sheet' | 'wing' | 'looks' | 'moisture' | 'air' | 'earlier'>;

function lostOn(view: FlightView, of: OfWing, settings: Settings): readonly Omit<Loss, 'causes'>[] {
  return of.looks.flatMap((look, index) => {
    if (!look.isLoss) return [];
    const row = spanRow(of.sheet, look);
    const to = look.probes ?? look.panels;
    const from =
      to === null ? countSpoken(of.looks, index - 1) : countBy(of.looks, index - 1, to.as);
    return [
      {
        kind: 'lost',
        wing: of.wing,
        seen: seenOf(view, of.sheet, look),
        probes: look.lostProbes,
        panels: look.lostPanels,
        from: from?.count ?? null,
        to,
        byCommand: look.byCommand,
        inReading: look.inReading,
        evidence: evidenceFor({
          ...of,
          at: look.at,
          // A reading finds what may have happened at any time since the wing was last called.
          from: look.inReading ? (of.looks[index - 1]?.at ?? look.at) : look.at,
          byCommand: look.byCommand,
          lost: row.as === 'probes' ? look.lostProbes : look.lostPanels,
          row,
          suctionOnSince: suctionOnSince(settings, of.wing, look.at),
        }),
      },
    ];
  });
}

/** Judged by the last call at the first setting: later ones may bring a probe in that the first one did not. */
function neverCame(
  view: FlightView,
  of: OfWing,
  settings: Settings,
): readonly Omit<Loss, 'causes'>[] {
  const changes = [...items(view.state.suctionChanges)].filter(({ wings }) =>
    wings.includes(of.wing),
  );
  return changes.flatMap((on, place) => {
    if (suctionOnSince(settings, of.wing, on.at)?.by !== on.by) return [];
    const next = changes[place + 1];
    const last = of.looks.findLast(({ at }) => at >= on.at && (next === undefined || at < next.at));
    if (last === undefined) return [];
    const row = spanRow(of.sheet, { ...last, lostProbes: [], lostPanels: [] });
    const isNever = neverLaminar(of.looks, row.as, on.at, last.at);
    return stretches(row.order, isNever).map((stretch): Omit<Loss, 'causes'> => ({
      kind: 'neverLaminar',
      wing: of.wing,
      seen: seenOf(view, of.sheet, on),
      probes: row.as === 'probes' ? stretch : [],
      panels: row.as === 'panels' ? stretch : panelsOf(of.sheet, stretch),
      from: null,
      to: last[row.as],
      byCommand: false,
      inReading: false,
      evidence: evidenceFor({
        ...of,
        at: last.at,
        from: last.at,
        byCommand: false,
        lost: stretch,
        row,
        suctionOnSince: on,
      }),
    }));
  });
}

function panelsOf({ probes }: FlightSheet, ids: readonly string[]): readonly string[] {
  return [...new Set(probes.filter(({ id }) => ids.includes(id)).map(({ panel }) => panel))];
}

function seenOf(view: FlightView, sheet: FlightSheet, timed: Timed): Seen {
  return { at: timed.at, by: timed.by, standardUncertaintyS: timeDoubtS(view, sheet, timed) };
}

/** What people decided about each entry, oldest first. */
export function causesOf(view: FlightView): ReadonlyMap<EntryId, readonly CauseAssigned[]> {
  const causes = new Map<EntryId, CauseAssigned[]>();
  for (const { effective, standing, at, entry } of view.standing) {
    if (standing !== 'stands' || effective.kind !== 'causeAssigned') continue;
    const { target, cause, reason } = effective.body;
    const { author, role, id: by } = entry;
    const one = { cause, reason, author, role, at, by };
    causes.set(target, [...(causes.get(target) ?? []), one]);
  }
  return causes;
}
