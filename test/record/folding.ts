import { viewOf } from '../../src/record/flight.ts';
import type { FlightState, Interval } from '../../src/record/flightState.ts';
import { items } from '../../src/record/trail.ts';
import { scriptA } from '../flights/flightA.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { chained, START_MS, type Said } from './writing.ts';

const opening: Said = {
  kind: 'flightOpened',
  afterMs: 0,
  body: {
    nature: 'practice',
    title: 'Fold',
    date: '2032-06-02',
    device: 'tablet',
    sheet: sheetOfScript(scriptA),
  },
};

/** The state after these, ten seconds apart unless they say when, in a flight opened with the scripted flight's sheet. */
export function stateAfter(saids: readonly Said[]): FlightState {
  const timed = saids.map((said, index) => ({ afterMs: (index + 1) * 10_000, ...said }));
  return viewOf(chained([opening, ...timed])).state;
}

export function say(kind: string, body: object = {}): Said {
  return { kind, body };
}

export function doubtsOf(state: FlightState): readonly string[] {
  return [...items(state.doubts)].map((doubt) => `${doubt.rule}: ${doubt.subject}`);
}

/** Kind, label and the seconds of opening and closing. */
export function intervalsOf(state: FlightState): readonly string[] {
  return [...items(state.intervals)].map(
    ({ kind, label, opened, closed }: Interval) =>
      `${kind} ${label} ${seconds(opened.at)}-${closed === null ? '' : seconds(closed.at)}`,
  );
}

function seconds(at: number): number {
  return (at - START_MS) / 1000;
}
