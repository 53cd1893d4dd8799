import type { FlightResults } from '../../../../analysis/flightResults.ts';
import { noResultWords } from '../../../../analysis/words/samples.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import { figure } from '../../../kit/number.ts';
import { percent, type AnswerDesk } from '../answerDesk.ts';

type Sample = FlightResults['samples']['samples'][number];

/** Where each sample is: exposed, handed over, answered by the laboratory, and what of it belongs to which encounter. */
export function SamplesTable({ of }: { readonly of: AnswerDesk }) {
  const { samples, unmatched } = of.results.samples;
  const handed = new Map<string, string>();
  for (const { effective, standing } of of.desk.view.standing) {
    if (standing === 'stands' && effective.kind === 'sampleHandedOver') {
      for (const sample of effective.body.samples) handed.set(sample, effective.body.to);
    }
  }
  return (
    <>
      <GroundTable
        caption="Samples and their custody"
        rows={samples}
        keyOf={({ sample, opened }) => `${sample} ${opened}`}
        empty="No sample was taken."
        columns={[
          {
            key: 'sample',
            head: 'Sample',
            cell: ({ sample }) => <b>{sample === '' ? 'without an id' : sample}</b>,
          },
          {
            key: 'purpose',
            head: 'Purpose',
            cell: ({ sampler, purpose }) =>
              [sampler, purpose].filter((word) => word !== '').join(', '),
          },
          { key: 'exposed', head: 'Exposed', cell: exposedWords },
          {
            key: 'handed',
            head: 'Handed to',
            cell: ({ sample }) => handed.get(sample) ?? 'not handed over',
          },
          { key: 'lab', head: 'Laboratory', cell: labWords },
          { key: 'less', head: 'Less blank, a litre', cell: lessWords },
        ]}
      />
      {unmatched.length === 0 ? null : (
        <p>
          Results for an id that nobody exposed, held until somebody says whose they are:{' '}
          {unmatched.map(({ sample }) => sample).join(', ')}.
        </p>
      )}
    </>
  );
}

function exposedWords({ exposure, joins }: Sample): string {
  if (exposure.kind === 'noAnswer') return 'never closed';
  const where =
    joins.length === 0
      ? 'clear air'
      : joins.map((join) => `${percent(join.shareOfExposure)} % in ${join.label}`).join(', ');
  return `${figure(exposure.value.exposureS, 0)} s, ${where}`;
}

function labWords({ lab }: Sample): string {
  if (lab.kind === 'noAnswer') return noResultWords(lab.because);
  const { meanSizeM, numberPerM3 } = lab.value;
  const size = meanSizeM === null ? 'no size' : `${figure(1e6 * meanSizeM, 0)} µm`;
  return `${size}, ${numberPerM3 === null ? 'no number' : `${perLitre(numberPerM3)} a litre`}`;
}

function lessWords({ lessBlank }: Sample): string {
  return lessBlank.kind === 'answer'
    ? perLitre(lessBlank.value.numberPerM3)
    : noResultWords(lessBlank.because);
}

function perLitre(numberPerM3: number): string {
  const litre = numberPerM3 / 1000;
  return figure(litre, litre < 10 ? 1 : 0);
}
