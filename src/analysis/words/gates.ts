import type { Gate, LeftOut } from '../results.ts';

/**
 * A gate in a word or two, lower case: beside the struck figure in the air, in the table and in the printed page on the
 * ground. At most twenty letters, or the smallest cockpit screen has no room for it.
 */
const GATES: Readonly<Record<Gate, string>> = {
  amendmentsDisagree: 'amendments differ',
  noAirData: 'no air data',
  turn: 'turn',
  moisture: 'moisture',
  machDrift: 'Mach drift',
  climb: 'climb',
  mach: 'Mach off card',
  altitude: 'height off card',
  suctionChanging: 'suction just moved',
  notOnCondition: 'not on condition',
  engineDisagrees: 'engines differ',
  energyCorrectionTooLarge: 'energy above 3\u00a0%',
  outsideBaseline: 'weight off baseline',
};

const LEFT_OUT: Readonly<Record<LeftOut, string>> = {
  ...GATES,
  beforeOnCondition: 'before on condition',
  queried: 'queried',
  incomplete: 'incomplete',
};

export function gateWords(gate: Gate): string {
  return GATES[gate];
}

export function leftOutWords(reason: LeftOut): string {
  return LEFT_OUT[reason];
}
