import type { AcrossFlights } from '../../analysis/acrossFlights.ts';
import type { EncounterTimes } from '../../analysis/encounters/recovery.ts';
import {
  driftGateWords,
  noDriftWords,
  noLabourWords,
  noNetSavingWords,
  noRankWords,
} from '../../analysis/words/labour.ts';
import { noLaminarWords } from '../../analysis/words/coverage.ts';
import { noMatchWords } from '../../analysis/words/matched.ts';
import { WINGS } from '../../record/sheet.ts';
import { numberWords } from '../../record/readingWords.ts';
import { percent, percentFigure, signed } from './figures.ts';
import { headed, item, PAGE_COLUMNS, table } from './layout.ts';

/** Q7 and Q8: what shows only when flights lie side by side. */
export function acrossPage(across: AcrossFlights, flights: number): readonly string[] {
  return [
    `Across ${flights} flights`,
    '='.repeat(PAGE_COLUMNS),
    ...chronicLines(across),
    ...labourLines(across),
    ...reductionLines(across),
    ...driftLines(across),
    ...recoveryLines(across),
  ];
}

const RANKED_AT_MOST = 10;

function chronicLines({ chronic }: AcrossFlights): readonly string[] {
  const rows = chronic.panels
    .filter(({ turbulentArea }) => turbulentArea.kind === 'answer')
    .slice(0, RANKED_AT_MOST)
    .map(({ panel, turbulentArea, labour, rank }) => ({
      cells: [
        panel,
        turbulentArea.kind === 'answer' ? numberWords(turbulentArea.value.turbulentAreaM2, 2) : '',
        turbulentArea.kind === 'answer' ? String(turbulentArea.value.fewestFlights) : '',
        labour.kind === 'answer' ? numberWords(labour.value.labourH, 1) : 'none',
        rank.kind === 'answer' ? numberWords(rank.value.areaM2PerH, 3) : noRankWords(rank.because),
      ],
    }));
  const probes = chronic.probes.flatMap(({ probe, record }) =>
    record.kind === 'answer' && record.value.turbulentFlights > 0
      ? [`${probe} in ${record.value.turbulentFlights} of ${record.value.eligibleFlights}`]
      : [],
  );
  return headed('Panels turbulent flight after flight, most area an hour of work first', [
    ...(rows.length === 0
      ? ['No flight counts: clear air, nominal suction, covers seen to go, probes called.']
      : table(
          [
            { head: 'Panel', side: 'left' },
            { head: 'Area x rate, m2', side: 'right' },
            { head: 'n at least', side: 'right' },
            { head: 'Hours', side: 'right' },
            { head: 'm2 an hour', side: 'left' },
          ],
          rows,
        )),
    ...(probes.length === 0 ? [] : item(`turbulent probes: ${probes.join(', ')}`)),
  ]);
}

function labourLines({ labour }: AcrossFlights): readonly string[] {
  const lines = labour.flatMap(({ title, work, next }) => {
    const hours =
      work.kind === 'answer'
        ? `${numberWords(work.value.labourH, 1)} h`
        : noLabourWords(work.because);
    if (next === null)
      return item(`after ${title}: ${hours}; what it was worth the next flight shows`);
    const clear =
      next.clearAir.kind === 'answer'
        ? `${percent(next.clearAir.value.byAreaFraction)} % laminar in clear air`
        : `clear air: none, ${noLaminarWords(next.clearAir.because)}`;
    const net =
      next.netSaving.kind === 'answer'
        ? `net saving ${percent(next.netSaving.value.fraction, 1)} %`
        : `net saving: none, ${noNetSavingWords(next.netSaving.because)}`;
    return item(`after ${title}: ${hours}; then ${next.title} showed ${clear}, ${net}`);
  });
  return headed('Work, and what the next flight showed', lines.length === 0 ? ['None.'] : lines);
}

function reductionLines({ matchedReduction }: AcrossFlights): readonly string[] {
  const lines = matchedReduction.flatMap(({ title, matched }) => {
    if (matched.kind === 'noAnswer')
      return item(`${title}: none, ${noMatchWords(matched.because)}`);
    const { point, run, setting, reduction } = matched.value;
    return item(`${title}: ${percentFigure(reduction)} % at ${point} r${run}, ${setting}`);
  });
  return headed('Fuel flow less than with suction off, at one card, setting and weight', lines);
}

function driftLines({ baselineDrift }: AcrossFlights): readonly string[] {
  const lines = baselineDrift.flatMap(({ title, drift }) => {
    if (drift.kind === 'noAnswer') return item(`${title}: none, ${noDriftWords(drift.because)}`);
    const { driftFraction, standardUncertaintyFraction, differs, runs } = drift.value;
    const gates = drift.how.broken.map(driftGateWords);
    return item(
      `${title}: ${signed(100 * driftFraction, 2)} ± ${percent(2 * standardUncertaintyFraction, 2)} % (2 u) over ` +
        `${runs} runs, ${differs ? 'differs' : 'cannot be told apart'}${gates.length === 0 ? '' : `; read with: ${gates.join(', ')}`}`,
    );
  });
  return headed('Suction-off flow against the first flight, at the same weight', lines);
}

function recoveryLines({ recovery }: AcrossFlights): readonly string[] {
  const of = (
    words: string,
    times: Readonly<Record<'L' | 'R', EncounterTimes>>,
  ): readonly string[] =>
    WINGS.flatMap((wing) => item(`${words}, ${wing}: ${timesWords(times[wing])}`));
  return headed('Moisture: times over all encounters', [
    ...of('to loss', recovery.loss),
    ...of('back to count', recovery.recoveryToCount),
  ]);
}

function timesWords({ outcomes, curve }: EncounterTimes): string {
  if (outcomes.length === 0) return 'none';
  const list = outcomes
    .map(({ durationS, observed }) => `${numberWords(durationS, 0)}${observed ? '' : '+'}`)
    .join(', ');
  const median =
    curve.kind === 'answer' && curve.value.median.kind === 'ready'
      ? `; median ${numberWords(curve.value.median.value, 0)} s (Kaplan-Meier)`
      : '; too few for a curve';
  return `${list} s${median}`;
}
