import { encounters, type Encounter } from '../../../src/analysis/encounters/encounters.ts';
import type { FlightView } from '../../../src/record/flight.ts';
import { ALL, flightOf, laminarFlight, say, turbulent, type Line } from './smallFlight.ts';

/** Moisture from 1000 s to 1100 s, all lost after 30 s, back 60 s after it: expected lags are differences of these. */
export const USUAL: readonly Line[] = [
  say(1000, 'moistureEntered', { encounter: 'M1' }),
  say(1030, 'laminarLost', turbulent(ALL)),
  say(1100, 'moistureExited', { encounter: 'M1' }),
  say(1160, 'laminarGained', turbulent([])),
];

export function only(view: FlightView): Encounter {
  const [first, ...others] = encounters(view);
  if (first === undefined || others.length > 0) throw new RangeError('one encounter is expected');
  return first;
}

export const of = (...lines: readonly Line[]): Encounter =>
  only(flightOf([...laminarFlight(), ...lines]));
