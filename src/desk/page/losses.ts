import type { Loss } from '../../analysis/encounters/losses.ts';
import { countWords } from '../../analysis/words/encounters.ts';
import { candidateWords, evidenceWords } from '../../analysis/words/evidence.ts';
import { headed, note, wrapped } from './layout.ts';
import { namesWords } from './names.ts';
import type { Paper } from './paper.ts';

/** Q2: where flow was lost and what speaks for which cause; what people decided stands beside it. */
export function lossesSection(paper: Paper): readonly string[] {
  const { losses } = paper.results;
  const [first] = losses;
  if (first === undefined) return headed(HEADING, ['No loss was called.']);
  const common = {
    unknown: candidatesUnknown(first).filter((candidate) =>
      losses.every((loss) => candidatesUnknown(loss).includes(candidate)),
    ),
    assigned: losses.some(({ causes }) => causes.length > 0),
  };
  return headed(HEADING, [
    ...sameMoment(losses).flatMap((together) => lossLines(paper, together, common)),
    ...wrapped(
      [
        ...(common.unknown.length === 0
          ? []
          : [`Of none can be told: ${common.unknown.map(candidateWords).join(', ')}.`]),
        common.assigned ? 'Causes are assigned by people.' : 'No cause was assigned by anybody.',
      ].join(' '),
    ),
  ]);
}

const HEADING = 'Flow lost, and what speaks for which cause';

type Candidate = Loss['evidence'][number]['candidate'];

/** What is true of every loss is said once, under all of them. */
interface Common {
  readonly unknown: readonly Candidate[];
  readonly assigned: boolean;
}

function candidatesUnknown({ evidence }: Loss): readonly Candidate[] {
  return evidence.filter(({ finding }) => finding === 'unknown').map(({ candidate }) => candidate);
}

/** Both wings of one call as one item. */
function sameMoment(losses: readonly Loss[]): readonly (readonly Loss[])[] {
  const groups: Loss[][] = [];
  for (const loss of losses) {
    const group = groups.at(-1);
    const first = group?.[0];
    if (group !== undefined && first?.seen.by === loss.seen.by && first.kind === loss.kind) {
      group.push(loss);
    } else {
      groups.push([loss]);
    }
  }
  return groups;
}

function lossLines(paper: Paper, together: readonly Loss[], common: Common): readonly string[] {
  const [first] = together;
  if (first === undefined) return [];
  const { seen, kind, inReading } = first;
  const wings = together.map((loss) => `${loss.wing} ${whereWords(loss)}`).join('; ');
  const bound = inReading ? ', found in a probe reading: then or before' : '';
  const said = new Set(together.map((loss) => evidenceLine(paper, loss, common)));
  return [
    ...wrapped(
      `${paper.clock(seen.at, seen.by)} ${kind === 'lost' ? 'lost' : 'never laminar'}: ${wings}${bound} ${paper.cite([seen.by])}`,
      { hanging: '          ' },
    ),
    ...(said.size === 1
      ? [...said].flatMap(note)
      : together.flatMap((loss) => note(`${loss.wing} ${evidenceLine(paper, loss, common)}`))),
  ];
}

function whereWords({ from, to, probes, panels }: Loss): string {
  const where = probes.length > 0 ? probes : panels;
  const count = [from, to].flatMap((one) => (one === null ? [] : [countWords(one)])).join(' to ');
  return [
    ...(count === '' ? [] : [count]),
    ...(where.length === 0 ? [] : [namesWords(where)]),
  ].join(', ');
}

function evidenceLine(paper: Paper, loss: Loss, common: Common): string {
  const speaks = loss.evidence.flatMap((one) => {
    const words = evidenceWords(one, paper.view.state.sheet);
    return words === null ? [] : [`${words} ${paper.cite(one.entries)}`.trimEnd()];
  });
  const unknown = candidatesUnknown(loss)
    .filter((candidate) => !common.unknown.includes(candidate))
    .map(candidateWords);
  const causes = loss.causes.map(
    ({ cause, reason, role, by }) => `assigned by ${role}: ${cause}, ${reason} ${paper.cite([by])}`,
  );
  return [
    speaks.join('; '),
    ...(unknown.length === 0 ? [] : [`cannot be told: ${unknown.join(', ')}`]),
    ...(causes.length === 0 && common.assigned ? ['no cause assigned'] : causes),
  ].join('. ');
}
