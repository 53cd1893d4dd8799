import type { EntryId } from '../../record/brand.ts';
import { numberWords } from '../../record/readingWords.ts';
import { items } from '../../record/trail.ts';
import { WINGS, type Wing } from '../../record/sheet.ts';
import type { Answer } from '../answer.ts';
import type { Encounter } from '../encounters/encounters.ts';
import type { Loss } from '../encounters/losses.ts';
import { countWords } from '../words/encounters.ts';
import type { Told } from './sentence.ts';
import { lasting, listed, parts, quoted, type Teller } from './teller.ts';

/** Moisture and what it did, samples, turbulence, and flow that came and went outside of cloud. */
export function weatherTold(teller: Teller): readonly Told[] {
  const inMoisture = new Set(
    teller.results.encounters.flatMap((encounter) =>
      WINGS.flatMap((wing) => lossOf(encounter, wing)?.by ?? []),
    ),
  );
  return [
    ...teller.results.encounters.map((encounter) => encounterTold(teller, encounter)),
    ...samplesTold(teller),
    ...turbulenceTold(teller),
    ...lossesTold(teller, inMoisture),
  ];
}

function encounterTold({ clock }: Teller, encounter: Encounter): Told {
  const { label, look, cover, iceSeen, entry, exit } = encounter;
  const name = label === '' ? 'Moisture' : `Moisture ${quoted(label)}`;
  const sight = parts(
    look !== null && quoted(look),
    cover !== null && `${cover} cover`,
    iceSeen !== null && (iceSeen ? 'ice seen' : 'no ice seen'),
  );
  const left =
    exit === null
      ? 'and was never closed'
      : `and left at ${clock(exit.at, exit.by)}, after ${lasting(exit.at - entry.at)}`;
  const wings = WINGS.flatMap((wing) => wingWords(encounter, wing));
  return {
    at: entry.at,
    text: `${name}${sight === '' ? '' : ` (${sight})`} was entered at ${clock(entry.at, entry.by)} ${left}${wings.length === 0 ? '' : `; ${wings.join('; ')}`}.`,
    entries: [
      entry.by,
      ...(exit === null ? [] : [exit.by]),
      ...WINGS.flatMap((wing) => lagEntries(encounter, wing)),
    ],
  };
}

function lossOf({ wings }: Encounter, wing: Wing): { readonly by: EntryId } | null {
  const { first } = wings[wing].loss;
  return first.kind === 'answer' ? first.value.seen : null;
}

function lagEntries({ wings }: Encounter, wing: Wing): readonly EntryId[] {
  const { first } = wings[wing].loss;
  const { toCount } = wings[wing].recovery;
  return [first, toCount].flatMap((lag) => (lag.kind === 'answer' ? lag.how.entries : []));
}

function wingWords({ wings }: Encounter, wing: Wing): readonly string[] {
  const { first } = wings[wing].loss;
  if (first.kind === 'noAnswer') return [];
  const { from, to } = first.value;
  const count = from === null || to === null ? '' : `, ${countWords(from)} to ${countWords(to)}`;
  const back = wings[wing].recovery.toCount;
  const again =
    back.kind === 'noAnswer' ? '' : `, back to its count ${secondsWords(back)} after the exit`;
  return [`${wing} lost flow ${secondsWords(first)} after the entry${count}${again}`];
}

function secondsWords(
  lag: Extract<
    Answer<
      { readonly lagS: number; readonly lagStandardUncertaintyS: number },
      string,
      string,
      string
    >,
    { readonly kind: 'answer' }
  >,
): string {
  const { lagS, lagStandardUncertaintyS } = lag.value;
  return `${numberWords(lagS, 0)} ± ${numberWords(lagStandardUncertaintyS, 0)}\u00a0s`;
}

function samplesTold({ view, clock }: Teller): readonly Told[] {
  return [...items(view.state.samples)].map(({ sample, sampler, purpose, opened, closed }) => {
    const name = sample === '' ? 'A sample without an id' : `Sample ${quoted(sample)}`;
    const what = parts(sampler !== '' && quoted(sampler), purpose !== '' && quoted(purpose));
    const until =
      closed === null
        ? `from ${clock(opened.at, opened.by)}; the sampler was never closed`
        : `from ${clock(opened.at, opened.by)} to ${clock(closed.at, closed.by)}`;
    return {
      at: opened.at,
      text: `${name}${what === '' ? '' : ` (${what})`} was exposed ${until}.`,
      entries: closed === null ? [opened.by] : [opened.by, closed.by],
    };
  });
}

function turbulenceTold({ view, clock }: Teller): readonly Told[] {
  return [...items(view.state.intervals)]
    .filter(({ kind }) => kind === 'turbulence')
    .map(({ label, opened, closed }) => {
      const until =
        closed === null ? ' and was never closed' : ` and ended at ${clock(closed.at, closed.by)}`;
      return {
        at: opened.at,
        text: `Turbulence${label === '' ? '' : `, ${quoted(label)},`} began at ${clock(opened.at, opened.by)}${until}.`,
        entries: closed === null ? [opened.by] : [opened.by, closed.by],
      };
    });
}

/** Both wings of one call in one sentence; what cloud took is told with the cloud. */
function lossesTold(teller: Teller, inMoisture: ReadonlySet<EntryId>): readonly Told[] {
  const calls = new Map<EntryId, Loss[]>();
  for (const loss of teller.results.losses) {
    if (!inMoisture.has(loss.seen.by)) {
      const key = loss.seen.by;
      calls.set(key, [...(calls.get(key) ?? []), loss]);
    }
  }
  return [...calls].flatMap(([by, losses]): readonly Told[] => {
    const [first] = losses;
    if (first === undefined) return [];
    const causes = first.causes.map(
      ({ cause, reason, role }) => `; ${role} assigned ${quoted(cause)}: ${quoted(reason)}`,
    );
    const never = losses.filter(({ kind }) => kind === 'neverLaminar').flatMap(namesOf);
    const lost = losses.filter(({ kind }) => kind === 'lost');
    const how = `${first.byCommand ? ' by command' : ''}${first.inReading ? ' then or before, found in a reading,' : ''}`;
    const said = parts(
      lost.length > 0 && `flow was lost${how} on ${lost.map(whereWords).join(' and on ')}`,
      never.length > 0 && `never laminar after suction on: ${listed(never)}`,
    );
    return [
      {
        at: first.seen.at,
        text: `At ${teller.clock(first.seen.at, by)} ${said}${causes.join('')}.`,
        entries: [by, ...first.causes.map((cause) => cause.by)],
      },
    ];
  });
}

const NAMED_AT_MOST = 6;

function namesOf({ probes, panels }: Loss): readonly string[] {
  return probes.length > 0 ? probes : panels;
}

/** `L from 22 of 24 to 21 of 24 (L22)`; of many only the count. */
function whereWords(loss: Loss): string {
  const { wing, from, to } = loss;
  const names = namesOf(loss);
  const named = names.length === 0 || names.length > NAMED_AT_MOST ? '' : ` (${listed(names)})`;
  const before = from === null ? '' : ` from ${countWords(from)}`;
  const after = to === null ? '' : ` to ${countWords(to)}`;
  return `${wing}${before}${after}${named}`;
}
