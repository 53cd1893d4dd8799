import type { SampleResult } from '../../../analysis/encounters/samples.ts';
import { noResultWords } from '../../../analysis/words/samples.ts';
import { items } from '../../../record/trail.ts';
import { numberWords } from '../../../record/readingWords.ts';
import { figure } from '../../kit/number.ts';
import type { Printed } from './printed.ts';

/** A sample from the sampler to the laboratory. */
export interface CustodyRow {
  readonly key: string;
  readonly sample: string;
  readonly what: string;
  readonly opened: string;
  readonly closed: string | null;
  readonly exposedMs: number | null;
  readonly tiedTo: string;
  readonly handedTo: string;
  readonly handedAt: string;
  readonly seals: string;
  readonly laboratory: string;
}

/** Every exposure in order of opening; what nobody wrote says so. */
export function custodyOf(printed: Printed): readonly CustodyRow[] {
  const { view } = printed.desk;
  const handed = new Map<
    string,
    { readonly to: string; readonly at: string; readonly seals: string }
  >();
  for (const { effective, standing, entry, at } of view.standing) {
    if (standing !== 'stands' || effective.kind !== 'sampleHandedOver') continue;
    const { samples, to, seals } = effective.body;
    for (const sample of samples) {
      const before = handed.get(sample);
      handed.set(sample, {
        to: before === undefined ? to : `${before.to}, then ${to}`,
        at: printed.clock(at, entry.id),
        seals: seals ?? 'not written',
      });
    }
  }
  const results = printed.results.samples.samples;
  return [...items(view.state.samples)].map(({ sample, sampler, purpose, opened, closed }) => {
    const found = results.find((one) => one.sample === sample && one.opened === opened.at);
    const hand = handed.get(sample);
    const joins = found?.joins ?? [];
    return {
      key: opened.by,
      sample: sample === '' ? 'no id' : sample,
      what: [sampler, purpose].filter((word) => word !== '').join(', '),
      opened: printed.clock(opened.at, opened.by),
      closed: closed === null ? null : printed.clock(closed.at, closed.by),
      exposedMs: closed === null ? null : closed.at - opened.at,
      tiedTo: joins.length === 0 ? 'clear air' : joins.map(({ label }) => label).join(' '),
      handedTo: hand?.to ?? 'not handed over',
      handedAt: hand?.at ?? '',
      seals: hand?.seals ?? '',
      laboratory: found === undefined ? 'pending' : labWords(found),
    };
  });
}

function labWords({ lab }: SampleResult): string {
  if (lab.kind === 'noAnswer') return noResultWords(lab.because);
  const { meanSizeM, numberPerM3, method } = lab.value;
  return [
    meanSizeM === null ? 'no size' : `${figure(1e6 * meanSizeM, 0)}\u00a0µm`,
    numberPerM3 === null ? 'no number' : `${numberWords(numberPerM3 / 1000)} a litre`,
    ...(method === null ? [] : [method]),
  ].join(', ');
}
