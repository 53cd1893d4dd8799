import type { BecauseOf } from '../answer.ts';
import type {
  ComparedPair,
  FuelGate,
  FuelSource,
  NoFuelUsed,
  BalanceVerdict,
} from '../fuel/balanceResults.ts';
import type { EngineVerdict, NoFlows, Odd, ToldBy, WhyGauges } from '../fuel/counterResults.ts';
import type { NoGross, NoNet, NoSpan, SpanGate } from '../fuel/spanResults.ts';

const NO_SPAN: Readonly<Record<NoSpan, string>> = {
  noFlightSheet: 'no flight sheet',
  outsideAtmosphere: 'air data impossible',
  noBaseline: 'no baseline',
  noWeight: 'no weight',
  countersNotRead: 'counters not read',
  counterWentBack: 'a counter went back',
  noTime: 'no time between on and off',
  baselineFails: 'the baseline leaves no flow at these weights',
};

const SPAN_GATES: Readonly<Record<SpanGate, string>> = {
  outsideBaseline: 'weight off baseline',
  oneBaselineRun: 'one baseline run, no weight law',
  notTurnedOff: 'suction never written off',
  notLevel: 'partly in climb or descent',
  countersFarApart: 'counters over half an hour apart',
  farFromCardHeight: 'far from the card height',
  noAirData: 'no air data',
};

const NO_GROSS: Readonly<Record<NoGross, string>> = {
  bleedDriven: 'not given: bleed drives the suction, and its cost is not stated',
  shaftDriven: 'not given: a shaft drives the suction, and its cost is not stated',
};

const NO_NET: Readonly<Record<NoNet, string>> = {
  unitFuelNotRead: 'not given: the fuel of the suction unit was not read',
};

const SOURCES: Readonly<Record<FuelSource, string>> = {
  flow: 'flow over time',
  counters: 'counters',
  tanks: 'tanks',
  uplift: 'uplift',
};

const NO_FUEL: Readonly<Record<NoFuelUsed | BecauseOf<ComparedPair['compared']>, string>> = {
  noFlightSheet: 'no flight sheet',
  noReading: 'not read',
  oneReading: 'read once only',
  tooSparse: 'too long without a look',
  countersNotRead: 'counters not read',
  counterWentBack: 'a counter went back',
  tanksNotRead: 'tanks not read',
  noUplift: 'no uplift written',
  noDensity: 'a volume without a density',
  tanksNotReadAboutUplift: 'tanks not read about the uplift',
  unitUnknown: 'unit unknown',
  sourceMissing: 'one of them is missing',
  noCommonTime: 'no time that both cover',
};

const FUEL_GATES: Readonly<Record<FuelGate, string>> = {
  startNotGauged: 'start as loaded, not gauged',
  densityAtOtherTemperature: 'density at another temperature',
};

const NO_FLOWS: Readonly<Record<NoFlows, string>> = {
  noFlightSheet: 'no flight sheet',
  noUsableReading: 'no usable reading',
  oneReading: 'one reading only',
  countersNotRead: 'counters not read',
  counterWentBack: 'a counter went back',
};

const WHY_GAUGES: Readonly<Record<WhyGauges, string>> = {
  countersCoarser: 'counters are coarser here',
  baselineIsGauged: 'the baseline is gauged, so calibration cancels',
};

const ODD: Readonly<Record<Odd, string>> = {
  gauge: 'the gauge is the odd one',
  counter: 'the counter is the odd one',
  nobodyCanTell: 'nobody can tell which',
};

const TOLD_BY: Readonly<Record<ToldBy, string>> = {
  otherEngines: 'by the other engines',
  tanks: 'by the tanks',
};

export function noSpanWords(because: NoSpan): string {
  return NO_SPAN[because];
}

export function spanGateWords(gate: SpanGate): string {
  return SPAN_GATES[gate];
}

export function noGrossWords(because: NoGross): string {
  return NO_GROSS[because];
}

export function noNetWords(because: NoNet): string {
  return NO_NET[because];
}

export function fuelSourceWords(source: FuelSource): string {
  return SOURCES[source];
}

export function noFuelWords(because: keyof typeof NO_FUEL): string {
  return NO_FUEL[because];
}

export function fuelGateWords(gate: FuelGate): string {
  return FUEL_GATES[gate];
}

export function noFlowsWords(because: NoFlows): string {
  return NO_FLOWS[because];
}

export function whyGaugesWords(because: WhyGauges): string {
  return WHY_GAUGES[because];
}

export function oddWords({ odd, toldBy }: Pick<EngineVerdict, 'toldBy'> & { odd: Odd }): string {
  return toldBy === null ? ODD[odd] : `${ODD[odd]}, ${TOLD_BY[toldBy]}`;
}

/** Whether the books balance, and which source is the odd one where that can be told. */
export function balanceWords(verdict: BalanceVerdict): string {
  switch (verdict.kind) {
    case 'nothingToCompare':
      return 'nothing to compare';
    case 'allAgree':
      return 'all agree within their doubt';
    case 'oddOneOut':
      return `${SOURCES[verdict.odd]} is the odd one out`;
    case 'nobodyCanTell':
      return 'they differ, and nobody can tell which is wrong';
  }
}
