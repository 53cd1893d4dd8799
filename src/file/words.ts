import { FILE_BYTES_MAX, FILE_LINES_MAX } from './limits.ts';
import type { FileFinding, LineRefusal, WholeRefusal } from './timelineReading.ts';
import { unreachable } from '../record/entry.ts';
import { TIMELINE_FORMAT } from './timelineFile.ts';

/** Why nothing of a file was opened, and what to do. */
export function wholeRefusalWords(refusal: WholeRefusal): string {
  switch (refusal.reason) {
    case 'empty':
      return 'The file is empty. Nothing was opened. Look for another copy.';
    case 'tooLarge':
      return `The file has ${mebibytes(refusal.bytes)} MiB; a timeline file has at most ${mebibytes(FILE_BYTES_MAX)} MiB. Nothing was opened.`;
    case 'tooManyLines':
      return `The file has ${refusal.lines} lines; a timeline file has at most ${FILE_LINES_MAX}. Nothing was opened.`;
    case 'notTimeline':
      return 'Line 1 does not say that this is a flight timeline file. Nothing was opened. Choose a file that ends in .jsonl.';
    case 'newerFormat':
      return `The file is format ${refusal.found}; this app reads format ${TIMELINE_FORMAT}. Nothing was opened. Update the app on the ground, then open it again.`;
    case 'noEntry':
      return refusal.refused.length === 0
        ? 'The file has no entry after its first line. Nothing was opened. Look for another copy.'
        : `None of the ${refusal.refused.length} lines after the first could be used. Nothing was opened. Look for another copy.`;
    default:
      return unreachable(refusal);
  }
}

/** Why one line was put aside. The line's text stays readable beside the sentence. */
export function lineRefusalWords({ line, fault }: LineRefusal): string {
  const put = `Line ${line} was put aside:`;
  switch (fault.reason) {
    case 'tooLong':
      return `${put} it is longer than ${fault.limitBytes / 1024} KiB.`;
    case 'tooDeep':
      return `${put} it is nested too deeply to be an entry.`;
    case 'notJson':
      return `${put} it is cut or not JSON.`;
    case 'forbiddenKey':
      return `${put} it has a field named ${fault.key}, which no entry has.`;
    case 'notCanonical':
      return `${put} it is not spelt as the record spells it (spaces, order of fields, or a field given twice).`;
    case 'newerVersion':
      return `${put} it was written by a newer app (entry version ${fault.found}). Update the app on the ground, then open the file again.`;
    case 'envelopeUnfit':
      return `${put} ${fault.field === '' ? 'it is not an entry' : `its field ${fault.field} is missing or unfit`}.`;
    case 'bodyUnfit':
      return `${put} its field ${fault.field} is missing or unfit for ${fault.kind}.`;
    case 'altered':
      return `${put} it was changed after it was written (entry ${fault.seq} of recorder ${short(fault.rec)}; the fingerprint named after it differs).`;
    case 'outOfPlace':
      return `${put} it was changed after it was written (it says that it is entry ${fault.seq} of recorder ${short(fault.rec)}; other lines contradict that).`;
    case 'otherFlight':
      return `${put} it belongs to another flight (${short(fault.found)}, not ${short(fault.expected)}).`;
    case 'afterEnd':
      return `${put} it stands after the last line of the file.`;
    default:
      return unreachable(fault);
  }
}

/** What is doubtful about a file whose entries were kept. */
export function findingWords(finding: FileFinding): string {
  switch (finding.kind) {
    case 'noEnd':
      return `The file is cut: its last line is missing. ${entryCount(finding.entries)} recovered; how many followed cannot be told.`;
    case 'countDiffers':
      return `The last line speaks of ${entryCount(finding.said)}; ${finding.found} could be read.`;
    case 'headMissing':
      return `Recorder ${short(finding.rec)} wrote at least ${entryCount(finding.seq)}; the last one read is ${finding.lastFound}.`;
    case 'orderDiffers':
      return 'The lines do not stand as they were saved (moved, repeated or joined by hand). Every entry was still read.';
    case 'noStart':
      return 'The first line, which says what the file is, is missing or damaged. The entries were still read.';
    case 'endDiffers':
      return 'The last line of the file was changed after it was saved. The entries do not depend on it and were read.';
    case 'repeated':
      return finding.lines.length === 1
        ? `Line ${finding.lines[0]} repeats an entry and counts once.`
        : `Lines ${finding.lines.join(', ')} repeat entries and count once.`;
    case 'headerDiffers':
      return finding.found === ''
        ? `Line 1 gives the ${finding.field} as “${finding.said}”; the entry that would say so is missing.`
        : `Line 1 gives the ${finding.field} as “${finding.said}”; the entries say “${finding.found}”, and that holds.`;
    case 'gap':
      return finding.fromSeq === finding.toSeq
        ? `Entry ${finding.fromSeq} of recorder ${short(finding.rec)} is missing. Open another copy to fill the gap.`
        : `Entries ${finding.fromSeq} to ${finding.toSeq} of recorder ${short(finding.rec)} are missing. Open another copy to fill the gap.`;
    case 'fork':
      return `Recorder ${short(finding.rec)} was used twice: entry ${finding.seq} exists in ${finding.ids.length} versions. All are kept.`;
    case 'prevMismatch':
      return `Entry ${finding.seq} of recorder ${short(finding.rec)} does not follow on the entry before it. Both are kept.`;
    case 'flightMismatch':
      return `Recorder ${short(finding.rec)} wrote in more than one flight. Its entries are kept.`;
    case 'ordNotRising':
      return `Entry ${finding.seq} of recorder ${short(finding.rec)} is out of order with the entry before it. Both are kept.`;
    default:
      return unreachable(finding);
  }
}

function entryCount(count: number): string {
  return count === 1 ? '1 entry' : `${count} entries`;
}

function mebibytes(bytes: number): number {
  return Math.ceil(bytes / (1024 * 1024));
}

/** The first eight digits: enough to tell recorders apart and to read aloud. */
function short(id: string): string {
  return id.slice(0, 8);
}
