import { labourGateWords, noLabourWords } from '../../analysis/words/labour.ts';
import { numberWords } from '../../record/readingWords.ts';
import { headed, wrapped } from './layout.ts';
import type { Paper } from './paper.ts';

/** Q8, of one flight: hours of work written in its record. What they were worth the next flight shows. */
export function labourSection(paper: Paper): readonly string[] {
  const { work, perAirborneHour } = paper.results.labour;
  if (work.kind === 'noAnswer') {
    return headed('Labour', [`None given: ${noLabourWords(work.because)}.`]);
  }
  const { labourH, asRaisedH, byPanel } = work.value;
  const hours = (value: number): string => numberWords(value, 1);
  const rate =
    perAirborneHour.kind === 'answer'
      ? `${hours(perAirborneHour.value.labourPerFlownHour)} for each of ${hours(perAirborneHour.value.flownH)} hours airborne`
      : `for each hour airborne: none, ${noLabourWords(perAirborneHour.because)}`;
  const panels = byPanel.map(
    ({ panels: names, labourH: h, entries }) =>
      `${names.join(' ')} ${hours(h)} ${paper.cite(entries)}`,
  );
  return headed(
    'Labour',
    wrapped(
      [
        `${hours(labourH)} h, ${rate}.`,
        ...(asRaisedH > 0 ? [`${hours(asRaisedH)} h of them as squawks ask for, not booked.`] : []),
        ...(panels.length === 0 ? [] : [`By panel: ${panels.join('; ')}.`]),
        ...(work.how.broken.length === 0
          ? []
          : [`Read with: ${work.how.broken.map(labourGateWords).join(', ')}.`]),
      ].join(' '),
    ),
  );
}
