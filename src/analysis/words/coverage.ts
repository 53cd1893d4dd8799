import type { BecauseOf } from '../answer.ts';
import type { ExpectedDrag, ExpectedMethod, ToCheck } from '../coverage/expectedResults.ts';
import type { LaminarGate, NoLaminarTime } from '../coverage/laminarResults.ts';

const NO_LAMINAR: Readonly<Record<NoLaminarTime, string>> = {
  noFlightSheet: 'no flight sheet',
  noTappedArea: 'no tapped area',
  notAssessed: 'flow not called',
  notLevel: 'suction never on in level flight',
  noClearAir: 'no clear air',
};

const LAMINAR_GATES: Readonly<Record<LaminarGate, string>> = {
  notTurnedOff: 'suction never written off',
  settlingNotSeen: 'taking hold was not called',
  moistureNotWatched: 'a wing not called in cloud: all of that cloud is taken off',
  notRecovered: 'a wing not called whole again',
};

const NO_EXPECTED: Readonly<Record<BecauseOf<ExpectedDrag['expected' | 'beside']>, string>> = {
  noUsableReading: 'no usable reading',
  treatedDragShareNotStated: 'the drag share of the treated strips is not stated',
  treatedDragShareImpossible: 'the stated drag share is impossible',
  noPanels: 'no panels',
  notAssessed: 'flow not called',
  noChord: 'no chord stated',
  reynoldsOutsideFormula: 'Reynolds number outside the formula',
  noBaseline: 'no baseline',
  bracketDrifts: 'baseline runs differ',
  noEngineMap: 'no engine map',
  outsideEngineMap: 'outside engine table',
  noSlopeInBaseline: 'no slope in baseline',
  bleedDriven: 'bleed-driven suction',
  shaftDriven: 'shaft-driven suction',
};

const METHODS: Readonly<Record<ExpectedMethod, string>> = {
  virtualOriginStrips: 'strip by strip',
  upperBound: 'an upper bound',
};

const TO_CHECK: Readonly<Record<ToCheck, string>> = {
  weight: 'weight',
  mach: 'Mach',
  suctionState: 'suction state',
  wedges: 'turbulent wedges',
  estimateIsUpperBound: 'the estimate is an upper bound',
};

export function noLaminarWords(because: NoLaminarTime): string {
  return NO_LAMINAR[because];
}

export function laminarGateWords(gate: LaminarGate): string {
  return LAMINAR_GATES[gate];
}

export function noExpectedWords(because: keyof typeof NO_EXPECTED): string {
  return NO_EXPECTED[because];
}

export function expectedMethodWords(method: ExpectedMethod): string {
  return METHODS[method];
}

export function toCheckWords(one: ToCheck): string {
  return TO_CHECK[one];
}
