import { studentTQuantile } from '../../../src/aero/statistics/distributions.ts';
import {
  fisherExact,
  type FisherResult,
  type TwoByTwo,
} from '../../../src/aero/statistics/fisherExact.ts';
import {
  kaplanMeier,
  survivalAt,
  type SurvivalCurve,
} from '../../../src/aero/statistics/survival.ts';
import { itemAt, valueOf, type Answer, type Answers, type RowReader } from '../referenceRow.ts';

function quantileAt(probability: number): Answer {
  return (row) => studentTQuantile({ probability, degreesOfFreedom: row.raw('nu') });
}

function exactTest(row: RowReader): FisherResult {
  return valueOf(fisherExact(twoByTwo(row.value('table'))));
}

function twoByTwo(table: unknown): TwoByTwo {
  const counts = [table].flat(2).map(Number);
  return [
    [itemAt(counts, 0), itemAt(counts, 1)],
    [itemAt(counts, 2), itemAt(counts, 3)],
  ];
}

function remission(row: RowReader): SurvivalCurve {
  const flags = row.list('event_1_censored_0');
  return kaplanMeier(
    row.list('time').map((duration, index) => ({ duration, observed: itemAt(flags, index) === 1 })),
  );
}

export const statisticsAnswers: Answers = {
  'Student t quantile, 0.975, full precision': quantileAt(0.975),
  'Student t quantile, 0.975': quantileAt(0.975),
  'Student t quantile, 0.995': quantileAt(0.995),
  'Fisher exact test, one-sided greater': (row) => exactTest(row).pGreater,
  'Fisher exact test, two-sided': (row) => exactTest(row).pTwoSided,
  'Fisher exact test, one-sided less': (row) => exactTest(row).pLess,
  'Kaplan-Meier survival, 6-MP arm': (row) => survivalAt(remission(row), row.raw('t')).survival,
  'Greenwood standard error': (row) => survivalAt(remission(row), row.raw('t')).standardError,
  'Kaplan-Meier median (first time with S <= 0.5)': (row) => valueOf(remission(row).median),
};
