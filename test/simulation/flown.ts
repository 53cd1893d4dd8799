import type { Draft } from '../../src/record/entry.ts';
import type { KnownKind } from '../../src/record/kinds.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { touchAt } from '../analysis/flights.ts';
import { aloft, type Span } from './aloft.ts';
import type { Chance } from './chance.ts';
import type { Drawn } from './draw.ts';
import { digitLost, spoilt, type Fault, type Spoiling } from './faults.ts';
import { look } from './gauges.ts';
import { fuelKgPerS, worthOf, type Worth } from './nature.ts';
import { someWander, wandered, type Wander } from './wander.ts';

/** What is true at one reading. */
export interface Truth {
  readonly point: string;
  readonly worth: Worth;
  readonly spoilt: boolean;
  /** First or last of its run: there the live figure is looked at. */
  readonly atEnd: boolean;
}

export interface Flown {
  readonly drafts: readonly Draft[];
  /** By number of glance; null where no flow was read. */
  readonly truths: readonly (Truth | null)[];
  readonly spans: readonly Span[];
}

const START_MS = Date.parse('2032-06-02T22:00:00Z');
const FOOT_M = 0.3048;
/** A touch for suction on or off is this late or early, one standard deviation, as the flight sheet says. */
const TOUCH_DOUBT_S = 2;

type Run = Drawn['runs'][number];
type Unstamped = {
  readonly [Kind in KnownKind]: Pick<Extract<Draft, { kind: Kind }>, 'kind' | 'body'>;
}[KnownKind];

/** Flies a drawn flight, and writes down what a crew would have. */
export function flown(
  drawn: Drawn,
  sheet: FlightSheet,
  chance: Chance,
  spoiling: Spoiling | null,
): Flown {
  const { aircraft, says } = drawn;
  const cardAltitudeM = drawn.cardAltitudeFt * FOOT_M;
  const drafts: Draft[] = [];
  const truths: (Truth | null)[] = [];
  const gateSees = spoiling?.gate === 'asItIs';
  const flight = aloft(drawn, chance.between(0.03, 0.05));

  write({
    kind: 'flightOpened',
    body: { nature: 'practice', title: 'known', date: '2032-06-02', device: 'tablet', sheet },
  });
  for (const run of drawn.runs) {
    turnSuction(run);
    flight.fly(chance.between(310, 700));
    flyRun(run);
  }
  return { drafts, truths, spans: flight.spans() };

  function write(what: Unstamped, lateS = 0): void {
    const atMs = START_MS + Math.round((flight.seconds() + lateS) * 1000);
    drafts.push({ ...what, stamp: touchAt(atMs) });
  }

  function turnSuction(run: Run): void {
    const on = run.suction === 'on';
    if (on && flight.suctionIsOn()) write({ kind: 'suctionChanged', body: { wing: 'both' } });
    else if (on !== flight.suctionIsOn()) {
      const body = { wing: 'both', readings: flight.counters() } as const;
      const lateS = chance.normal(TOUCH_DOUBT_S);
      write(on ? { kind: 'suctionTurnedOn', body } : { kind: 'suctionTurnedOff', body }, lateS);
      truths.push(null);
    }
    flight.setSuction(run);
  }

  function flyRun(run: Run): void {
    const fault = spoiling?.suction === run.suction ? spoiling.fault : null;
    const calledLate = fault === 'beforeOnCondition' && gateSees;
    if (!calledLate) write({ kind: 'conditionReached', body: {} });
    flight.fly(5);
    write({ kind: 'testPointStarted', body: { point: run.point, run: 1 } });
    const bad = fault === null ? [] : badPlaces(fault, run.readings);
    const total = run.readings + bad.length;
    const apartS = chance.between(45, 90);
    const wander = someWander(chance, says.machHold, flight.seconds() + (total * apartS) / 2);
    const sign = chance.oneOf([1, -1]);
    for (let place = 0; place < total; place += 1) {
      flight.fly(apartS * chance.between(0.8, 1.2));
      if (calledLate && place === bad.length) write({ kind: 'conditionReached', body: {} });
      const amiss = bad.includes(place) ? fault : null;
      if (gateSees) tellOf(amiss, 'start');
      flight.fly(2);
      readGauges(run, wander, { amiss, sign, atEnd: place === 0 || place === total - 1 });
      flight.fly(2);
      if (gateSees) tellOf(amiss, 'end');
    }
    flight.fly(10);
    write({ kind: 'testPointEnded', body: { point: run.point, run: 1 } });
  }

  /** What the crew writes about turns and moisture; the gates look at nothing else. */
  function tellOf(amiss: Fault | null, when: 'start' | 'end'): void {
    if (amiss === 'turn') {
      write({ kind: when === 'start' ? 'turnStarted' : 'turnEnded', body: {} });
    }
    if (amiss === 'moisture') {
      write({ kind: when === 'start' ? 'moistureEntered' : 'moistureExited', body: {} });
    }
  }

  function readGauges(
    run: Run,
    wander: Wander,
    {
      amiss,
      sign,
      atEnd,
    }: { readonly amiss: Fault | null; readonly sign: 1 | -1; readonly atEnd: boolean },
  ): void {
    const good = wandered(wander, flight.seconds(), flight.steady());
    const seen = amiss === null ? good : spoilt(amiss, good, sign, chance);
    const unitKgPerS = flight.unitKgPerS();
    const shown = look(chance, drawn, {
      flowKgPerS: fuelKgPerS(aircraft, seen.moment) * seen.surplus,
      unitKgPerS,
      seen,
    });
    const keyed = amiss === 'engineKeyedWrong' ? digitLost(shown, 'FF1') : shown;
    write({ kind: 'fuelRead', body: { readings: [...keyed, ...flight.counters()] } });
    const worth = worthOf(aircraft, good.moment, { unitKgPerS, cardAltitudeM });
    truths.push({ point: run.point, worth, spoilt: amiss !== null, atEnd });
  }
}

/** Half as many bad readings as good ones: first of all before on condition, else every third. */
function badPlaces(fault: Fault, good: number): readonly number[] {
  const count = Math.ceil(good / 2);
  return Array.from({ length: count }, (_, index) =>
    fault === 'beforeOnCondition' ? index : 1 + 3 * index,
  ).filter((place) => place < good + count);
}
