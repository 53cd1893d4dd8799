import type { EntryId } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import { WINGS } from '../../record/sheet.ts';
import type { Answer } from '../answer.ts';
import { encounters, type Encounter } from './encounters.ts';
import { distinct, lostShare } from './lossLags.ts';
import { sampleResults, type SampleResult } from './samples.ts';

/** What was in the air of one encounter beside what it did to the flow: a point of the plot, nothing more. */
export interface ParticleEncounter {
  /** Place of the encounter among those of the flight. */
  readonly encounter: number;
  readonly label: string;
  readonly meanSize: Answer<{ readonly meanSizeM: number }, NoParticles, 'meanByOverlap'>;
  /** Less the blank where every joined sample could have it taken off, else as counted. */
  readonly number: Answer<
    { readonly numberPerM3: number },
    NoParticles,
    'meanByOverlapLessBlank' | 'meanByOverlap'
  >;
  /** Of the wing that lost first. */
  readonly firstLoss: Answer<{ readonly lagS: number }, 'nothingLost', 'firstWing'>;
  /** Share of the laminar count that was gone at the lowest, of the wing that lost most. */
  readonly depth: Answer<{ readonly lostFraction: number }, 'nothingLost', 'deepestWing'>;
}

type NoParticles = 'noSample' | 'noResultYet' | 'notGiven';

export function particleEncounters(
  view: FlightView,
  met: readonly Encounter[] = encounters(view),
): readonly ParticleEncounter[] {
  const { samples } = sampleResults(view, met);
  return met.map((encounter, place) => {
    const joined = samples.flatMap((sample) =>
      sample.joins
        .filter((join) => join.encounter === place)
        .map(({ overlapS }) => ({ sample, overlapS })),
    );
    return {
      encounter: place,
      label: encounter.label,
      ...sizeAndNumber(joined),
      firstLoss: firstLossOf(encounter),
      depth: depthOf(encounter),
    };
  });
}

interface Joined {
  readonly sample: SampleResult;
  readonly overlapS: number;
}

function sizeAndNumber(joined: readonly Joined[]): Pick<ParticleEncounter, 'meanSize' | 'number'> {
  const known = joined.filter(({ sample }) => sample.lab.kind === 'answer');
  if (known.length === 0) {
    const because = joined.length === 0 ? 'noSample' : 'noResultYet';
    const entries = distinct(joined.flatMap(({ sample }) => entriesOf(sample)));
    const none = { kind: 'noAnswer', because, entries } as const;
    return { meanSize: none, number: none };
  }
  const entries = distinct(known.flatMap(({ sample }) => entriesOf(sample)));
  const sizeM = weighted(known, ({ lab }) => (lab.kind === 'answer' ? lab.value.meanSizeM : null));
  const less = weighted(known, ({ lessBlank }) =>
    lessBlank.kind === 'answer' ? lessBlank.value.numberPerM3 : null,
  );
  const counted = weighted(known, ({ lab }) =>
    lab.kind === 'answer' ? lab.value.numberPerM3 : null,
  );
  const perM3 = less ?? counted;
  const notGiven = { kind: 'noAnswer', because: 'notGiven', entries } as const;
  return {
    meanSize:
      sizeM === null
        ? notGiven
        : {
            kind: 'answer',
            value: { meanSizeM: sizeM },
            how: { entries, method: 'meanByOverlap', broken: [] },
          },
    number:
      perM3 === null
        ? notGiven
        : {
            kind: 'answer',
            value: { numberPerM3: perM3 },
            how: {
              entries,
              method: less === null ? 'meanByOverlap' : 'meanByOverlapLessBlank',
              broken: [],
            },
          },
  };
}

/** @returns null unless every sample gives it: some corrected and some not make no mean */
function weighted(
  joined: readonly Joined[],
  of: (sample: SampleResult) => number | null,
): number | null {
  let total = 0;
  let weight = 0;
  for (const { sample, overlapS } of joined) {
    const value = of(sample);
    if (value === null) return null;
    total += overlapS * value;
    weight += overlapS;
  }
  return weight > 0 ? total / weight : null;
}

function entriesOf({ exposure, lab, lessBlank }: SampleResult): readonly EntryId[] {
  return [exposure, lab, lessBlank].flatMap((answer) =>
    answer.kind === 'answer' ? answer.how.entries : answer.entries,
  );
}

function firstLossOf({ wings, entry }: Encounter): ParticleEncounter['firstLoss'] {
  const [first] = WINGS.map((wing) => wings[wing].loss.first)
    .filter((answer) => answer.kind === 'answer')
    .toSorted((a, b) => a.value.lagS - b.value.lagS);
  if (first === undefined) return { kind: 'noAnswer', because: 'nothingLost', entries: [entry.by] };
  return {
    kind: 'answer',
    value: { lagS: first.value.lagS },
    how: { entries: first.how.entries, method: 'firstWing', broken: [] },
  };
}

function depthOf({ wings, entry }: Encounter): ParticleEncounter['depth'] {
  const [deepest] = WINGS.flatMap((wing) => {
    const lowest = wings[wing].loss.lowest;
    const lostFraction = lowest.kind === 'answer' ? lostShare(lowest.value) : null;
    if (lowest.kind === 'noAnswer' || lostFraction === null) return [];
    return [{ lostFraction, entries: lowest.how.entries }];
  }).toSorted((a, b) => b.lostFraction - a.lostFraction);
  if (deepest === undefined) {
    return { kind: 'noAnswer', because: 'nothingLost', entries: [entry.by] };
  }
  const { lostFraction, entries } = deepest;
  return {
    kind: 'answer',
    value: { lostFraction },
    how: { entries, method: 'deepestWing', broken: [] },
  };
}
