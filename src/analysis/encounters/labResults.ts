import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';

const LITRES_PER_M3 = 1000;

/** What a laboratory wrote about a sample; null is not given, never zero. */
export interface LabResult {
  readonly sample: string;
  readonly meanSizeM: number | null;
  readonly numberPerM3: number | null;
  readonly method: string | null;
  readonly analyst: string | null;
  readonly at: EpochMs;
  readonly by: EntryId;
}

/** Every result that stands, in the order in which they were received. */
export function labResults(view: FlightView): readonly LabResult[] {
  return view.standing.flatMap(({ effective, standing, at, entry }) => {
    if (standing !== 'stands' || effective.kind !== 'labResultReceived') return [];
    const { sample, meanSizeMicrometre, numberPerLitre, method, analyst } = effective.body;
    return [
      {
        sample,
        meanSizeM: meanSizeMicrometre === undefined ? null : meanSizeMicrometre * 1e-6,
        numberPerM3: numberPerLitre === undefined ? null : numberPerLitre * LITRES_PER_M3,
        method: method ?? null,
        analyst: analyst ?? null,
        at,
        by: entry.id,
      },
    ];
  });
}
