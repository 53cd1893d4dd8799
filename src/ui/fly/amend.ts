import { epochMs, type EntryId } from '../../record/brand.ts';
import type { Draft, Stamp } from '../../record/entry.ts';
import { fieldAt } from '../../record/fieldPath.ts';
import type { FlightView } from '../../record/flight.ts';
import type { StandingEntry } from '../../record/flightState.ts';
import type { Change } from './field.ts';

type Code = Extract<Draft, { readonly kind: 'entryAmended' }>['body']['code'];

/** An amendment that knows every amendment before it, so that two of one hand never contradict each other. */
export function amendmentOf(
  view: FlightView,
  target: EntryId,
  changes: readonly Change[],
  given: { readonly stamp: Stamp; readonly code?: Code; readonly reason?: string },
): Draft | null {
  const standing = view.byId(target);
  if (standing === undefined) {
    return null;
  }
  const before = changes.map((each) => ({
    field: each.field,
    old: valueAt(standing, each.field),
    new: each.value,
  }));
  const code = given.code ?? codeOf(before, given.stamp.wall - standing.entry.wall);
  return {
    kind: 'entryAmended',
    stamp: given.stamp,
    body: {
      target,
      replaces: headsOf(view, standing),
      changes: before,
      code,
      reason: given.reason ?? (code === 'detail' ? 'detail' : 'put right'),
    },
  };
}

/** While an event is fresh the panel only completes it; afterwards a change of what stood there puts it right. */
const FRESH_MS = 120_000;

function codeOf(
  changes: readonly { readonly field: string; readonly old: unknown }[],
  ageMs: number,
): Code {
  const replaced = changes.filter((each) => each.old !== null);
  if (replaced.some((each) => each.field.startsWith('readings.'))) {
    return 'misKeyed';
  }
  return replaced.length > 0 && ageMs > FRESH_MS ? 'other' : 'detail';
}

/** Amendments of this entry that no other one builds on. */
function headsOf(view: FlightView, standing: StandingEntry): readonly EntryId[] {
  const amendments = standing.amendedBy.flatMap((id) => view.byId(id)?.entry ?? []);
  const builtOn = new Set(
    amendments.flatMap((each) => (each.kind === 'entryAmended' ? each.body.replaces : [])),
  );
  return standing.amendedBy.filter((id) => !builtOn.has(id));
}

/** What a dotted path holds now; `null` when absent. */
export function valueAt(standing: StandingEntry, path: string): unknown {
  const { effective } = standing;
  return effective.kind === 'unrecognised' ? null : fieldAt(effective.body, path);
}

/** What a back-dating key leaves in doubt: the tag of 5 s, 30 s or 2 min that its distance calls for. */
function backDateDoubtS(totalS: number): number {
  return totalS <= 30 ? 5 : totalS <= 120 ? 30 : 120;
}

/** The entry moved back by so many seconds from where it stands now; keys add up. */
export function backDated(
  view: FlightView,
  target: EntryId,
  backS: number,
  stamp: Stamp,
): Draft | null {
  const standing = view.byId(target);
  if (standing === undefined) {
    return null;
  }
  const at = epochMs(Math.round(standing.at - backS * 1000));
  const totalS = Math.max(backS, (standing.entry.wall - at) / 1000);
  return amendmentOf(
    view,
    target,
    [
      { field: 'at', value: at },
      { field: 'doubtS', value: backDateDoubtS(totalS) },
    ],
    { stamp, code: 'backDated', reason: `back-dated ${backS} s` },
  );
}
