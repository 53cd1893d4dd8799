import type { Draft, Stamp } from '../../../record/entry.ts';
import { bodyFrom } from '../../../record/envelope.ts';
import { changedField } from '../../../record/fieldPath.ts';
import type { KnownKind } from '../../../record/kinds.ts';
import { bad, good, type Result } from '../../../record/result.ts';
import { fieldFormsOf, type FieldForm } from '../fields/fieldForms.ts';
import { valueOf, type TypedTime } from '../fields/typed.ts';

/** Kinds that a person may add after the fact; the record's own housekeeping is not among them. */
export const LATE_KINDS: readonly KnownKind[] = [
  'moistureEntered',
  'moistureExited',
  'samplerOpened',
  'samplerClosed',
  'laminarGained',
  'laminarLost',
  'probesRead',
  'panelStateCalled',
  'suctionUnitSwitched',
  'suctionTurnedOn',
  'suctionChanged',
  'suctionTurnedOff',
  'testPointStarted',
  'testPointEnded',
  'testPointInterrupted',
  'testPointTerminated',
  'conditionReached',
  'conditionLost',
  'coversReleased',
  'turnStarted',
  'turnEnded',
  'turbulenceEntered',
  'turbulenceExited',
  'throttleChanged',
  'fuelRead',
  'airDataRead',
  'fuelStateRead',
  'engineStarted',
  'engineShutDown',
  'blocksOff',
  'takeOffRolled',
  'liftedOff',
  'gearMoved',
  'levelledOff',
  'descentBegun',
  'touchedDown',
  'blocksOn',
  'photoFrameTaken',
  'pilotCommented',
  'engineerCalled',
  'stopCalled',
  'jokerReached',
  'bingoReached',
];

/** Fields that the form asks once for every late entry, not as a field of the kind. */
const ASKED_ANYWAY = new Set(['at', 'doubtS', 'basis', 'basisWords']);

export function lateFields(kind: KnownKind): readonly FieldForm[] {
  return fieldFormsOf(kind).filter(({ path }) => !ASKED_ANYWAY.has(path));
}

export type LateFault = { readonly path: string; readonly words: string };

/** The body that was typed, checked like any other; the fault names the field. */
export function lateBody(of: {
  readonly kind: KnownKind;
  readonly typed: ReadonlyMap<string, string>;
  readonly fixed: Readonly<Record<string, unknown>>;
  readonly time: TypedTime;
}): Result<Draft['body'], LateFault> {
  let body: unknown = of.fixed;
  for (const form of lateFields(of.kind)) {
    const read = valueOf(form, of.typed.get(form.path) ?? '', of.time);
    if (!read.ok) {
      return bad({ path: form.path, words: read.error });
    }
    if (read.value === null && form.isRequired) {
      return bad({ path: form.path, words: 'This is needed.' });
    }
    const changed = read.value === null ? good(body) : changedField(body, form.path, read.value);
    if (!changed.ok) {
      return bad({ path: form.path, words: 'This cannot be written so.' });
    }
    body = changed.value;
  }
  const read = bodyFrom(of.kind, body);
  return read.ok ? read : bad({ path: read.error, words: 'This cannot be written so.' });
}

/** A draft of a kind chosen by a person; the body must come from `lateBody` for that kind. */
export function lateDraft(kind: KnownKind, body: Draft['body'], stamp: Stamp): Draft {
  const candidate = { kind, body, stamp };
  if (!belongTogether(candidate)) {
    throw new RangeError(`a body must fit its kind, got ${kind}`);
  }
  return candidate;
}

/** Kind and body belong together because the schema was chosen by the kind; TypeScript cannot follow a lookup. */
function belongTogether(candidate: {
  readonly kind: KnownKind;
  readonly body: Draft['body'];
  readonly stamp: Stamp;
}): candidate is Draft {
  return bodyFrom(candidate.kind, candidate.body).ok;
}
