import type { Entry, Reading } from '../../src/record/entry.ts';
import type { FlightView } from '../../src/record/flight.ts';
import type { StandingEntry } from '../../src/record/flightState.ts';
import type { KnownKind } from '../../src/record/kinds.ts';
import { lineOfId, type FlownStep } from '../flights/scriptSteps.ts';

/** A touch is the time of its event. */
const TOUCH_MS = 20;
/** A form is written when its key is released, a late time has no tenths, a second touch comes after the first. */
const ROUGH_MS = 1000;

const BY_FORM: readonly KnownKind[] = [
  'briefHeld',
  'calibrationChecked',
  'preflightDone',
  'sampleHandedOver',
  'panelsInspected',
  'squawkRaised',
  'labResultReceived',
  'logSigned',
  'entryAmended',
];

/** What of the steps the record does not say, in words; nothing when each has its entry with the same facts. */
export function missingFacts(view: FlightView, steps: readonly FlownStep[]): readonly string[] {
  const found = new Map<number, readonly StandingEntry[]>();
  const missing: string[] = [];
  for (const step of steps) {
    const isOnlyTouch = steps.filter(({ line }) => line === step.line).length === 1;
    const isExact = isOnlyTouch && step.atMs === step.writtenMs && !BY_FORM.includes(step.kind);
    const fault = faultOf(view, step, isExact ? TOUCH_MS : ROUGH_MS, found);
    if (fault !== null) {
      missing.push(`line ${step.line}, ${step.kind}: ${fault}`);
    }
  }
  return missing;
}

function faultOf(
  view: FlightView,
  step: FlownStep,
  within: number,
  found: Map<number, readonly StandingEntry[]>,
): string | null {
  const body = withoutUndefined(step.body);
  const near = view.standing.filter((each) => isNear(each, step, within));
  switch (step.kind) {
    case 'fuelRead':
    case 'fuelStateRead': {
      const glance = view.standing.filter(
        ({ entry }) =>
          entry.kind !== 'unrecognised' &&
          entry.body.glance !== undefined &&
          Math.abs(entry.body.glance - step.writtenMs) <= TOUCH_MS,
      );
      found.set(step.line, glance);
      return difference(rowsOf(glance.map(({ entry }) => entry)), readingRows(body));
    }
    case 'entryAmended':
    case 'entryWithdrawn':
      return changeFault(view, step, found.get(lineOfId(targetOf(body))) ?? []);
    default: {
      // The time was compared already; the heads of a signature are of the record and not of the script.
      const { at: _at, heads: _heads, ...facts } = { at: 0, heads: [], ...body };
      const faults = near.map(({ effective }) => difference(ownBody(effective), facts));
      const match = faults.indexOf(null);
      const [first] = near;
      const hit = match < 0 ? undefined : near[match];
      if (hit !== undefined) {
        found.set(step.line, [hit]);
        return null;
      }
      return first === undefined ? 'no such entry at that time' : (faults[0] ?? null);
    }
  }
}

/** A withdrawal or an amendment says what it is about by the entries that the line's touches made. */
function changeFault(
  view: FlightView,
  step: FlownStep,
  targets: readonly StandingEntry[],
): string | null {
  const body = withoutUndefined(step.body);
  const ids = targets.map(({ entry }) => entry.id);
  const made = view.standing.filter(
    ({ effective }) =>
      effective.kind === step.kind &&
      'target' in effective.body &&
      ids.includes(effective.body.target),
  );
  const said = made.filter(({ effective }) => {
    const { target: _t, changes: _c, replaces: _r, code: _code, ...words } = withoutUndefined(body);
    return difference(ownBody(effective), words) === null;
  });
  const changes = Array.isArray(body['changes']) ? body['changes'] : [];
  if (said.length < Math.max(1, changes.length)) {
    return `said ${made.map(({ effective }) => JSON.stringify(ownBody(effective))).join(' ')}`;
  }
  const stands = rowsOf(targets.map(({ effective }) => effective));
  const wrong = changes.filter(({ field, new: value }) => {
    const instrument = /^readings\.(.+)\.value$/.exec(field)?.[1] ?? '';
    return stands[instrument]?.split(' ')[0] !== String(value);
  });
  return wrong.length === 0 ? null : `stands as ${JSON.stringify(stands)}`;
}

function isNear({ entry, at }: StandingEntry, step: FlownStep, within: number): boolean {
  return entry.kind === step.kind && Math.abs(at - step.atMs) <= within;
}

/** Where a body does not say what is wanted; it may say more. */
function difference(said: unknown, wanted: unknown, path = ''): string | null {
  if (Array.isArray(wanted)) {
    const list = Array.isArray(said) ? said : [];
    if (path === '.signedBy') {
      const inOrder = (names: readonly unknown[]): readonly string[] =>
        names.map(String).toSorted((a, b) => a.localeCompare(b));
      return difference(inOrder(list), inOrder(wanted), '.signedByAll');
    }
    return path.endsWith('readings')
      ? difference(rows(list), rows(wanted), `${path}*`)
      : list.length === wanted.length
        ? first(wanted.map((each, index) => difference(list[index], each, `${path}.${index}`)))
        : `${path}: ${JSON.stringify(said)} is not ${JSON.stringify(wanted)}`;
  }
  if (isObject(wanted)) {
    const held = isObject(said) ? said : {};
    return first(
      Object.entries(wanted).map(([key, value]) => difference(held[key], value, `${path}.${key}`)),
    );
  }
  const isSame = path === '.method' ? String(said).startsWith(String(wanted)) : said === wanted;
  return isSame ? null : `${path}: ${JSON.stringify(said)} is not ${JSON.stringify(wanted)}`;
}

function first(faults: readonly (string | null)[]): string | null {
  return faults.find((fault) => fault !== null) ?? null;
}

/** Readings by instrument, whatever way each was keyed: `1220 lb/h`. */
function rows(readings: readonly unknown[]): Readonly<Record<string, string>> {
  return Object.fromEntries(
    readings.flatMap((row) =>
      isObject(row) && 'value' in row
        ? [[String(row['instrument']), `${String(row['value'])} ${String(row['unit'])}`]]
        : [],
    ),
  );
}

function rowsOf(entries: readonly Entry[]): Readonly<Record<string, string>> {
  return rows(
    entries.flatMap((entry): readonly Reading[] =>
      entry.kind === 'unrecognised' ? [] : (entry.body.readings ?? []),
    ),
  );
}

function readingRows(body: Readonly<Record<string, unknown>>): Readonly<Record<string, string>> {
  const read = body['readings'];
  return rows(Array.isArray(read) ? read : []);
}

function targetOf(body: Readonly<Record<string, unknown>>): Parameters<typeof lineOfId>[0] {
  return JSON.parse(JSON.stringify(body['target']));
}

function ownBody(entry: Entry): unknown {
  return entry.kind === 'unrecognised' ? {} : entry.body;
}

function withoutUndefined(body: object): Readonly<Record<string, unknown>> {
  return JSON.parse(JSON.stringify(body));
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
