import { STOP_WORDS } from '../../record/entryPhrases.ts';
import { numberWords } from '../../record/readingWords.ts';
import type { Told } from './sentence.ts';
import { counted, quoted, type Standing, type Teller } from './teller.ts';

/** What people said and decided, in their own words between quotation marks, and what was put right after. */
export function saidTold(teller: Teller): readonly Told[] {
  return [...teller.standing.flatMap((one) => entryTold(teller, one)), ...amendedTold(teller)];
}

function entryTold({ clock }: Teller, { by, at, entry }: Standing): readonly Told[] {
  const time = clock(at, by);
  const told = (text: string): readonly Told[] => [{ at, text, entries: [by] }];
  switch (entry.kind) {
    case 'pilotCommented':
      return told(`At ${time} the pilot said: ${quoted(entry.body.words)}.`);
    case 'engineerCalled':
      return told(`At ${time} the engineer called: ${quoted(entry.body.words)}.`);
    case 'noted': {
      const { words, target } = entry.body;
      return target === undefined
        ? told(`Noted at ${time}: ${quoted(words)}.`)
        : [{ at, text: `Noted at ${time}: ${quoted(words)}.`, entries: [by, target] }];
    }
    case 'markMade':
      return told(
        entry.body.note === undefined
          ? `A mark was made at ${time}, without words of its own.`
          : `Marked at ${time}: ${quoted(entry.body.note)}.`,
      );
    case 'stopCalled':
      return told(
        `At ${time} ${STOP_WORDS[entry.body.call]} was called${entry.body.reason === undefined ? '' : `: ${quoted(entry.body.reason)}`}.`,
      );
    case 'jokerReached':
      return told(`Joker fuel was reached at ${time}.`);
    case 'bingoReached':
      return told(`Bingo fuel was reached at ${time}.`);
    case 'throttleChanged':
      return told(
        `The throttles were moved at ${time}${entry.body.setting === undefined ? '' : `, ${quoted(entry.body.setting)}`}.`,
      );
    case 'ownEventMarked': {
      const { label, form } = entry.body;
      return told(`At ${time}: ${quoted(label)}${form === 'instant' ? '' : `, ${form}`}.`);
    }
    default:
      return [];
  }
}

function amendedTold({ view }: Teller): readonly Told[] {
  const amended = view.standing.filter(({ amendedBy }) => amendedBy.length > 0);
  const withdrawn = view.standing.filter(({ standing }) => standing === 'withdrawn');
  const changed = [...amended, ...withdrawn];
  if (changed.length === 0) return [];
  const verb = (count: number): string => (count === 1 ? 'was' : 'were');
  const said = [
    ...(amended.length === 0
      ? []
      : [
          `${counted(amended.length, 'entry').replace(/entrys$/, 'entries')} ${verb(amended.length)} amended`,
        ]),
    ...(withdrawn.length === 0
      ? []
      : [`${numberWords(withdrawn.length)} ${verb(withdrawn.length)} withdrawn`]),
  ];
  return [
    {
      at: 'sum',
      text: `${said.join(' and ')}; what was written first stays in the log.`,
      entries: [
        ...changed.map(({ entry }) => entry.id),
        ...amended.flatMap(({ amendedBy }) => amendedBy),
        ...withdrawn.flatMap(({ withdrawnBy }) => (withdrawnBy === null ? [] : [withdrawnBy])),
      ],
    },
  ];
}
