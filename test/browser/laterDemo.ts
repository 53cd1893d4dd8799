import { writeTimeline } from '../../src/file/timelineFile.ts';
import { laterFlight } from '../analysis/laterFlight.ts';
import { scriptA } from '../flights/flightA.ts';
import { entriesOfScript } from '../flights/scriptToEntries.ts';

/** The demonstration flown again a week later, as a file from another tablet. */
export function demoTimelineLater(): string {
  return writeTimeline(laterFlight(entriesOfScript(scriptA), { days: 7, hex: 'b' }));
}
