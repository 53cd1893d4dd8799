import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { Clock, Journal } from '../../journal/journal.ts';
import type { TypedTime } from './fields/typed.ts';
import type { TimeBase } from './timeBase.ts';
import type { AxisControl } from './useAxisTime.ts';
import type { Writer } from './useWriter.ts';

/** What every panel of Debrief is handed: the record as it stands, and the one way to write to it. */
export interface Desk {
  readonly view: FlightView;
  readonly base: TimeBase;
  /** How times are said while the timeline is in view; the papers keep UTC. */
  readonly axis: AxisControl;
  readonly journal: Journal;
  readonly clock: Clock;
  readonly writer: Writer;
  readonly selected: EntryId | null;
  readonly select: (entry: EntryId | null) => void;
}

/** Typed times of this tablet's own entries, read near `near` (as shown). */
export function typedTimeOf(desk: Desk, near: EpochMs): TypedTime {
  const rec = desk.journal.recorder();
  return {
    near,
    shown: (raw) => (rec === null ? raw : desk.base.shown(raw, rec)),
    raw: (shown) => desk.base.raw(shown, rec),
  };
}

/** Why nothing can be written here, or null when it can. */
export function whyReadOnly(journal: Journal): string | null {
  const { writer } = journal.status();
  switch (writer.kind) {
    case 'writing':
      return null;
    case 'anotherWindow':
      return 'Another window is writing to this flight; this one only reads.';
    case 'readOnly':
      return writer.because === 'replay'
        ? 'A replay is read only.'
        : 'This flight came from a file and is read only here.';
  }
}
