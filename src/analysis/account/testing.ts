import { wingWords } from '../../record/entryPhrases.ts';
import { items } from '../../record/trail.ts';
import type { PointOfFlight } from '../flightResults.ts';
import { gateWords, leftOutWords } from '../words/gates.ts';
import { stateWords } from '../words/points.ts';
import { missingWords } from '../words/reasons.ts';
import type { Told } from './sentence.ts';
import {
  counted,
  listed,
  parts,
  percentWords,
  quoted,
  type Standing,
  type Teller,
} from './teller.ts';

/** Suction, points and what they came to. */
export function testingTold(teller: Teller): readonly Told[] {
  return [
    ...teller.standing.flatMap((one) => entryTold(teller, one)),
    ...teller.results.points.map((point) => pointTold(teller, point)),
    ...savingTold(teller),
  ];
}

function entryTold(teller: Teller, { by, at, entry }: Standing): readonly Told[] {
  const time = teller.clock(at, by);
  const told = (text: string): readonly Told[] => [{ at, text, entries: [by] }];
  switch (entry.kind) {
    case 'suctionUnitSwitched':
      return told(`The suction unit was switched ${entry.body.on ? 'on' : 'off'} at ${time}.`);
    case 'suctionTurnedOn':
    case 'suctionChanged': {
      const { wing, setting, region } = entry.body;
      const to = parts(setting && quoted(setting), region && quoted(region));
      const did = entry.kind === 'suctionTurnedOn' ? 'came on' : 'was changed';
      return told(
        `Suction on ${wingWords(wing)} ${did} at ${time}${to === '' ? '' : `, set to ${to}`}.`,
      );
    }
    case 'suctionTurnedOff':
      return told(`Suction on ${wingWords(entry.body.wing)} went off at ${time}.`);
    default:
      return [];
  }
}

function pointTold(teller: Teller, point: PointOfFlight): Told {
  const { view, clock } = teller;
  const run = [...items(view.state.runs)].find(
    (one) => one.point === point.point && one.run === point.run,
  );
  const [opened, closed] = point.entries;
  const from = opened === undefined ? '' : ` from ${clock(point.startedAt, opened)}`;
  const until =
    point.endedAt === null || closed === undefined
      ? ', never ended'
      : ` to ${clock(point.endedAt, closed)}`;
  const name = parts(
    `${point.point} run ${point.run}`,
    point.title !== '' && quoted(point.title),
    point.setting !== '' && point.setting !== point.title && quoted(point.setting),
  );
  const reason = run?.reason === null || run?.reason === undefined ? '' : `, ${quoted(run.reason)}`;
  const state = point.state === 'open' ? '' : `, ${stateWords(point)}${reason}`;
  const { text, entries } = numberTold(teller, point);
  return {
    at: point.startedAt,
    text: `${name}, was flown${from}${until}${state}: ${text}${leftOutTold(point)}.`,
    entries: [
      ...point.entries,
      ...entries,
      ...point.readingsUsed.flatMap((reading) => reading.entries),
      ...point.readingsLeftOut.flatMap((reading) => reading.entries),
    ],
  };
}

function numberTold(
  { flow }: Teller,
  { result, readingsUsed }: PointOfFlight,
): Pick<Told, 'text' | 'entries'> {
  const n = counted(readingsUsed.length, 'reading');
  switch (result.kind) {
    case 'none':
      return { text: `no number, ${missingWords(result.because)}`, entries: result.entries };
    case 'baseline':
      return {
        text: `suction off, ${flow(result.flowAtCardKgPerS)} at the card in the mean of ${n}`,
        entries: result.entries,
      };
    case 'valid':
    case 'indicative': {
      const { fuel, drag, netKgPerS, broken, madeOf } = result;
      const said = parts(
        `${percentWords(fuel.fraction, fuel.interval95)} less fuel flow`,
        !('because' in drag) && `${percentWords(drag.fraction, drag.interval95)} less drag`,
        netKgPerS !== null && `${flow(netKgPerS)} net`,
        `from ${n}`,
        result.kind === 'indicative' && 'indicative only',
        broken.length > 0 && `struck: ${broken.map(gateWords).join(', ')}`,
      );
      return { text: said, entries: madeOf.entries };
    }
  }
}

function leftOutTold({ readingsLeftOut }: PointOfFlight): string {
  if (readingsLeftOut.length === 0) return '';
  const why = [...new Set(readingsLeftOut.flatMap(({ broken }) => broken.map(leftOutWords)))];
  return `; ${counted(readingsLeftOut.length, 'reading')} left out (${listed(why)})`;
}

function savingTold({ results, clock, mass }: Teller): readonly Told[] {
  return results.suctionSpans.flatMap(({ saving, from, to }): readonly Told[] => {
    if (saving.kind === 'noAnswer') return [];
    const { gross, net } = saving.value;
    const { entries, broken } = saving.how;
    const [first] = entries;
    if (first === undefined || 'because' in net) return [];
    const struck = broken.length === 0 ? '' : ', read with its gates';
    const ofGross = 'because' in gross ? '' : `${mass(gross.kg)} gross and `;
    return [
      {
        at: 'sum',
        text: `With suction on from ${clock(from, first)} to ${clock(to, first)} the flight saved ${ofGross}${mass(net.kg)} net of fuel, ${percentWords(net.fraction, fractions(net))} of what it would have burnt${struck}.`,
        entries,
      },
    ];
  });
}

/** A mass with its interval, as shares of the same whole. */
function fractions(figure: {
  readonly kg: number;
  readonly fraction: number;
  readonly interval95: { readonly low: number; readonly high: number };
}): { readonly low: number; readonly high: number } {
  const { kg, fraction, interval95 } = figure;
  const whole = kg === 0 ? 0 : fraction / kg;
  return { low: whole * interval95.low, high: whole * interval95.high };
}
