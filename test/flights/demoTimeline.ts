import { writeTimeline } from '../../src/file/timelineFile.ts';
import { scriptA } from './flightA.ts';
import { entriesOfScript } from './scriptToEntries.ts';

/** The demo flight as the app ships it: `npm run demo` writes it to public/, a test holds the two together. */
export function demoTimeline(): string {
  return writeTimeline(entriesOfScript(scriptA));
}
