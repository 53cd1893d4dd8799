import type { Reviewed } from '../../analysis/flightResults.ts';
import { doubtRuleWords } from '../../analysis/words/orderRules.ts';
import { reviewWords, suspicionWords } from '../../analysis/words/review.ts';
import { items } from '../../record/trail.ts';
import { headed, item } from './layout.ts';
import type { Paper } from './paper.ts';

/** What a person should look at before anybody believes the rest. */
export function doubtsSection(paper: Paper): readonly string[] {
  const { view, results } = paper;
  const lines = [
    ...results.suspicions.map(
      (one) => `${suspicionWords(one)} ${paper.citeReadings(one.readings)}`,
    ),
    ...results.toReview.map(
      (one: Reviewed) => `${reviewWords(one)} ${paper.citeReadings(one.readings)}`,
    ),
    ...view.standing.flatMap(({ entry, standing, conflicts }) => [
      ...(standing === 'unconfirmed' ? [`touched, never confirmed ${paper.cite([entry.id])}`] : []),
      ...(conflicts.length > 0 ? [`amendments disagree ${paper.cite([entry.id])}`] : []),
    ]),
    ...[...items(view.state.intervals)]
      .filter(({ closed, kind }) => closed === null && kind !== 'testPoint')
      .map(({ opened }) => `never closed ${paper.cite([opened.by])}`),
    ...[...items(view.state.openMarks)].map(
      ({ by }) => `a mark without a meaning ${paper.cite([by])}`,
    ),
    ...[...items(view.state.doubts)].map(
      (doubt) => `${doubtRuleWords(doubt)} ${paper.cite([doubt.by])}`,
    ),
  ];
  return headed('Doubts', lines.length === 0 ? ['None was found.'] : lines.flatMap(item));
}
