import { join } from 'node:path';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import { recorderId } from '../../src/record/brand.ts';
import { viewOf } from '../../src/record/flight.ts';
import { chainOf } from '../file/smallFlight.ts';
import { scriptA } from '../flights/flightA.ts';
import { entriesOfScript } from '../flights/scriptToEntries.ts';
import type { Scribe } from './scribe.ts';
import { openFile, takeIn } from './timelineFiles.ts';

/** A place of Debrief that one touch does not reach, and what it is called in a report. */
export interface DebriefStop {
  readonly name: string;
  readonly go: (scribe: Scribe) => Promise<void>;
}

const TRACE = join(import.meta.dirname, '../flights/scripts/flight-a-recorder.csv.gz');

/** The recorder's trace of the demo flight, opened; `recorder-read` is to be touched next. */
export const chooseTrace: DebriefStop = {
  name: 'the columns of a recorder file',
  go: async (scribe) => {
    await scribe.tap('tab-recorder');
    const asking = scribe.tablet.page.waitForEvent('filechooser');
    await scribe.tap('recorder-open');
    await (await asking).setFiles(TRACE);
    await scribe.tablet.shown('recorder-read');
  },
};

/** The trace read and tied to the clock, every run held against it. */
export const readTrace: DebriefStop = {
  name: 'an opened recording',
  go: async (scribe) => {
    await scribe.tap('recorder-read');
    await scribe.tablet.page.getByText('runs agree within both doubts').waitFor();
  },
};

export const dayOfYearAxis: DebriefStop = {
  name: 'the axis by day of year',
  go: async (scribe) => {
    await scribe.tap('tab-timeline');
    await scribe.tablet.page.locator('[data-act="axis-time"]').selectOption('dayOfYear');
  },
};

/** A second tablet saw the first cloud of the demo flight eight seconds after the scribe: its file is taken in. */
export const seenByTwo: DebriefStop = {
  name: 'two observations side by side',
  go: async (scribe) => {
    const scribes = entriesOfScript(scriptA);
    const cloud = viewOf(scribes).standing.find(
      ({ entry, standing }) => entry.kind === 'moistureEntered' && standing === 'stands',
    );
    const [first] = scribes;
    if (first === undefined || cloud === undefined) {
      throw new RangeError('flight A must enter cloud');
    }
    const engineers = chainOf(
      [
        { kind: 'recorderJoined', body: { device: 'engineer tablet', purpose: 'inFlight' } },
        { kind: 'moistureEntered', body: { look: 'thin' } },
      ],
      {
        flight: first.flight,
        rec: recorderId('b2'.repeat(16)),
        startMs: cloud.at + 7_000,
        author: { author: 'E2', role: 'wing engineer, left' },
      },
    );
    await openFile(scribe, 'engineer.jsonl', writeTimeline([...scribes, ...engineers]));
    await takeIn(scribe);
    await scribe.tap('tab-audit');
    await scribe.tap('audit-pairs');
    await scribe.tap('pair-decide');
  },
};
