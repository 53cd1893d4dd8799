import type { Doubt } from '../../record/flightState.ts';

const RULES: Readonly<Record<Doubt['rule'], string>> = {
  pointAlreadyOpen: 'A test point was started while another was open',
  pointNotOpen: 'A test point was ended that was not open',
  intervalNotOpen: 'An interval was closed that was not open',
  intervalAlreadyOpen: 'An interval was opened that was open already',
  coversBeforeGearUp: 'Covers were released before gear up',
  conditionBeforeCovers: 'On condition before every cover was clear',
  endBeforeStart: 'It ends before it starts',
  unknownPanel: 'The flight sheet has no such panel',
  unknownProbe: 'The flight sheet has no such probe',
  unknownInstrument: 'The flight sheet has no such instrument',
  suctionAlreadyOn: 'Suction was turned on where it was on already',
  suctionNotOn: 'Suction was changed or turned off where it was not on',
  recordersDisagree: 'Two recorders called one panel differently, and both calls are kept',
};

/** What broke the usual order, and about what. A question to the crew, never a verdict. */
export function doubtRuleWords({ rule, subject }: Doubt): string {
  return subject === '' ? `${RULES[rule]}.` : `${RULES[rule]}: ${subject}.`;
}
