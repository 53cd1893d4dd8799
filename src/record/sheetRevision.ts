import * as v from 'valibot';
import { flightSheetSchema, type FlightSheet } from './sheet.ts';
import { sheetChanges } from './sheetDiff.ts';

/** The sheet that this one is held against, and what changed since; null where it is held against none. */
export function changesSinceBasis(
  sheet: FlightSheet,
): { readonly since: string; readonly changes: readonly string[] } | null {
  const { basis } = sheet;
  const before = basis === undefined ? null : readBasis(basis.text);
  return basis === undefined || before === null
    ? null
    : { since: basis.revision, changes: sheetChanges(before, sheet) };
}

/** From now on the sheet is held against `before`. */
export function withBasis(sheet: FlightSheet, before: FlightSheet): FlightSheet {
  const text = JSON.stringify(withoutBasis(before));
  return { ...sheet, basis: { revision: before.revision, text } };
}

/** As it goes into a record: what it was held against stays on the ground. */
export function withoutBasis(sheet: FlightSheet): FlightSheet {
  const { basis: _ground, ...flown } = sheet;
  return flown;
}

/** Whether somebody signed this revision and nothing in it changed since. */
export function isSigned(sheet: FlightSheet): boolean {
  const held = changesSinceBasis(sheet);
  const isNamed = (sheet.revisions ?? []).some((one) => one.revision === sheet.revision);
  return isNamed && held !== null && held.since === sheet.revision && held.changes.length === 0;
}

/** The sheet with its present revision signed; what changed since the revision before goes with the name. */
export function signedBy(
  sheet: FlightSheet,
  given: { readonly person: string; readonly today: string },
): FlightSheet {
  const held = changesSinceBasis(sheet);
  const revision = {
    revision: sheet.revision,
    signedBy: given.person,
    signedOn: given.today,
    changes: (held?.changes ?? []).map((words) => words.slice(0, LONGEST_CHANGE)),
  };
  const signed = { ...sheet, revisions: [...(sheet.revisions ?? []), revision] };
  return withBasis(signed, signed);
}

const LONGEST_CHANGE = 2000;

/** A to B, Z to AA, 3 to 4; any other name gets a 2 after it. */
export function nextRevision(revision: string): string {
  if (/^\d+$/.test(revision)) return String(Number(revision) + 1);
  if (!/^[A-Z]+$/.test(revision)) return `${revision}2`;
  const last = revision.slice(-1);
  const first = revision.slice(0, -1);
  if (last !== 'Z') return `${first}${String.fromCharCode(last.charCodeAt(0) + 1)}`;
  return `${first === '' ? 'A' : nextRevision(first)}A`;
}

function readBasis(text: string): FlightSheet | null {
  try {
    const parsed = v.safeParse(flightSheetSchema, JSON.parse(text));
    return parsed.success ? parsed.output : null;
  } catch {
    return null;
  }
}
