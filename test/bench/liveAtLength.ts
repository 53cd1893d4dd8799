import { liveEstimate } from '../../src/analysis/liveEstimate.ts';
import type { Draft, Entry, Reading } from '../../src/record/entry.ts';
import { startFlight, type Flight } from '../../src/record/flight.ts';
import { flightA, sealed, touchAt } from '../analysis/flights.ts';
import { bestOf, type Ratio } from './ratios.ts';

const SHORT = 50;
const LONG = 20_000;
/** One reading is over before a clock has moved. */
const READINGS = 100;
const RUNS = 5;

/** The live figure after one more reading, late in a long flight beside early in the same one. */
export function liveAtLength(): Ratio {
  const short = flightOf(SHORT);
  const long = flightOf(LONG);
  const kind = liveEstimate(long.flight.view()).kind;
  if (kind !== 'value' && kind !== 'struck') throw new RangeError(`no figure to time, got ${kind}`);
  return {
    promise: `live figure after one more reading at ${LONG} entries`,
    yardstick: `the same at ${SHORT} entries`,
    atMost: 1.5,
    ...bestOf(
      RUNS,
      () => readOn(long),
      () => readOn(short),
    ),
  };
}

interface Growing {
  readonly flight: Flight;
  /** Entries still to be read, in order. */
  readonly more: Entry[];
}

/** The worked flight up to its first suction-on point, then as many readings as it takes. */
function flightOf(count: number): Growing {
  const begun = flightA.entries.slice(0, SHORT);
  const last = begun.findLast((entry) => entry.kind === 'fuelRead');
  const tail = begun.at(-1);
  if (last?.kind !== 'fuelRead' || tail === undefined) throw new RangeError('no reading to repeat');
  const readings = last.body.readings ?? [];
  const added = sealed(
    Array.from({ length: count - SHORT + RUNS * READINGS }, (_, index) =>
      reading(readings, tail.wall + (index + 1) * 1000),
    ),
  );
  const flight = startFlight();
  flight.add([...begun, ...added.slice(0, count - SHORT)]);
  return { flight, more: added.slice(count - SHORT) };
}

function reading(readings: readonly Reading[], atMs: number): Draft {
  return { kind: 'fuelRead', body: { readings }, stamp: touchAt(atMs) };
}

function readOn({ flight, more }: Growing): void {
  for (const entry of more.splice(0, READINGS)) liveEstimate(flight.add([entry]));
}
