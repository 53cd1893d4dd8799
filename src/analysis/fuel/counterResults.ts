import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { Answer } from '../answer.ts';

/** One engine's gauge beside the slope of its own counter. */
export interface EngineFlows {
  readonly engine: number;
  readonly gaugeKgPerS: number;
  readonly counterKgPerS: number;
  /** Gauge less counter. */
  readonly differenceKgPerS: number;
  /** Scatter of the gauge's looks, new with every run. */
  readonly gaugeUncertaintyKgPerS: number;
  /** Last digits of the counter at both ends. */
  readonly counterUncertaintyKgPerS: number;
  /** What calibration leaves on the gauge, the same in every run. */
  readonly calibrationUncertaintyKgPerS: number;
  /** Of the difference: all three. */
  readonly standardUncertaintyKgPerS: number;
  readonly agrees: boolean;
}

/** The flow of a run, told twice. */
export interface FlowsOfRun {
  readonly from: EpochMs;
  readonly to: EpochMs;
  /** Time mean of the gauges between the first and the last reading of the longest stretch that no gate breaks. */
  readonly gaugesKgPerS: number;
  readonly gaugesStandardUncertaintyKgPerS: number;
  readonly counterKgPerS: number;
  readonly counterStandardUncertaintyKgPerS: number;
  /** Gauges less counters. */
  readonly differenceKgPerS: number;
  readonly differenceStandardUncertaintyKgPerS: number;
  readonly agrees: boolean;
  readonly engines: readonly EngineFlows[];
  /** What the results of the run stand on. */
  readonly used: 'gauges';
  readonly because: WhyGauges;
}

export type WhyGauges =
  /** The counters' last digit weighs more over this stretch than the scatter of the gauges. */
  | 'countersCoarser'
  /** The counters are finer here, yet the baseline is gauged: what calibration leaves cancels only among gauges. */
  | 'baselineIsGauged';

export type NoFlows =
  | 'noFlightSheet'
  | 'noUsableReading'
  /** A slope needs two readings side by side that no gate breaks. */
  | 'oneReading'
  | 'countersNotRead'
  | 'counterWentBack';

export interface RunFlows {
  readonly point: string;
  readonly run: number;
  readonly flows: Answer<FlowsOfRun, NoFlows, 'timeMeanBesideSlope'>;
}

/** Which of a gauge and its counter is wrong, as far as anything else can tell. */
export type Odd = 'gauge' | 'counter' | 'nobodyCanTell';
export type ToldBy = 'otherEngines' | 'tanks';

/** An engine's gauge against its counter over all runs. */
export interface EngineVerdict {
  readonly engine: number;
  readonly gauge: string;
  readonly counter: string;
  /** Weighted mean over the runs that stand together. */
  readonly differenceKgPerS: number;
  readonly standardUncertaintyKgPerS: number;
  readonly runs: number;
  /** Null where they agree within their doubt. */
  readonly odd: Odd | null;
  readonly toldBy: ToldBy | null;
  readonly entries: readonly EntryId[];
}

/** A run in which an engine's gauge and counter part, though in its other runs they do not. */
export interface OddRun {
  readonly point: string;
  readonly run: number;
  readonly engine: number;
  /** Against the median of the engine's other runs. */
  readonly jumpKgPerS: number;
  readonly standardUncertaintyKgPerS: number;
  readonly odd: Odd;
  readonly toldBy: ToldBy | null;
  readonly entries: readonly EntryId[];
}

export interface FlowBesideCounters {
  readonly runs: readonly RunFlows[];
  /** Mean over the runs; null where no run has both. */
  readonly meanDifferenceKgPerS: number | null;
  readonly engines: readonly EngineVerdict[];
  readonly oddRuns: readonly OddRun[];
}
