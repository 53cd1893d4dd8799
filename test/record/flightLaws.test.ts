import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/record/entry.ts';
import { startFlight, viewOf, type FlightView } from '../../src/record/flight.ts';
import type { FlightState } from '../../src/record/flightState.ts';
import { anyLog, anyPortions } from './anyLog.ts';
import { chained, REC_A } from './writing.ts';

const short = { minLength: 1, maxLength: 40 };
/** Past several checkpoints of the projection. */
const long = { minLength: 280, maxLength: 420 };

function grown(portions: readonly (readonly Entry[])[]): FlightView {
  const flight = startFlight();
  portions.forEach((portion) => flight.add(portion));
  return flight.view();
}

/** What a state says, less how many entries it took to say it. */
function meaning({ entryCount: _count, lastAt: _lastAt, ...said }: FlightState): unknown {
  return said;
}

describe('the projection', () => {
  it('does not depend on the order in which entries come', () => {
    const anyOrder = anyLog(short).chain((log) => fc.tuple(fc.constant(log), anyPortions(log)));
    fc.assert(
      fc.property(anyOrder, ([log, portions]) => {
        const [whole, piecemeal] = [viewOf(log), grown(portions)];
        expect(piecemeal.state).toEqual(whole.state);
        expect(piecemeal.standing).toEqual(whole.standing);
      }),
      { numRuns: 300 },
    );
  });

  it('does not depend on it in a long flight either, touch by touch or in any portions', () => {
    const anyOrder = anyLog(long).chain((log) => fc.tuple(fc.constant(log), anyPortions(log)));
    fc.assert(
      fc.property(anyOrder, ([log, portions]) => {
        const whole = viewOf(log);
        expect(grown(log.map((entry) => [entry])).state).toEqual(whole.state);
        const piecemeal = grown(portions);
        expect(piecemeal.state).toEqual(whole.state);
        expect(piecemeal.standing).toEqual(whole.standing);
      }),
      { numRuns: 5, endOnFailure: true },
    );
  }, 60_000);

  it('says of a withdrawn entry what it says had it never been made', () => {
    const anyVictim = anyLog(short).chain((log) =>
      fc.tuple(fc.constant(log), fc.integer({ min: 1, max: log.length - 1 })),
    );
    fc.assert(
      fc.property(anyVictim, ([log, index]) => {
        const victim = log[index];
        fc.pre(victim !== undefined);
        const head = log.findLast((entry) => entry.rec === REC_A) ?? null;
        const withdrawal = chained(
          [{ kind: 'entryWithdrawn', body: { target: victim.id, reason: 'wrong button' } }],
          { head },
        );
        const without = log.filter((entry) => entry !== victim);
        expect(meaning(viewOf([...log, ...withdrawal]).state)).toEqual(
          meaning(viewOf(without).state),
        );
      }),
      { numRuns: 300 },
    );
  });

  it('says the same again when a withdrawal is withdrawn', () => {
    fc.assert(
      fc.property(anyLog(short), fc.nat(), (log, place) => {
        const target = log[place % log.length]?.id;
        const head = log.findLast((entry) => entry.rec === REC_A) ?? null;
        const [first] = chained([{ kind: 'entryWithdrawn', body: { target, reason: '' } }], {
          head,
        });
        fc.pre(first !== undefined);
        const back = chained([{ kind: 'entryWithdrawn', body: { target: first.id, reason: '' } }], {
          head: first,
        });
        expect(meaning(viewOf([...log, first, ...back]).state)).toEqual(meaning(viewOf(log).state));
      }),
    );
  });

  it('keeps every entry in view, the original untouched, in order of event time', () => {
    fc.assert(
      fc.property(anyLog(short), (log) => {
        const { standing, state, byId } = viewOf(log);
        expect(new Set(standing.map(({ entry }) => entry))).toEqual(new Set(log));
        expect(state.entryCount).toBe(log.length);
        const times = standing.map(({ at }) => at);
        expect(times).toEqual(times.toSorted((a, b) => a - b));
        expect(log.map(({ id }) => byId(id)?.entry)).toEqual(log);
      }),
    );
  });

  it('leaves the views given before as they were', () => {
    const anyMiddle = anyLog({ minLength: 2, maxLength: 150 }).chain((log) =>
      fc.tuple(fc.constant(log), fc.integer({ min: 1, max: log.length })),
    );
    fc.assert(
      fc.property(anyMiddle, ([log, middle]) => {
        const flight = startFlight();
        const then = flight.add(log.slice(0, middle));
        flight.add(log.slice(middle));
        const fresh = viewOf(log.slice(0, middle));
        expect(then.state).toEqual(fresh.state);
        expect(then.standing).toEqual(fresh.standing);
      }),
      { numRuns: 60 },
    );
  });

  it('gives the same view object for nothing new and a higher version for anything new', () => {
    fc.assert(
      fc.property(anyLog(short), (log) => {
        const flight = startFlight();
        const empty = flight.view();
        const first = flight.add(log);
        expect(first.version).toBe(empty.version + 1);
        expect(flight.add(log.toReversed())).toBe(first);
        expect(flight.view()).toBe(first);
      }),
    );
  });

  it('has after its last entry the state that it has', () => {
    fc.assert(
      fc.property(anyLog({ minLength: 1, maxLength: 200 }), (log) => {
        const view = viewOf(log);
        const last = view.standing.at(-1);
        expect(last && view.stateAt(last.entry.id)).toEqual(view.state);
        const [first] = view.standing;
        expect(first && view.stateAt(first.entry.id)?.entryCount).toBe(1);
      }),
      { numRuns: 40 },
    );
  });
});
