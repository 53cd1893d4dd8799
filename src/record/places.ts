import { type EntryId, type EpochMs, laterBy, type RecorderId } from './brand.ts';
import type { Entry } from './entry.ts';
import { compareEntries } from './merge.ts';
import type { Standing } from './standing.ts';

/**
 * Where entries stand in time. Every recorder's clock is cleared of the steps it noted; when several recorders took a
 * time hack on the same clock, the others are moved onto the tablet that opened the flight, by the offset alone.
 */
export interface Places {
  /** Learns of changed standings; gives the recorders whose entries may have moved, each from which number on. */
  readonly learn: (changed: Iterable<Standing>) => ReadonlyMap<RecorderId, number>;
  readonly placeOf: (standing: Standing) => EpochMs;
  /** On the recorder's own clock, steps taken out, before it is moved onto another. */
  readonly ownTimeOf: (standing: Standing) => EpochMs;
}

interface Recorder {
  /** Notes of a clock step and time hacks, by id: the few entries that move others. */
  readonly notes: Map<EntryId, Standing>;
  /** What the clock had gained by steps from each entry number on, in order of number. */
  steps: readonly { readonly fromSeq: number; readonly gainedMs: number }[];
  movedByMs: number;
}

export function startPlaces(): Places {
  const recorders = new Map<RecorderId, Recorder>();
  let opening: Entry | null = null;

  const recorder = (rec: RecorderId): Recorder => {
    const known = recorders.get(rec) ?? { notes: new Map(), steps: [], movedByMs: 0 };
    recorders.set(rec, known);
    return known;
  };

  const ownTimeOf = (standing: Standing): EpochMs => {
    const { effective, entry } = standing;
    if (effective.kind !== 'unrecognised' && effective.body.at !== undefined) {
      return effective.body.at;
    }
    return laterBy(touchOf(effective), -gainedAt(recorder(entry.rec).steps, entry.seq));
  };

  const placeOf = (standing: Standing): EpochMs =>
    laterBy(ownTimeOf(standing), recorder(standing.entry.rec).movedByMs);

  const learn = (changed: Iterable<Standing>): ReadonlyMap<RecorderId, number> => {
    const stepped = new Map<RecorderId, number>();
    let offsetsChanged = false;
    for (const standing of changed) {
      const { entry } = standing;
      const own = recorder(entry.rec);
      if (isNote(entry) && (standing.standing === 'stands' || own.notes.has(entry.id))) {
        own.notes.set(entry.id, standing);
        offsetsChanged = true;
        if (entry.kind === 'deviceNoted') {
          stepped.set(entry.rec, Math.min(entry.seq, stepped.get(entry.rec) ?? entry.seq));
        }
      }
      if (opening === null || isOpenedBefore(entry, opening)) {
        offsetsChanged = offsetsChanged || opening?.rec !== entry.rec;
        opening = entry;
      }
    }
    for (const rec of stepped.keys()) {
      recorder(rec).steps = stepsOf([...recorder(rec).notes.values()]);
    }
    if (!offsetsChanged) {
      return stepped;
    }
    return new Map([...stepped, ...moveOnto().map((rec): [RecorderId, number] => [rec, 1])]);
  };

  /** Moves every recorder onto the one that opened the flight; gives those whose move changed. */
  const moveOnto = (): readonly RecorderId[] => {
    const reference = opening === null ? null : offsetOf(recorder(opening.rec), null);
    const moved: RecorderId[] = [];
    for (const [rec, own] of recorders) {
      const offset = reference === null ? null : offsetOf(own, reference.clock);
      const movedByMs =
        rec === opening?.rec || reference === null || offset === null
          ? 0
          : Math.round(reference.offsetMs - offset.offsetMs);
      if (movedByMs !== own.movedByMs) {
        own.movedByMs = movedByMs;
        moved.push(rec);
      }
    }
    return moved;
  };

  /** Mean of what the tablet showed less what the master showed, over the hacks on one master clock. */
  const offsetOf = (
    own: Recorder,
    clock: string | null,
  ): { readonly clock: string; readonly offsetMs: number } | null => {
    const hacks = [...own.notes.values()]
      .sort((a, b) => compareEntries(a.entry, b.entry))
      .flatMap((standing) =>
        standing.standing === 'stands' && standing.effective.kind === 'timeHackTaken'
          ? [{ body: standing.effective.body, shown: ownTimeOf(standing) }]
          : [],
      );
    const master = clock ?? hacks[0]?.body.masterClock;
    const offsets = hacks
      .filter((hack) => hack.body.masterClock === master)
      .map((hack) => hack.shown - hack.body.master);
    const sum = offsets.reduce((total, offsetMs) => total + offsetMs, 0);
    return master === undefined || offsets.length === 0
      ? null
      : { clock: master, offsetMs: sum / offsets.length };
  };

  return { learn, placeOf, ownTimeOf };
}

/** First contact: of the first digit for what is nothing but a reading, of the touch for everything else. */
function touchOf(entry: Entry): EpochMs {
  switch (entry.kind) {
    case 'fuelRead':
    case 'airDataRead':
    case 'fuelStateRead':
    case 'probesRead':
    case 'rakeRead':
      return entry.body.glance ?? entry.wall;
    default:
      return entry.wall;
  }
}

function isNote(entry: Entry): boolean {
  return (
    entry.kind === 'timeHackTaken' ||
    (entry.kind === 'deviceNoted' && entry.body.what === 'clockStepped')
  );
}

/** An opening of the flight goes before anything else, and otherwise the first entry in order of writing. */
function isOpenedBefore(entry: Entry, other: Entry): boolean {
  const opens = entry.kind === 'flightOpened';
  const otherOpens = other.kind === 'flightOpened';
  return opens === otherOpens ? compareEntries(entry, other) < 0 : opens;
}

/** A step is noted after it happened, so it counts from its own note on; one that cannot be milliseconds counts nothing. */
function stepsOf(notes: readonly Standing[]): Recorder['steps'] {
  const steps: { readonly fromSeq: number; readonly gainedMs: number }[] = [];
  let gainedMs = 0;
  for (const { entry, effective, standing } of notes.toSorted(
    (a, b) => a.entry.seq - b.entry.seq,
  )) {
    const stepMs = effective.kind === 'deviceNoted' ? Math.round(effective.body.stepMs ?? 0) : 0;
    if (standing === 'stands' && stepMs !== 0 && Number.isSafeInteger(gainedMs + stepMs)) {
      gainedMs += stepMs;
      steps.push({ fromSeq: entry.seq, gainedMs });
    }
  }
  return steps;
}

/** By halving: a foreign file may hold as many steps as entries. */
function gainedAt(steps: Recorder['steps'], seq: number): number {
  let low = 0;
  let high = steps.length;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if ((steps[middle]?.fromSeq ?? Infinity) <= seq) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return steps[low - 1]?.gainedMs ?? 0;
}
