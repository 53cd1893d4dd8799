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
  pair: 'against one baseline run moved to the same weight',
};

const CLOCK_USES: Readonly<Record<ClockFit['use'], string>> = {
  none: 'not used: no time hack',
  offset: 'offset only',
  offsetAndRate: 'offset and rate',
};

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
      return METHODS[result.madeOf.method];
  }
}

export function clockUseWords({ use }: Pick<ClockFit, 'use'>): string {
  return CLOCK_USES[use];
}
