import { reflyList } from '../../../analysis/cards.ts';
import { findingsByPanel } from '../../../analysis/encounters/surface.ts';
import type { PointResult } from '../../../analysis/results.ts';
import { reflyWords } from '../../../analysis/words/points.ts';
import { missingWords } from '../../../analysis/words/reasons.ts';
import type { EntryId } from '../../../record/brand.ts';
import { findingWords } from '../../../file/words.ts';
import { checkChains } from '../../../record/chain.ts';
import type { FlightView } from '../../../record/flight.ts';
import { entryWords } from '../../../record/lang.ts';
import { items } from '../../../record/trail.ts';
import { entriesAbout } from '../entriesAbout.ts';
import { isQueried } from '../standing.ts';

/** What bears on the record itself comes first; the rest in the order in which a crew answers it. */
const FAMILIES = [
  'mark',
  'interval',
  'fork',
  'conflict',
  'unconfirmed',
  'queried',
  'point',
  'panel',
  'sample',
] as const;

/** Something that a signature should not hide: answered first, or signed as open. */
export interface OpenItem {
  readonly family: (typeof FAMILIES)[number];
  readonly words: string;
  /** Where to go to answer it. */
  readonly entry: EntryId | null;
}

/** Open marks, open intervals, forks and conflicts, then the rest. */
export function openItemsOf(view: FlightView, points: readonly PointResult[]): readonly OpenItem[] {
  return [
    ...standingItems(view),
    ...intervalItems(view),
    ...chainItems(view),
    ...pointItems(points, view),
    ...reflyItems(view),
    ...inspectionItems(view),
    ...sampleItems(view),
  ].toSorted((a, b) => FAMILIES.indexOf(a.family) - FAMILIES.indexOf(b.family));
}

function standingItems(view: FlightView): readonly OpenItem[] {
  const { sheet } = view.state;
  return view.standing.flatMap((standing): readonly OpenItem[] => {
    const { entry, effective } = standing;
    const words = entryWords(effective, sheet);
    if (standing.conflicts.length > 0) {
      return [{ family: 'conflict', words: `Amendments disagree: ${words}`, entry: entry.id }];
    }
    if (standing.standing === 'unconfirmed') {
      return [{ family: 'unconfirmed', words: `Unconfirmed: ${words}`, entry: entry.id }];
    }
    if (standing.standing !== 'stands') {
      return [];
    }
    if (isQueried(standing)) {
      return [{ family: 'queried', words: `Queried: ${words}`, entry: entry.id }];
    }
    const isUnresolvedMark =
      effective.kind === 'markMade' &&
      effective.body.note === undefined &&
      !entriesAbout(view, entry.id).some(
        (about) => about.entry.kind === 'noted' && about.standing === 'stands',
      );
    return isUnresolvedMark
      ? [{ family: 'mark', words: 'Mark without a meaning', entry: entry.id }]
      : [];
  });
}

function intervalItems(view: FlightView): readonly OpenItem[] {
  const open: OpenItem[] = [];
  for (const interval of items(view.state.intervals)) {
    if (interval.closed === null && interval.kind !== 'testPoint') {
      const opened = view.byId(interval.opened.by);
      const words =
        opened === undefined ? interval.kind : entryWords(opened.effective, view.state.sheet);
      open.push({ family: 'interval', words: `Never closed: ${words}`, entry: interval.opened.by });
    }
  }
  return open;
}

function chainItems(view: FlightView): readonly OpenItem[] {
  return checkChains(view.standing.map(({ entry }) => entry)).map((finding) => ({
    family: 'fork',
    words: findingWords(finding),
    entry: null,
  }));
}

function pointItems(points: readonly PointResult[], view: FlightView): readonly OpenItem[] {
  return points.flatMap(({ point, run, state, result }): readonly OpenItem[] => {
    const opened = [...items(view.state.runs)].find(
      (one) => one.point === point && one.run === run,
    );
    const entry = opened?.started.by ?? null;
    if (state === 'open') {
      return [{ family: 'point', words: `${point} run ${run} was never ended`, entry }];
    }
    return result.kind === 'none'
      ? [
          {
            family: 'point',
            words: `${point} run ${run} has no number: ${missingWords(result.because)}`,
            entry,
          },
        ]
      : [];
  });
}

function reflyItems(view: FlightView): readonly OpenItem[] {
  return reflyList(view).map((refly) => ({
    family: 'point',
    words: `${refly.point} to re-fly: ${reflyWords(refly)}`,
    entry: null,
  }));
}

/** Not yet inspected is a state that somebody said; a flight nobody inspected says so once. */
function inspectionItems(view: FlightView): readonly OpenItem[] {
  const found = findingsByPanel(view);
  const panels = view.state.sheet?.panels ?? [];
  if (found.size === 0) {
    const words = 'No panel was inspected yet';
    return panels.length === 0 ? [] : [{ family: 'panel', words, entry: null }];
  }
  return panels.flatMap(({ id }): readonly OpenItem[] => {
    const said = found.get(id);
    return said === undefined || said.verdict === 'notInspected'
      ? [{ family: 'panel', words: `${id} not yet inspected`, entry: said?.by ?? null }]
      : [];
  });
}

function sampleItems(view: FlightView): readonly OpenItem[] {
  const answered = new Set<string>();
  for (const { effective, standing } of view.standing) {
    if (standing === 'stands' && effective.kind === 'labResultReceived') {
      answered.add(effective.body.sample);
    }
  }
  const pending = [...items(view.state.samples)]
    .map(({ sample }) => sample)
    .filter((id) => !answered.has(id));
  return pending.length === 0
    ? []
    : [{ family: 'sample', words: `Lab results pending: ${pending.join(', ')}`, entry: null }];
}
