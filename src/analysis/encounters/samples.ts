import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { Sample } from '../../record/flightState.ts';
import { items } from '../../record/trail.ts';
import type { Answer } from '../answer.ts';
import { encounters, type Encounter } from './encounters.ts';
import { labResults, type LabResult } from './labResults.ts';
import { distinct } from './lossLags.ts';

/** One exposure of a slide or bottle, what it was exposed to, and what the laboratory found. */
export interface SampleResult {
  /** Empty where the scribe gave no id. */
  readonly sample: string;
  readonly sampler: string;
  readonly purpose: string;
  readonly opened: EpochMs;
  readonly closed: EpochMs | null;
  readonly exposure: Answer<{ readonly exposureS: number }, 'stillOpen', 'closeLessOpen'>;
  readonly joins: readonly Join[];
  /** Time of the exposure outside moisture is clear air. */
  readonly inMoistureFraction: Answer<number, 'stillOpen' | 'noExposure', 'overlapOverExposure'>;
  readonly lab: Answer<LabResult, NoLab, 'byId'>;
  /** Every result that names this sample: a second one overwrites nothing. */
  readonly labResults: readonly LabResult[];
  /** Clear-air blank of the same flight, shown beside. */
  readonly blank: Answer<LabResult, 'isABlank' | 'noBlank' | 'noBlankResult', 'nearestInTime'>;
  readonly lessBlank: Answer<
    { readonly numberPerM3: number },
    NoLessBlank,
    'numberLessBlankNumber'
  >;
}

/** How much of an exposure fell into one encounter. */
export interface Join {
  /** Place of the encounter among those of the flight. */
  readonly encounter: number;
  readonly label: string;
  readonly overlapS: number;
  readonly shareOfExposure: number;
  /** Share of the time this sample spent in any moisture. */
  readonly weight: number;
}

export type NoLab = 'noSampleId' | 'noResultYet' | 'resultsDisagree' | 'sampleExposedTwice';

export type NoLessBlank =
  | 'isABlank'
  | 'noBlank'
  | 'noBlankResult'
  | NoLab
  | 'noNumber'
  /** Numbers are compared only where both were found in the same way. */
  | 'methodsDiffer'
  | 'methodNotGiven';

export interface SampleResults {
  readonly samples: readonly SampleResult[];
  /** Results for an id that nobody exposed in this flight: held until somebody says whose they are. */
  readonly unmatched: readonly LabResult[];
}

export function sampleResults(
  view: FlightView,
  met: readonly Encounter[] = encounters(view),
): SampleResults {
  const exposed = [...items(view.state.samples)];
  const results = labResults(view);
  const parts = exposed.map((sample) => partOf(sample, exposed, met, results));
  const blanks = parts.filter(isBlank);
  return {
    samples: parts.map((part) => {
      const blank = blankFor(part, blanks);
      return { ...part, blank, lessBlank: lessBlank(part, blank) };
    }),
    unmatched: results.filter((result) => !exposed.some(({ sample }) => sample === result.sample)),
  };
}

type Part = Omit<SampleResult, 'blank' | 'lessBlank'> & { readonly by: EntryId };

function partOf(
  { sample, sampler, purpose, opened, closed }: Sample,
  exposed: readonly Sample[],
  met: readonly Encounter[],
  results: readonly LabResult[],
): Part {
  const own = sample === '' ? [] : results.filter((result) => result.sample === sample);
  const head = { sample, sampler, purpose, opened: opened.at, closed: closed?.at ?? null };
  const lab = labOf(sample, own, exposed, opened.by);
  const common = { ...head, by: opened.by, lab, labResults: own };
  if (closed === null) {
    const open = { kind: 'noAnswer', because: 'stillOpen', entries: [opened.by] } as const;
    return { ...common, exposure: open, joins: [], inMoistureFraction: open };
  }
  const exposureS = (closed.at - opened.at) / 1000;
  const joins = joinsOf(opened.at, closed.at, met);
  const entries = distinct([opened.by, closed.by]);
  const shares = joins.reduce((total, { shareOfExposure }) => total + shareOfExposure, 0);
  return {
    ...common,
    exposure: {
      kind: 'answer',
      value: { exposureS },
      how: { entries, method: 'closeLessOpen', broken: [] },
    },
    joins,
    inMoistureFraction:
      exposureS > 0
        ? {
            kind: 'answer',
            // Encounters that overlap each other would count the same seconds twice.
            value: Math.min(1, shares),
            how: { entries, method: 'overlapOverExposure', broken: [] },
          }
        : { kind: 'noAnswer', because: 'noExposure', entries },
  };
}

function joinsOf(from: EpochMs, to: EpochMs, met: readonly Encounter[]): readonly Join[] {
  const overlaps = met.flatMap(({ label, entry, exit }, encounter) => {
    const until = Math.min(to, exit?.at ?? to);
    const overlapS = (until - Math.max(from, entry.at)) / 1000;
    return overlapS > 0 ? [{ encounter, label, overlapS }] : [];
  });
  const totalS = overlaps.reduce((total, { overlapS }) => total + overlapS, 0);
  return overlaps.map((join) => ({
    ...join,
    shareOfExposure: (join.overlapS * 1000) / (to - from),
    weight: join.overlapS / totalS,
  }));
}

function labOf(
  sample: string,
  own: readonly LabResult[],
  exposed: readonly Sample[],
  openedBy: EntryId,
): SampleResult['lab'] {
  const entries = distinct([openedBy, ...own.map(({ by }) => by)]);
  const none = (because: NoLab): SampleResult['lab'] => ({ kind: 'noAnswer', because, entries });
  if (sample === '') return none('noSampleId');
  const [first, ...others] = own;
  if (first === undefined) return none('noResultYet');
  if (exposed.filter((other) => other.sample === sample).length > 1) {
    return none('sampleExposedTwice');
  }
  if (others.some((other) => !saysTheSame(first, other))) return none('resultsDisagree');
  return { kind: 'answer', value: first, how: { entries, method: 'byId', broken: [] } };
}

function saysTheSame(one: LabResult, other: LabResult): boolean {
  return (
    one.meanSizeM === other.meanSizeM &&
    one.numberPerM3 === other.numberPerM3 &&
    one.method === other.method
  );
}

/** Meant as a blank by the word of the scribe, and exposed in clear air alone. */
function isBlank({ purpose, joins, closed }: Part): boolean {
  return /\bblank\b/i.test(purpose) && joins.length === 0 && closed !== null;
}

function blankFor(part: Part, blanks: readonly Part[]): SampleResult['blank'] {
  const none = (
    because: 'isABlank' | 'noBlank' | 'noBlankResult',
    entries: readonly EntryId[],
  ): SampleResult['blank'] => ({ kind: 'noAnswer', because, entries });
  if (isBlank(part)) return none('isABlank', [part.by]);
  const found = blanks.filter(({ lab }) => lab.kind === 'answer');
  const [nearest] = found.toSorted(
    (a, b) => Math.abs(a.opened - part.opened) - Math.abs(b.opened - part.opened),
  );
  if (nearest === undefined || nearest.lab.kind === 'noAnswer') {
    return none(
      blanks.length === 0 ? 'noBlank' : 'noBlankResult',
      blanks.map(({ by }) => by),
    );
  }
  return { ...nearest.lab, how: { ...nearest.lab.how, method: 'nearestInTime' } };
}

function lessBlank({ lab }: Part, blank: SampleResult['blank']): SampleResult['lessBlank'] {
  if (blank.kind === 'noAnswer') return blank;
  if (lab.kind === 'noAnswer') return lab;
  const entries = distinct([...lab.how.entries, ...blank.how.entries]);
  const [own, clear] = [lab.value, blank.value];
  const none = (because: NoLessBlank): SampleResult['lessBlank'] => ({
    kind: 'noAnswer',
    because,
    entries,
  });
  if (own.numberPerM3 === null || clear.numberPerM3 === null) return none('noNumber');
  if (own.method === null || clear.method === null) return none('methodNotGiven');
  if (own.method.trim().toLowerCase() !== clear.method.trim().toLowerCase()) {
    return none('methodsDiffer');
  }
  return {
    kind: 'answer',
    value: { numberPerM3: own.numberPerM3 - clear.numberPerM3 },
    how: { entries, method: 'numberLessBlankNumber', broken: [] },
  };
}
