import type { ClockFit } from '../clocks.ts';
import type { MadeOf, PointResult, Refly } from '../results.ts';

const STATES: Readonly<Record<PointResult['state'], string>> = {
  open: 'open',
  complete: 'complete',
  interrupted: 'interrupted',
  terminated: 'terminated',
};

const REFLY: Readonly<Record<Refly['because'], string>> = {
  notFlown: 'not flown',
  tooFewReadings: 'too few readings',
  interrupted: 'interrupted',
  terminated: 'terminated',
};

const METHODS: Readonly<Record<MadeOf['method'], string>> = {
  fit: 'against the fitted baseline at the same weight',
  fitWithMach: 'against the baseline fitted over weight and Mach',
  pair: 'against one baseline run moved to the same weight',
  bracket: 'against the baseline runs before and after, no model',
};

const DRAG_BY: Readonly<Record<NonNullable<MadeOf['dragBy']>, string>> = {
  engineTable: 'drag by the engine table',
  engineMap: 'drag by the engine map',
  statedSlope: 'drag by the stated slope of consumption',
  slopeOfBaseline: 'drag by the slope of consumption in the baseline',
};

const CLOCK_USES: Readonly<Record<ClockFit['use'], string>> = {
  none: 'not used: no time hack',
  offset: 'offset only',
  offsetAndRate: 'offset and rate',
};

export function baselineMethodWords({ method }: Pick<MadeOf, 'method'>): string {
  return METHODS[method];
}

/** What a change of fuel flow was called drag by; empty where it was not. */
export function dragByWords({ dragBy }: Pick<MadeOf, 'dragBy'>): string {
  return dragBy === null ? '' : DRAG_BY[dragBy];
}

export function stateWords({ state }: Pick<PointResult, 'state'>): string {
  return STATES[state];
}

export function reflyWords({ because }: Pick<Refly, 'because'>): string {
  return REFLY[because];
}

/** How a point's number was made; empty where there is none. */
export function methodWords({ result }: Pick<PointResult, 'result'>): string {
  switch (result.kind) {
    case 'none':
      return '';
    case 'baseline':
      return 'suction off, mean of the run';
    case 'valid':
    case 'indicative':
      return baselineMethodWords(result.madeOf);
  }
}

export function clockUseWords({ use }: Pick<ClockFit, 'use'>): string {
  return CLOCK_USES[use];
}
