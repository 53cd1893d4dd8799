import type { EntryId } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';

/** `[58]`, or `[5c21:58]` where several recorders wrote: what an entry is called on paper. */
export function entryLabel(view: FlightView, id: EntryId): string {
  const entry = view.byId(id)?.entry;
  if (entry === undefined) return `[${id.slice(0, 8)}]`;
  const isAlone = view.standing.every((one) => one.entry.rec === entry.rec);
  return isAlone ? `[${entry.seq}]` : `[${entry.rec.slice(0, 4)}:${entry.seq}]`;
}
