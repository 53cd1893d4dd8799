import { FILE_BYTES_MAX } from '../../../file/limits.ts';
import { readTimeline } from '../../../file/readTimeline.ts';
import { wholeRefusalWords } from '../../../file/words.ts';
import type { FlightId } from '../../../record/brand.ts';
import type { Entry } from '../../../record/entry.ts';
import { viewOf, type FlightView } from '../../../record/flight.ts';
import { union } from '../../../record/merge.ts';

/** A flight that lies in files: looked at, never taken in. */
export interface FlightInFiles {
  readonly flight: FlightId;
  readonly files: readonly string[];
  readonly view: FlightView;
}

export interface FlightsRead {
  readonly flights: readonly FlightInFiles[];
  /** A sentence for each file of which nothing, or not all, could be used. */
  readonly said: readonly string[];
}

const TIMELINE_NAME = /\.(jsonl|json|txt)$/i;

/**
 * Reads timeline files, each flight by itself: files of one flight make one view, files of two never do. In a folder
 * other files lie beside them; those are passed over by name.
 */
export async function readFlights(files: readonly File[]): Promise<FlightsRead> {
  const said: string[] = [];
  const found = new Map<FlightId, { files: string[]; entries: readonly Entry[] }>();
  for (const file of files.filter(({ name }) => TIMELINE_NAME.test(name))) {
    if (file.size > FILE_BYTES_MAX) {
      said.push(`${file.name}: ${wholeRefusalWords({ reason: 'tooLarge', bytes: file.size })}`);
      continue;
    }
    const reading = readTimeline(new TextDecoder().decode(await file.arrayBuffer()), file.size);
    if (reading.kind === 'refused') {
      said.push(`${file.name}: ${wholeRefusalWords(reading.refusal)}`);
      continue;
    }
    const asides = reading.refused.length + reading.findings.length;
    if (asides > 0) said.push(`${file.name}: read, with ${asides} doubts; Files says which.`);
    const [first] = reading.entries;
    if (first === undefined) continue;
    const before = found.get(first.flight);
    found.set(first.flight, {
      files: [...(before?.files ?? []), file.name],
      entries: union(before?.entries ?? [], reading.entries),
    });
  }
  if (found.size === 0 && said.length === 0) {
    said.push('No timeline file was among them: choose files that end in .jsonl.');
  }
  return {
    flights: [...found].map(([flight, one]) => ({
      flight,
      files: one.files,
      view: viewOf(one.entries),
    })),
    said,
  };
}
