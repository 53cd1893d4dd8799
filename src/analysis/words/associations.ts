import type { BecauseOf } from '../answer.ts';
import type { Association } from '../encounters/associations.ts';

/** What was held against what: the two rows and what is counted in them. */
const QUESTIONS: Readonly<Record<Association['question'], string>> = {
  lossInMoisture: 'a wing lost as a whole, in encounters against complete clear-air runs',
  turbulentBehindHungCover: 'turbulent at nominal, probes behind a hung cover against the others',
  turbulentWithFinding: 'any probe turbulent at nominal, panels with a finding against clean ones',
  particleSizeAndLoss: 'lost sooner than the median, larger particles against smaller',
};

const NO_TEST: Readonly<Record<BecauseOf<Association['test']>, string>> = {
  zeroMargin: 'no table: one of its sums is zero',
  tooFewJoinedSamples: 'refused: so few joined samples prove nothing',
};

const LEFT_OUT: Readonly<Record<Association['leftOut'][number]['because'], string>> = {
  wingsNotSeen: 'wings not called',
  noNominalClearRun: 'no clear run at nominal',
  notInspected: 'not yet inspected',
  noSizeOrNoLoss: 'no size, or no loss',
};

const CAUTIONS: Readonly<Record<Association['cautions'][number], string>> = {
  associationNotCause: 'association, not cause',
  encountersFollowEachOther: 'encounters are few and follow each other',
  probesOfOnePanelShareACause: 'probes of one panel share one cause, so p is too small',
};

export function questionWords({ question }: Pick<Association, 'question'>): string {
  return QUESTIONS[question];
}

export function noTestWords(because: BecauseOf<Association['test']>): string {
  return NO_TEST[because];
}

export function notCountedWords({ because, count }: Association['leftOut'][number]): string {
  return `${count} left out: ${LEFT_OUT[because]}`;
}

export function cautionWords(caution: Association['cautions'][number]): string {
  return CAUTIONS[caution];
}
