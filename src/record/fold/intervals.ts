import { type EpochMs, laterBy } from '../brand.ts';
import type { EntryOf } from '../entry.ts';
import type { Interval, IntervalKind, Timed } from '../flightState.ts';
import { appended, itemAt, replaced } from '../trail.ts';
import { doubted, type Fold, MOST_OPEN, withMemory, withState } from './fold.ts';

/**
 * Opens an interval as the record says. A second opening of the same thing is a doubt and opens nothing; another of the
 * same kind under another name opens beside it, with a doubt where only one can be going on.
 */
export function opened(fold: Fold, kind: IntervalKind, label: string, timed: Timed): Fold {
  const going = openOf(fold, kind).map((index) => itemAt(fold.state.intervals, index)?.label);
  const subject = subjectOf(kind, label);
  if (going.includes(label) || (going.length > 0 && label === '')) {
    return doubted(fold, timed, 'intervalAlreadyOpen', subject);
  }
  const asked =
    going.length > 0 && kind !== 'sampler'
      ? doubted(fold, timed, 'intervalAlreadyOpen', subject)
      : fold;
  return begun(askedForOrder(asked, kind, label, timed), kind, label, timed);
}

/** Opens without asking: for intervals whose rules live with what they are intervals of. */
export function begun(fold: Fold, kind: IntervalKind, label: string, timed: Timed): Fold {
  const index = fold.state.intervals.length;
  const interval: Interval = { kind, label, opened: timed, closed: null };
  return withMemory(withState(fold, { intervals: appended(fold.state.intervals, interval) }), {
    openIntervals: [...fold.memory.openIntervals, index].slice(-MOST_OPEN),
  });
}

/**
 * Closes the newest open interval with that label. Without a label it closes the newest of its kind; a label that none
 * has closes one that was opened without.
 */
export function closed(fold: Fold, kind: IntervalKind, label: string, timed: Timed): Fold {
  const going = openOf(fold, kind);
  const labelled = (wanted: string): number | undefined =>
    going.findLast((index) => itemAt(fold.state.intervals, index)?.label === wanted);
  const index = label === '' ? going.at(-1) : (labelled(label) ?? labelled(''));
  if (index === undefined) {
    return lonelyEnd(
      doubted(fold, timed, 'intervalNotOpen', subjectOf(kind, label)),
      label === '' ? null : subjectOf(kind, label),
    );
  }
  return ended(fold, index, timed);
}

/** Closes the open interval of this kind and exact label, if there is one, and asks nothing. */
export function endedIfOpen(fold: Fold, kind: IntervalKind, label: string, timed: Timed): Fold {
  const index = openOf(fold, kind).findLast(
    (candidate) => itemAt(fold.state.intervals, candidate)?.label === label,
  );
  return index === undefined ? fold : ended(fold, index, timed);
}

function ended(fold: Fold, index: number, timed: Timed): Fold {
  const interval = itemAt(fold.state.intervals, index);
  if (interval === undefined) {
    return fold;
  }
  return withMemory(
    withState(fold, {
      intervals: replaced(fold.state.intervals, index, { ...interval, closed: timed }),
    }),
    { openIntervals: fold.memory.openIntervals.filter((open) => open !== index) },
  );
}

/** Remembers an end that had no beginning, so that a beginning after it can be asked about. */
export function lonelyEnd(fold: Fold, subject: string | null): Fold {
  const { lonelyEnds } = fold.memory;
  return subject === null || lonelyEnds.includes(subject)
    ? fold
    : withMemory(fold, { lonelyEnds: [...lonelyEnds, subject].slice(-MOST_OPEN) });
}

export function askedForOrder(fold: Fold, kind: string, label: string, timed: Timed): Fold {
  const subject = subjectOf(kind, label);
  if (!fold.memory.lonelyEnds.includes(subject)) {
    return fold;
  }
  return withMemory(doubted(fold, timed, 'endBeforeStart', subject), {
    lonelyEnds: fold.memory.lonelyEnds.filter((end) => end !== subject),
  });
}

export function subjectOf(kind: string, label: string): string {
  return label === '' ? kind : `${kind} ${label}`;
}

function openOf(fold: Fold, kind: IntervalKind): readonly number[] {
  return fold.memory.openIntervals.filter(
    (index) => itemAt(fold.state.intervals, index)?.kind === kind,
  );
}

/** When the oldest open interval of this kind began. */
export function openSince(fold: Fold, kind: IntervalKind): EpochMs | null {
  const [index] = openOf(fold, kind);
  return index === undefined ? null : (itemAt(fold.state.intervals, index)?.opened.at ?? null);
}

/** A turn given with its length is closed from the start and needs no second touch. */
export function turnStarted(fold: Fold, entry: EntryOf<'turnStarted'>, timed: Timed): Fold {
  const { lastedS } = entry.body;
  if (lastedS === undefined || lastedS < 0) {
    return opened(fold, 'turn', '', timed);
  }
  const until = laterBy(timed.at, lastedS * 1000);
  const turn: Interval = {
    kind: 'turn',
    label: '',
    opened: timed,
    closed: { ...timed, at: until },
  };
  const before = fold.memory.timedTurn;
  const longest = before !== null && before.until > until ? before : { since: timed.at, until };
  return withMemory(withState(fold, { intervals: appended(fold.state.intervals, turn) }), {
    timedTurn: longest,
  });
}

/** The end of a turn whose length was given already says the same thing again. */
export function turnEnded(fold: Fold, timed: Timed): Fold {
  const running = (fold.memory.timedTurn?.until ?? timed.at) > timed.at;
  return running && openSince(fold, 'turn') === null ? fold : closed(fold, 'turn', '', timed);
}

export function turnSince(fold: Fold, at: EpochMs): EpochMs | null {
  const open = openSince(fold, 'turn');
  const { timedTurn } = fold.memory;
  return open ?? (timedTurn !== null && timedTurn.until >= at ? timedTurn.since : null);
}

export function samplerOpened(fold: Fold, entry: EntryOf<'samplerOpened'>, timed: Timed): Fold {
  const { sample = '', sampler = '', purpose = '' } = entry.body;
  const next = opened(fold, 'sampler', sample, timed);
  if (next.state.intervals.length === fold.state.intervals.length) {
    return next;
  }
  return withState(next, {
    samples: appended(next.state.samples, {
      sample,
      sampler,
      purpose,
      opened: timed,
      closed: null,
    }),
  });
}

export function samplerClosed(fold: Fold, entry: EntryOf<'samplerClosed'>, timed: Timed): Fold {
  const next = closed(fold, 'sampler', entry.body.sample ?? '', timed);
  const wasOpen = openOf(fold, 'sampler');
  const [index] = wasOpen.filter((open) => !next.memory.openIntervals.includes(open));
  const interval = index === undefined ? undefined : itemAt(fold.state.intervals, index);
  if (interval === undefined) {
    return next;
  }
  for (let place = next.state.samples.length - 1; place >= 0; place -= 1) {
    const sample = itemAt(next.state.samples, place);
    if (sample?.opened.by === interval.opened.by) {
      const samples = replaced(next.state.samples, place, { ...sample, closed: timed });
      return withState(next, { samples });
    }
  }
  return next;
}

/** The crew's own tile: an instant leaves no trace here, an interval or a state opens and closes. */
export function ownEvent(fold: Fold, entry: EntryOf<'ownEventMarked'>, timed: Timed): Fold {
  const kind = `own:${entry.body.tile}` as const;
  switch (entry.body.form) {
    case 'instant':
      return fold;
    case 'opened':
    case 'on':
      return opened(fold, kind, entry.body.label, timed);
    case 'closed':
    case 'off':
      return closed(fold, kind, '', timed);
  }
}
