import type { BecauseOf } from '../answer.ts';
import type { NoLessBlank, SampleResult } from '../encounters/samples.ts';

const NO_RESULT: Readonly<
  Record<BecauseOf<SampleResult['lab']> | BecauseOf<SampleResult['blank']> | NoLessBlank, string>
> = {
  noSampleId: 'no id was given',
  noResultYet: 'pending',
  resultsDisagree: 'two results disagree',
  sampleExposedTwice: 'the id was exposed twice',
  isABlank: 'a blank itself',
  noBlank: 'no clear-air blank',
  noBlankResult: 'the blank has no result yet',
  noNumber: 'no number given',
  methodsDiffer: 'blank and sample were counted in different ways',
  methodNotGiven: 'how they were counted is not said',
};

export function noResultWords(because: keyof typeof NO_RESULT): string {
  return NO_RESULT[because];
}
