import { describe, expect, it } from 'vitest';
import { cardsFlown, type CardFlown, type RunFlown } from '../../src/analysis/completion.ts';
import type { Draft } from '../../src/record/entry.ts';
import { startFlight } from '../../src/record/flight.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { flightA, sealed, sheetA, touchAt, viewOfEntries, without, withSheet } from './flights.ts';
import { CRUISE, RUN_START, runOfLooks, type Look } from './steadyRun.ts';

const whole = cardsFlown(viewOfEntries(flightA.entries));

function cardOf(point: string, cards: readonly CardFlown[] = whole.cards): CardFlown {
  const card = cards.find((one) => one.point === point);
  if (card === undefined) throw new RangeError(`${point} must be planned`);
  return card;
}

function endOf(afterS: number, kind: 'testPointEnded' | 'testPointInterrupted'): Draft {
  return {
    kind,
    body: { point: 'TP02', run: 1, ...(kind === 'testPointInterrupted' && { reason: 'traffic' }) },
    stamp: touchAt(RUN_START + afterS * 1000),
  };
}

function flown(
  looks: readonly Look[],
  endS: number,
  sheet: FlightSheet = sheetA,
): { readonly card: CardFlown; readonly run: RunFlown } {
  const drafts = [...runOfLooks(looks, sheet), endOf(endS, 'testPointEnded')];
  const card = cardOf('TP02', cardsFlown(viewOfEntries(sealed(drafts))).cards);
  const [run] = card.runs;
  if (run === undefined) throw new RangeError('TP02 must be flown');
  return { card, run };
}

describe('completion of flight A', () => {
  it('counts cards against the plan', () => {
    expect(whole.planned).toBe(9);
    expect(whole.flown).toBe(9);
    expect(whole.complete).toBe(8);
    expect(whole.unplanned).toEqual([]);
  });

  it('says why TP06 is missed, in the words of the scribe', () => {
    const stopped = flightA.entries.find((entry) => entry.kind === 'testPointTerminated');
    expect(cardOf('TP06').missed).toEqual([
      {
        because: 'terminated',
        run: 1,
        reason: (stopped?.kind === 'testPointTerminated' && stopped.body.reason) || null,
      },
    ]);
  });

  it('does not hold an interrupted run against a card that was flown again', () => {
    const card = cardOf('TP04');
    expect(card.runs.map(({ state }) => state)).toEqual(['interrupted', 'complete']);
    expect(card.missed).toEqual([]);
  });

  it('parts the time of every run into inside, outside and not seen', () => {
    const runs = whole.cards.flatMap((card) => card.runs);
    expect(runs.length).toBe(10);
    for (const run of runs) {
      expect(run.inToleranceS + run.outsideS + run.unobservedS).toBeCloseTo(run.durationS, 6);
      expect(run.entries.length).toBeGreaterThan(1);
    }
    expect(runs.filter(({ inToleranceS }) => inToleranceS > 0).length).toBe(10);
  });
});

describe('time in tolerance', () => {
  it('goes halfway to the next look, and to the ends of the run', () => {
    // Inside at 60 and 120 s, outside (37 110 ft, limit 100) at 240 s, run of 300 s: 0 to 180 in, 180 to 300 out.
    const { run } = flown(
      [
        { afterS: 60, ...CRUISE },
        { afterS: 120, ...CRUISE },
        { afterS: 240, ...CRUISE, heightFt: 37_110 },
      ],
      300,
    );
    expect([run.durationS, run.inToleranceS, run.outsideS, run.unobservedS]).toEqual([
      300, 180, 120, 0,
    ]);
  });

  it('is not claimed for what nobody looked at: a look speaks of five minutes', () => {
    const { run } = flown([{ afterS: 60, ...CRUISE }], 900);
    expect([run.inToleranceS, run.outsideS, run.unobservedS]).toEqual([360, 0, 540]);
  });

  it('is none in a turn', () => {
    const drafts: readonly Draft[] = [
      ...runOfLooks([{ afterS: 60, ...CRUISE }]),
      { kind: 'turnStarted', body: {}, stamp: touchAt(RUN_START + 1000) },
      endOf(120, 'testPointEnded'),
    ];
    const [run] = cardOf('TP02', cardsFlown(viewOfEntries(sealed(drafts))).cards).runs;
    expect([run?.inToleranceS, run?.outsideS]).toEqual([0, 120]);
  });
});

describe('why a card is missed', () => {
  const steady = [60, 120, 180].map((afterS): Look => ({ afterS, ...CRUISE }));

  it('no run at all', () => {
    const view = viewOfEntries(without(flightA.entries, ({ kind }) => kind === 'testPointStarted'));
    expect(cardsFlown(view).flown).toBe(0);
    expect(cardOf('TP05', cardsFlown(view).cards).missed).toEqual([{ because: 'notFlown' }]);
  });

  it('too few readings, with what left the others out', () => {
    const rated = steady.map((look) => ({
      ...look,
      heightFt: look.afterS > 100 ? 37_200 : 37_000,
    }));
    const { card } = flown(rated, 300);
    const [miss] = card.missed;
    expect(card.state).toBe('partial');
    expect(miss).toMatchObject({ because: 'tooFewReadings', run: 1, wanted: 3 });
    expect(miss?.because === 'tooFewReadings' && miss.leftOut).toContainEqual({
      reason: 'altitude',
      times: 2,
    });
  });

  it('too short', () => {
    const cards = sheetA.testCards.map((card) => ({
      ...card,
      minimumReadings: 0,
      minimumSteadyS: 600,
    }));
    const { card } = flown(steady, 240, { ...sheetA, testCards: cards });
    expect(card.missed).toEqual([{ because: 'tooShort', run: 1, heldS: 240, wantedS: 600 }]);
  });

  it('interrupted, with the reason; open, without one', () => {
    const cut = [...runOfLooks(steady), endOf(240, 'testPointInterrupted')];
    expect(cardOf('TP02', cardsFlown(viewOfEntries(sealed(cut))).cards).missed).toEqual([
      { because: 'interrupted', run: 1, reason: 'traffic' },
    ]);
    const open = cardsFlown(viewOfEntries(sealed(runOfLooks(steady))));
    expect(cardOf('TP02', open.cards).missed).toEqual([{ because: 'open', run: 1, reason: null }]);
  });

  it('lists runs that nobody planned apart, and has nothing to say of an empty record', () => {
    const sheet = { ...sheetA, testCards: sheetA.testCards.filter(({ id }) => id !== 'TP03') };
    const view = viewOfEntries(withSheet(flightA.entries, sheet));
    expect(cardsFlown(view).unplanned.map(({ point }) => point)).toEqual(['TP03']);
    expect(cardsFlown(startFlight().view())).toEqual({
      planned: 0,
      flown: 0,
      complete: 0,
      cards: [],
      unplanned: [],
    });
  });
});
