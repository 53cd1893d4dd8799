import type { FlightSheet } from './sheet.ts';
import {
  dimensionWords,
  doubledIds,
  doubt,
  isCalendarDate,
  positiveMeasure,
  withinSpan,
  type SheetDoubt,
} from './sheetDoubt.ts';
import { dimensionOf, inBase } from './sheetMeasure.ts';

/** Points farther off in Mach are another condition; the gate of a live baseline is as wide. */
const MACH_NEAR = 0.005;

/** Who stands for this sheet: a revision that nobody signed may be flown, and the list says so. */
export function* revisionDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const { revision, revisions = [] } = sheet;
  const seen = new Set<string>();
  for (const [index, one] of revisions.entries()) {
    if (seen.has(one.revision)) {
      yield doubt(
        `revisions.${index}.revision`,
        `Revision ${one.revision} is signed twice: give the later one a name of its own.`,
      );
    }
    seen.add(one.revision);
    if (one.signedBy.trim() === '') {
      yield doubt(`revisions.${index}.signedBy`, `Revision ${one.revision}: say who signed it.`);
    }
    if (!isCalendarDate(one.signedOn)) {
      yield doubt(
        `revisions.${index}.signedOn`,
        `Revision ${one.revision}: signed on ${one.signedOn} is not a date, YYYY-MM-DD.`,
      );
    }
  }
  if (revision.trim() !== '' && !seen.has(revision)) {
    yield doubt('revision', `Revision ${revision}: nobody has signed it.`);
  }
}

/** Points of earlier flights: one wrong unit here would lean on every later figure. */
export function* archiveDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const { baselineArchive: points = [], condition } = sheet;
  yield* doubledIds('baselineArchive', 'Archived point', points);
  for (const [index, point] of points.entries()) {
    const path = `baselineArchive.${index}` as const;
    const name = `Archived point ${point.id}`;
    if (point.flight.trim() === '') yield doubt(`${path}.flight`, `${name}: say which flight.`);
    if (point.mach === 0) {
      yield doubt(`${path}.mach`, `${name}, Mach: not given yet.`);
    } else {
      yield* withinSpan(`${path}.mach`, `${name}, Mach`, point.mach, [0.15, 0.95]);
    }
    yield* positiveMeasure(
      `${path}.weightOverDelta`,
      `${name}, weight over pressure ratio`,
      point.weightOverDelta,
      'mass',
    );
    yield* positiveMeasure(`${path}.referredFlow`, `${name}, flow`, point.referredFlow, 'flow');
    const { standardUncertainty: doubtOf } = point;
    if (doubtOf === undefined) {
      yield doubt(`${path}.standardUncertainty`, `${name}: doubt of its flow is not given.`);
    } else if (dimensionOf(doubtOf.unit) !== 'flow') {
      yield doubt(
        `${path}.standardUncertainty`,
        `${name}, doubt: ${doubtOf.unit} is not ${dimensionWords('flow')}.`,
      );
    } else if (!(doubtOf.value > 0)) {
      yield doubt(`${path}.standardUncertainty`, `${name}: a doubt has to be above zero.`);
    }
  }
  const atMach = points.filter((point) => Math.abs(point.mach - condition.mach) <= MACH_NEAR);
  if (points.length > 0 && condition.mach > 0 && atMach.length < points.length) {
    const off = points.length - atMach.length;
    yield doubt(
      'baselineArchive',
      `${off} of ${points.length} archived points ${off === 1 ? 'lies' : 'lie'} more than ${MACH_NEAR} from the Mach of the cards and ${off === 1 ? 'is' : 'are'} not fitted.`,
    );
  }
  const flows = atMach.map((point) => inBase(point.referredFlow)).filter((flow) => flow !== null);
  const low = Math.min(...flows);
  if (flows.length > 1 && low > 0 && Math.max(...flows) > 2 * low) {
    yield doubt(
      'baselineArchive',
      'Archived flows differ by more than a factor of two: check units and how many engines they count.',
    );
  }
}
