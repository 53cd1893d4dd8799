import * as v from 'valibot';
import { canonicalJson } from '../record/canonical.ts';
import { hashLine } from '../record/chain.ts';
import { flightSheetSchema, type FlightSheet } from '../record/sheet.ts';
import { withoutBasis } from '../record/sheetRevision.ts';

/** A flight sheet as one file: for another tablet, for the ground, for a drawer. Plain text, JSON, any editor opens it. */

const SHEET_FORMAT = 'kneeline flight sheet';
const SHEET_VERSION = 1;
/** Far above any sheet that a person could fill in. */
const SHEET_BYTES_MAX = 8 * 1024 * 1024;

export type SheetReading =
  | {
      readonly kind: 'read';
      readonly sheet: FlightSheet;
      /** What is odd about the file without keeping it from being read. */
      readonly findings: readonly SheetFinding[];
    }
  | { readonly kind: 'refused'; readonly because: SheetRefusal };

/** `changedOutside`: its text was edited since it was written. `unknownFields`: this release would leave some out. */
export type SheetFinding = 'changedOutside' | 'unknownFields';

export type SheetRefusal =
  | { readonly reason: 'tooLarge' | 'notJson' | 'notASheetFile' }
  | { readonly reason: 'newerVersion'; readonly found: number }
  | { readonly reason: 'badField'; readonly path: string };

export function writeSheetFile(sheet: FlightSheet): string {
  const flown = withoutBasis(sheet);
  return `${JSON.stringify(
    { format: SHEET_FORMAT, version: SHEET_VERSION, sha256: digestOf(flown), sheet: flown },
    null,
    1,
  )}\n`;
}

/** Name of the file: the mark, the title and the revision, in letters that any file system takes. */
export function sheetFileName({ aircraft, title, revision }: FlightSheet): string {
  const parts = [aircraft.mark, title, `rev ${revision}`]
    .map((part) =>
      part
        .normalize('NFKD')
        .replace(/[^\p{L}\p{N}]+/gu, '-')
        .replace(/^-|-$/g, ''),
    )
    .filter((part) => part !== '');
  return `flight-sheet-${parts.join('-').toLowerCase().slice(0, 80)}.json`;
}

/** @param bytes size of the file as it lies on disk */
export function readSheetFile(text: string, bytes: number): SheetReading {
  if (bytes > SHEET_BYTES_MAX) return refused({ reason: 'tooLarge' });
  const file = parsed(text);
  if (file === undefined) return refused({ reason: 'notJson' });
  const head = v.safeParse(headSchema, file);
  if (!head.success) return refused({ reason: 'notASheetFile' });
  const { version, sha256, sheet: raw } = head.output;
  if (version > SHEET_VERSION) return refused({ reason: 'newerVersion', found: version });
  const read = v.safeParse(flightSheetSchema, raw);
  if (!read.success) {
    const path = v.getDotPath(read.issues[0]) ?? '';
    return refused({ reason: 'badField', path });
  }
  const findings: SheetFinding[] = [];
  if (digestOf(raw) !== sha256) findings.push('changedOutside');
  if (canonicalJson(raw) !== canonicalJson(read.output)) findings.push('unknownFields');
  return { kind: 'read', sheet: read.output, findings };
}

export function sheetRefusalWords(refusal: SheetRefusal): string {
  switch (refusal.reason) {
    case 'tooLarge':
      return 'This file is too large for a flight sheet. Choose the file that was saved from a flight sheet.';
    case 'notJson':
      return 'This file is cut off or is no flight sheet. Save it again on the other tablet.';
    case 'notASheetFile':
      return 'This is no flight sheet file. A timeline file is opened on Debrief.';
    case 'newerVersion':
      return `This file is of version ${refusal.found}; this tablet reads up to ${SHEET_VERSION}. Update the app on the ground.`;
    case 'badField':
      return `The field ${refusal.path} holds what no flight sheet can hold. Nothing was taken; mend it where it was written.`;
  }
}

export function sheetFindingWords(finding: SheetFinding): string {
  return finding === 'changedOutside'
    ? 'It was changed outside the app after it was saved: its checksum does not fit.'
    : 'It holds fields that this release does not know; they are left out of what is kept here.';
}

const headSchema = v.object({
  format: v.literal(SHEET_FORMAT),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  sha256: v.string(),
  sheet: v.unknown(),
});

function digestOf(sheet: unknown): string {
  return hashLine(canonicalJson(sheet));
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return undefined;
  }
}

function refused(because: SheetRefusal): SheetReading {
  return { kind: 'refused', because };
}
