import { noteWords, provisionalWords } from '../../analysis/words/reasons.ts';
import { figure } from '../kit/number.ts';
import { useFly } from './flyContext.ts';
import { expectedWords, laminarWords, netParts } from './liveFigures.ts';
import type { LiveRoom } from './liveRoom.ts';
import type { LiveNow } from './useLive.ts';
import styles from './Live.module.css';

interface Line {
  readonly id: string;
  readonly name: string;
  readonly words: string;
}

/** What the figure is held against: the target, the flow on the wing, the card and what it still wants, and one doubt. */
export function LiveBeside({ live, room }: { readonly live: LiveNow; readonly room: LiveRoom }) {
  const { sheet } = useFly();
  const target = sheet?.targetReductionFraction ?? null;
  const shown = [
    ...(room.netBelow ? [netLine(live)] : []),
    ...flowLines(live),
    cardLine(live),
    ...(target === null || room.netBelow ? [] : [targetLine(target)]),
  ].slice(0, room.lines);
  const notes = notesOf(live, room).slice(0, room.lines - shown.length);
  return (
    <div className={styles.beside}>
      <dl>
        {shown.map(({ id, name, words }) => (
          <div key={id} data-line={id}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      {notes.map((note) => (
        <p key={note} className={styles.note}>
          {note}
        </p>
      ))}
    </div>
  );
}

function targetLine(target: number): Line {
  return { id: 'target', name: 'Target', words: `${figure(target * 100, 0)}\u00a0%` };
}

function netLine({ estimate }: LiveNow): Line {
  const net = netParts(estimate);
  return {
    id: 'net',
    name: 'Net\u00a0%',
    words:
      net.kind === 'net'
        ? `${net.percent}\u00a0±\u00a0${net.half}`
        : net.kind === 'notMetered'
          ? 'not metered'
          : 'not yet',
  };
}

/** The area that is laminar, and what it should take off the drag. */
function flowLines({ laminar, expected }: LiveNow): readonly Line[] {
  const share = { id: 'laminar', name: 'Laminar', words: laminarWords(laminar) };
  const predicts = expectedWords(expected);
  return predicts === null
    ? [share]
    : [share, { id: 'expected', name: 'Predicts', words: predicts }];
}

function cardLine({ card }: LiveNow): Line {
  return {
    id: 'card',
    name: 'Readings',
    words: card === null ? 'no card' : `${card.usableReadings} of ${card.minimumReadings}`,
  };
}

/** Last lines, where there is room: what makes the figure provisional, and how far back its trend goes. */
function notesOf(live: LiveNow, room: LiveRoom): readonly string[] {
  const doubt = doubtOf(live);
  return [
    ...(room.wordsBelow ? ['provisional record'] : []),
    ...(doubt === null ? [] : [doubt]),
    'trend of 30 min',
  ];
}

/** The first thing that makes the figure provisional, or how much of the wing nobody has called. */
function doubtOf({ estimate, laminar }: LiveNow): string | null {
  const [first] =
    estimate.kind === 'notYet'
      ? []
      : [...estimate.provisional.map(provisionalWords), ...estimate.notes.map(noteWords)];
  if (first !== undefined) {
    return first;
  }
  return laminar.kind === 'laminar' && laminar.observedFraction <= 0.995
    ? `${figure(laminar.observedFraction * 100, 0)}\u00a0% of the area seen`
    : null;
}
