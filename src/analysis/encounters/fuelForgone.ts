import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { Answer } from '../answer.ts';
import type { PointResult } from '../results.ts';
import { distinct } from './lossLags.ts';
import type { LostAreaAnswer, LostGate, LostTimeAnswer } from './lostTime.ts';
import { isSameSetting, settingAt, type Settings } from './settings.ts';

/** Fuel that laminar flow would have saved in the lost time. */
export interface FuelForgone {
  readonly fuelKg: number;
  readonly fuelStandardUncertaintyKg: number;
  /** What the setting of that moment saved in its own runs. */
  readonly savingKgPerS: number;
  readonly runs: readonly { readonly point: string; readonly run: number }[];
}

export type FuelForgoneAnswer = Answer<
  FuelForgone,
  | 'nothingLost'
  | 'notAssessed'
  | 'suctionOff'
  /** Nothing was laminar before, so nothing was saved that could be lost. */
  | 'notLaminarBefore'
  /** No finished run at the setting of that moment gave a saving that stands. */
  | 'noRunAtThisSetting',
  'engineSavingTimesShareLost',
  LostGate
>;

/**
 * Saving of the engines at this setting x lost time x (1 - share during / share before): the saving is taken to go with
 * the laminar area. The suction unit ran on, so its own fuel is not taken off. Runs share their baseline, so the doubt
 * of their mean is not made smaller by their number.
 */
export function fuelForgone({
  entryAt,
  lost,
  area,
  settings,
  points,
}: {
  readonly entryAt: EpochMs;
  readonly lost: LostTimeAnswer;
  readonly area: LostAreaAnswer;
  readonly settings: Settings;
  readonly points: readonly PointResult[];
}): FuelForgoneAnswer {
  if (lost.kind === 'noAnswer') return lost;
  if (area.kind === 'noAnswer') return area;
  const setting = settingAt(settings, entryAt);
  const entries = distinct([...area.how.entries, ...setting.entries]);
  const none = (
    because: Extract<FuelForgoneAnswer, { kind: 'noAnswer' }>['because'],
  ): FuelForgoneAnswer => ({ kind: 'noAnswer', because, entries });
  if (!setting.on) return none('suctionOff');
  const { before, during } = area.value;
  if (!(before.byAreaFraction > 0)) return none('notLaminarBefore');
  const savings = points.flatMap((point) => {
    const words = settingAt(settings, point.startedAt).words;
    const saving = isSameSetting(words, setting.words) ? savingOf(point) : null;
    return saving === null ? [] : [{ point, ...saving }];
  });
  if (savings.length === 0) return none('noRunAtThisSetting');
  const savingKgPerS = meanOf(savings.map(({ kgPerS }) => kgPerS));
  const doubtKgPerS = meanOf(savings.map(({ standardUncertaintyKgPerS: u }) => u));
  const { lostForS, lostForStandardUncertaintyS } = lost.value;
  const shareLost = 1 - during.byAreaFraction / before.byAreaFraction;
  return {
    kind: 'answer',
    value: {
      fuelKg: savingKgPerS * lostForS * shareLost,
      fuelStandardUncertaintyKg:
        Math.abs(shareLost) *
        Math.hypot(doubtKgPerS * lostForS, savingKgPerS * lostForStandardUncertaintyS),
      savingKgPerS,
      runs: savings.map(({ point: { point, run } }) => ({ point, run })),
    },
    how: {
      entries: distinct([...entries, ...savings.flatMap((saving) => saving.entries)]),
      method: 'engineSavingTimesShareLost',
      broken: area.how.broken,
    },
  };
}

interface Saving {
  readonly kgPerS: number;
  readonly standardUncertaintyKgPerS: number;
  readonly entries: readonly EntryId[];
}

/** What the engines burnt less; where they drive the suction themselves their gauges show it net. */
function savingOf({ result }: PointResult): Saving | null {
  if (result.kind !== 'valid' || result.broken.length > 0) return null;
  const kgPerS = result.grossKgPerS ?? result.netKgPerS;
  if (kgPerS === null) return null;
  const { baselineAtThatWeightKgPerS, entries } = result.madeOf;
  return {
    kgPerS,
    standardUncertaintyKgPerS: result.fuel.standardUncertainty * baselineAtThatWeightKgPerS,
    entries,
  };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0) / values.length;
}
