import type { Timed } from '../../record/flightState.ts';
import { wingWords } from '../../record/entryPhrases.ts';
import { measureWords, numberWords } from '../../record/readingWords.ts';
import type { Told } from './sentence.ts';
import { counted, lasting, listed, parts, quoted, type Standing, type Teller } from './teller.ts';

/** The flight as an aircraft flies it: clocks, blocks, covers, level, descent. */
export function flyingTold(teller: Teller): readonly Told[] {
  return [
    ...teller.standing.flatMap((one) => entryTold(teller, one)),
    ...aloftTold(teller),
    ...milestonesTold(teller),
  ];
}

function entryTold(teller: Teller, { by, at, entry }: Standing): readonly Told[] {
  const time = teller.clock(at, by);
  const told = (text: string): readonly Told[] => [{ at, text, entries: [by] }];
  switch (entry.kind) {
    case 'timeHackTaken':
      return told(`At ${time} the clocks were compared, hack ${entry.body.hack}.`);
    case 'preflightDone': {
      const { coversFitted, coversOf, fuel, rampWeight } = entry.body;
      const said = parts(
        coversFitted !== undefined &&
          `${coversFitted}${coversOf === undefined ? '' : ` of ${coversOf}`} covers fitted`,
        fuel && `${measureWords(fuel)} of fuel`,
        rampWeight && `ramp weight ${measureWords(rampWeight)}`,
      );
      return told(`Preflight was done at ${time}${said === '' ? '' : `: ${said}`}.`);
    }
    case 'fuelUplifted':
      return told(`${measureWords(entry.body.amount)} of fuel were taken on at ${time}.`);
    case 'briefHeld':
      return told(
        `The brief was held at ${time}${entry.body.cardRevision === undefined ? '' : `, cards ${quoted(entry.body.cardRevision)}`}.`,
      );
    case 'coversReleased': {
      const { wing, clear = [], hung = [], command } = entry.body;
      const again = command === undefined || command < 2 ? '' : `, command ${command}`;
      const looked = parts(
        clear.length > 0 && `${listed(clear)} clear`,
        hung.length > 0 && `${listed(hung)} hung`,
      );
      return told(
        `Covers on ${wingWords(wing)} were released at ${time}${again}${looked === '' ? '; nobody wrote which went' : `: ${looked}`}.`,
      );
    }
    case 'legStarted': {
      const { leg, from, to } = entry.body;
      const way = parts(from && `from ${quoted(from)}`, to && `to ${quoted(to)}`);
      const which = leg === undefined ? 'A leg' : `Leg ${leg}`;
      return told(`${which} began at ${time}${way === '' ? '' : `, ${way}`}.`);
    }
    case 'levelledOff': {
      const { altitude, grossWeight } = entry.body;
      const state = parts(
        altitude && `at ${measureWords(altitude)}`,
        grossWeight && `gross weight ${measureWords(grossWeight)}`,
      );
      return told(`Level from ${time}${state === '' ? '' : ` ${state}`}.`);
    }
    case 'conditionReached':
      return told(`On condition from ${time}.`);
    case 'conditionLost':
      return told(`Off condition from ${time}.`);
    case 'descentBegun':
      return told(`The descent began at ${time}.`);
    case 'scribeChanged':
      return told(
        `At ${time} the pen went from ${quoted(entry.body.from)} to ${quoted(entry.body.to)}.`,
      );
    case 'flightClosed':
      return told(
        `The flight was closed at ${time} as ${entry.body.how}${entry.body.reason === undefined ? '' : `, ${quoted(entry.body.reason)}`}.`,
      );
    default:
      return [];
  }
}

function milestonesTold({ view, clock }: Teller): readonly Told[] {
  const { blocksOff, takeOffRoll, liftOff, gearUp, gearDown, touchdown, blocksOn } =
    view.state.milestones;
  const together = (named: readonly (readonly [string, Timed | undefined])[]): readonly Told[] => {
    const there = named.flatMap(([words, timed]) =>
      timed === undefined ? [] : [{ words, timed }],
    );
    const [first] = there;
    if (first === undefined) return [];
    const text = there
      .map(({ words, timed }) => `${words} ${clock(timed.at, timed.by)}`)
      .join(', ');
    return [{ at: first.timed.at, text: `${text}.`, entries: there.map(({ timed }) => timed.by) }];
  };
  return [
    ...together([
      ['Blocks off', blocksOff],
      [blocksOff === undefined ? 'Take-off roll' : 'take-off roll', takeOffRoll],
    ]),
    ...together([
      ['Lift-off', liftOff],
      [liftOff === undefined ? 'Gear up' : 'gear up', gearUp],
    ]),
    ...together([
      ['Gear down', gearDown],
      [gearDown === undefined ? 'Touchdown' : 'touchdown', touchdown],
      [gearDown === undefined && touchdown === undefined ? 'Blocks on' : 'blocks on', blocksOn],
    ]),
  ];
}

function aloftTold({ view, results }: Teller): readonly Told[] {
  const { liftOff, touchdown } = view.state.milestones;
  if (liftOff === undefined || touchdown === undefined) return [];
  const { cards, complete, planned, refly } = results.completion;
  const runs = cards.flatMap((card) => card.runs.flatMap(({ entries }) => entries));
  const again =
    refly.length === 0 ? '' : `; to fly again: ${listed(refly.map(({ point }) => point))}`;
  const flown =
    runs.length === 0
      ? ''
      : ` ${numberWords(complete)} of ${counted(planned, 'card')} were completed${again}.`;
  return [
    {
      at: 'sum',
      text: `The aircraft was airborne for ${lasting(touchdown.at - liftOff.at)}.${flown}`,
      entries: [liftOff.by, touchdown.by, ...runs],
    },
  ];
}
