import type { Answer } from '../../analysis/answer.ts';
import type { Association } from '../../analysis/encounters/associations.ts';
import type { Encounter } from '../../analysis/encounters/encounters.ts';
import type { SampleResult } from '../../analysis/encounters/samples.ts';
import {
  cautionWords,
  notCountedWords,
  noTestWords,
  questionWords,
} from '../../analysis/words/associations.ts';
import {
  lostGateWords,
  noLossWords,
  noRecoveryWords,
  nothingLostWords,
} from '../../analysis/words/encounters.ts';
import { noResultWords } from '../../analysis/words/samples.ts';
import { WINGS } from '../../record/sheet.ts';
import { numberWords } from '../../record/readingWords.ts';
import { lengthWords } from '../pageTime.ts';
import { percent } from './figures.ts';
import { headed, item, table } from './layout.ts';
import type { Paper } from './paper.ts';

/** Q3: each stay in moisture, when flow went and came back, what was caught in it. */
export function encountersSection(paper: Paper): readonly string[] {
  const { encounters, samples, associations } = paper.results;
  const rows = encounters.map((encounter, place) => ({
    cells: cellsOf(paper, encounter),
    notes: [noteOf(paper, encounter, samples.samples, place)],
  }));
  return headed('Moisture: time to loss and back, with doubt (1 σ), in seconds', [
    ...(rows.length === 0
      ? ['No moisture was written down.']
      : table(
          [
            { head: 'Encounter', side: 'left' },
            { head: 'Entry', side: 'left' },
            { head: 'Inside', side: 'right' },
            { head: 'Loss L', side: 'right' },
            { head: 'Loss R', side: 'right' },
            { head: 'Back L', side: 'right' },
            { head: 'Back R', side: 'right' },
            { head: 'Lost for', side: 'right' },
            { head: `Forgone ${paper.massUnit}`, side: 'right' },
          ],
          rows,
        )),
    ...sampleLines(paper),
    ...(associations.length === 0 ? [] : ['', 'What went together:']),
    ...associations.flatMap((association) => item(associationWords(association))),
  ]);
}

function cellsOf(paper: Paper, encounter: Encounter): readonly string[] {
  const { label, entry, inMoisture, wings, lost, fuelForgone } = encounter;
  return [
    label === '' ? 'unnamed' : label,
    paper.clock(entry.at, entry.by),
    inMoisture.kind === 'answer' ? numberWords(inMoisture.value.durationS, 0) : 'open',
    ...WINGS.map((wing) => lagFigure(wings[wing].loss.first)),
    ...WINGS.map((wing) => lagFigure(wings[wing].recovery.toCount)),
    lost.kind === 'answer' ? numberWords(lost.value.lostForS, 0) : 'none',
    fuelForgone.kind === 'answer' ? paper.mass(fuelForgone.value.fuelKg) : 'none',
  ];
}

type Lag = Answer<
  { readonly lagS: number; readonly lagStandardUncertaintyS: number },
  string,
  string,
  string
>;

function lagFigure(lag: Lag): string {
  if (lag.kind === 'noAnswer') return 'none';
  const { lagS, lagStandardUncertaintyS } = lag.value;
  const words = `${numberWords(lagS, 0)} ± ${numberWords(lagStandardUncertaintyS, 0)}`;
  return lag.how.broken.length === 0 ? words : `struck ${words}`;
}

function noteOf(
  paper: Paper,
  encounter: Encounter,
  samples: readonly SampleResult[],
  place: number,
): string {
  const { look, cover, iceSeen, entry, exit, area, lost, fuelForgone } = encounter;
  const sight = [look, cover, iceSeen === null ? null : iceSeen ? 'ice seen' : 'no ice seen'];
  const joined = samples.filter(({ joins }) => joins.some((join) => join.encounter === place));
  const notes = [
    sight.filter((part) => part !== null).join(', '),
    paper.cite(exit === null ? [entry.by] : [entry.by, exit.by]),
    ...WINGS.flatMap((wing) => wingNotes(paper, encounter, wing)),
    area.kind === 'answer'
      ? `laminar area ${percent(area.value.before.byAreaFraction)} % before, ${percent(area.value.during.byAreaFraction)} % while lost`
      : '',
    lost.kind === 'answer' ? lost.how.broken.map(lostGateWords).join(', ') : '',
    fuelForgone.kind === 'noAnswer' && lost.kind === 'answer'
      ? `fuel forgone not given: ${nothingLostWords(fuelForgone.because)}`
      : '',
    joined.map(({ sample }) => `sample ${sample}`).join(', '),
  ];
  return notes.filter((words) => words !== '').join('; ');
}

/** Why a wing has no time, and which entries say when it went and came back. */
function wingNotes(paper: Paper, { wings }: Encounter, wing: 'L' | 'R'): readonly string[] {
  const { loss, recovery, lostByCommand } = wings[wing];
  const { first } = loss;
  if (first.kind === 'noAnswer') return [`${wing} ${noLossWords(first.because)}`];
  const { toCount, sustained } = recovery;
  const gates = [...first.how.broken, ...(toCount.kind === 'answer' ? toCount.how.broken : [])];
  return [
    `${wing} went ${paper.cite([first.value.seen.by])}`,
    toCount.kind === 'answer'
      ? `back to count ${paper.cite([toCount.value.seen.by])}`
      : `back: ${noRecoveryWords(toCount.because)}`,
    ...(sustained.kind === 'answer' && toCount.kind === 'answer'
      ? sustained.value.lagS < toCount.value.lagS
        ? [`first of it back after ${numberWords(sustained.value.lagS, 0)} s`]
        : []
      : []),
    ...[...new Set(gates)].map(lostGateWords),
    ...(lostByCommand.length > 0 ? [`also lost by command ${paper.cite(lostByCommand)}`] : []),
  ];
}

/** Q3b: what hung in the air, as far as the laboratory has answered. */
function sampleLines(paper: Paper): readonly string[] {
  const { samples, unmatched } = paper.results.samples;
  if (samples.length + unmatched.length === 0) return [];
  return [
    '',
    'Samples:',
    ...samples.flatMap((sample) => item(sampleWords(paper, sample))),
    ...unmatched.flatMap(({ sample, by }) =>
      item(`${sample}: a result for an id that nobody exposed; held ${paper.cite([by])}`),
    ),
  ];
}

function sampleWords(paper: Paper, one: SampleResult): string {
  const { exposure, joins, lab, lessBlank } = one;
  const exposed =
    exposure.kind === 'answer'
      ? `exposed ${lengthWords(1000 * exposure.value.exposureS)} ${paper.cite(exposure.how.entries)}`
      : `never closed ${paper.cite(exposure.entries)}`;
  const where =
    joins.length === 0
      ? 'in clear air'
      : joins
          .map(({ label, shareOfExposure }) => `${percent(shareOfExposure)} % in ${label}`)
          .join(', ');
  const result =
    lab.kind === 'noAnswer'
      ? `laboratory: ${noResultWords(lab.because)}`
      : `laboratory ${paper.cite([lab.value.by])}: ${
          lab.value.meanSizeM === null
            ? 'no size'
            : `${numberWords(1e6 * lab.value.meanSizeM, 0)} µm`
        }, ${lab.value.numberPerM3 === null ? 'no number' : `${perLitre(lab.value.numberPerM3)} a litre`}`;
  const less =
    lessBlank.kind === 'answer'
      ? `, ${perLitre(lessBlank.value.numberPerM3)} less the blank`
      : lab.kind === 'answer'
        ? `, blank not taken off: ${noResultWords(lessBlank.because)}`
        : '';
  return `${one.sample === '' ? 'without an id' : one.sample} ${one.purpose}: ${exposed}, ${where}; ${result}${less}`;
}

function perLitre(numberPerM3: number): string {
  const litre = numberPerM3 / 1000;
  return numberWords(litre, litre < 10 ? 1 : 0);
}

function associationWords(one: Association): string {
  const { table: counts, test, leftOut, cautions } = one;
  const cells =
    counts === null ? '' : ` (${counts.map((row) => row.join(' to ')).join(' against ')})`;
  const verdict =
    test.kind === 'noAnswer'
      ? noTestWords(test.because)
      : `p = ${numberWords(Number(test.value.pTwoSided.toPrecision(2)))}, Fisher exact, two-sided`;
  return [
    `${questionWords(one)}${cells}: ${verdict}`,
    ...leftOut.filter(({ count }) => count > 0).map(notCountedWords),
    ...cautions.map(cautionWords),
  ].join('; ');
}
