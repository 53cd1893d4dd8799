import { describe, expect, it } from 'vitest';
import type { Glance } from '../../src/record/flightState.ts';
import { itemAt, items } from '../../src/record/trail.ts';
import { doubtsOf, say, stateAfter } from './folding.ts';
import { START_MS } from './writing.ts';

const flow = (instrument: string, value: number) => ({ instrument, value, unit: 'lb/h' });
const used = (instrument: string, value: number) => ({ instrument, value, unit: 'lb' });
const mach = { instrument: 'MACH', value: 0.72, unit: '1' };
const start = say('testPointStarted', { point: 'TP01', run: 1 });

/** A glance without what names its entries. */
function seen(glance: Glance | undefined): unknown {
  if (glance === undefined) {
    return undefined;
  }
  const { by: _by, kinds: _kinds, circumstances, ...rest } = glance;
  const counters = Object.entries(circumstances.counters).map(([consumer, now]) => [
    consumer,
    now.at,
    now.reading,
  ]);
  return { ...rest, circumstances: { ...circumstances, counters } };
}

describe('a glance', () => {
  const rows = [flow('FF1', 1220), flow('FF2', 1150), used('FU1', 1107), mach];
  const glance = START_MS + 15_000;

  it('is the same in one entry as in several that share it', () => {
    const whole = stateAfter([
      start,
      { ...say('fuelRead', { glance, readings: rows }), afterMs: 22_000 },
    ]);
    const parts = stateAfter([
      start,
      ...rows.map((row, index) => ({
        ...say(index < 3 ? 'fuelRead' : 'airDataRead', { glance, readings: [row] }),
        afterMs: 18_000 + index * 1000,
      })),
    ]);
    expect(parts.glances.length).toBe(1);
    expect(seen(itemAt(parts.glances, 0))).toEqual(seen(itemAt(whole.glances, 0)));
    expect(itemAt(parts.glances, 0)?.kinds).toEqual([
      'fuelRead',
      'fuelRead',
      'fuelRead',
      'airDataRead',
    ]);
    expect(itemAt(parts.runs, 0)?.fuelGlances).toEqual(itemAt(whole.runs, 0)?.fuelGlances);
    expect(parts.lastAirData).toEqual(itemAt(parts.glances, 0));
  });

  it('stands at its first digit: what was touched while it was keyed came after', () => {
    const state = stateAfter([
      { ...say('moistureEntered'), afterMs: 17_000 },
      { ...say('fuelRead', { glance, readings: rows }), afterMs: 22_000 },
    ]);
    expect(itemAt(state.glances, 0)?.at).toBe(glance);
    expect(itemAt(state.glances, 0)?.circumstances.moistureSince).toBeNull();
  });

  it('without a shared time is each entry its own', () => {
    const state = stateAfter([
      say('fuelRead', { readings: [flow('FF1', 1220)] }),
      say('fuelRead', { readings: [flow('FF1', 1210)] }),
    ]);
    expect([...items(state.glances)].map(({ readings }) => readings['FF1'])).toMatchObject([
      { value: 1220 },
      { value: 1210 },
    ]);
  });

  it('keeps the newest reading of an instrument, a blank included', () => {
    const state = stateAfter([
      say('fuelRead', { glance, readings: [flow('FF1', 1220)] }),
      say('fuelRead', { glance, readings: [{ instrument: 'FF1', blank: 'unserviceable' }] }),
    ]);
    expect(itemAt(state.glances, 0)?.readings).toEqual({
      FF1: { instrument: 'FF1', blank: 'unserviceable' },
    });
  });

  it('asks about an instrument that the flight sheet lacks, and keeps its reading', () => {
    const state = stateAfter([say('fuelRead', { readings: [flow('FF9', 1)] })]);
    expect(doubtsOf(state)).toEqual(['unknownInstrument: FF9']);
    expect(itemAt(state.glances, 0)?.readings).toHaveProperty('FF9');
  });
});

describe('circumstances', () => {
  const read = say('fuelRead', { readings: [flow('FF1', 1220)] });
  const after = (saids: Parameters<typeof stateAfter>[0]) =>
    itemAt(stateAfter([...saids, read]).glances, -1)?.circumstances;

  it('name the oldest open moisture, and a turn for as long as it lasted', () => {
    expect(
      after([
        say('moistureEntered', { encounter: 'M1' }),
        say('moistureEntered', { encounter: 'M2' }),
      ]),
    ).toMatchObject({ moistureSince: START_MS + 10_000 });
    expect(after([say('turnStarted', { lastedS: 10 })])?.turnSince).toBe(START_MS + 10_000);
    expect(after([say('turnStarted', { lastedS: 9 })])?.turnSince).toBeNull();
    expect(after([say('turnStarted')])?.turnSince).toBe(START_MS + 10_000);
  });

  it('tell upsets from changes of the setting', () => {
    const on = say('suctionTurnedOn', { wing: 'both' });
    expect(after([on, say('suctionChanged', { wing: 'both' })])).toMatchObject({
      suctionOn: true,
      lastSuctionChangeAt: START_MS + 20_000,
      lastUpsetAt: START_MS + 10_000,
    });
    expect(after([on, say('throttleChanged')])).toMatchObject({
      lastSuctionChangeAt: START_MS + 10_000,
      lastUpsetAt: START_MS + 20_000,
    });
    expect(after([on, say('suctionTurnedOff', { wing: 'L' })])?.suctionOn).toBe(true);
    expect(after([on, say('suctionTurnedOff', { wing: 'both' })])?.suctionOn).toBe(false);
  });

  it('name when the condition was reached, and nothing once it is lost', () => {
    expect(after([say('conditionReached')])?.conditionReachedAt).toBe(START_MS + 10_000);
    expect(after([say('conditionReached'), say('conditionLost')])?.conditionReachedAt).toBeNull();
  });

  it('offer air data of the same run only', () => {
    const air = say('airDataRead', { readings: [mach] });
    expect(after([air, start])?.airDataOfRun).toBeNull();
    expect(after([start, air])?.airDataOfRun).toBe(0);
    const end = say('testPointEnded', { point: 'TP01', run: 1 });
    expect(after([start, air, end])?.airDataOfRun).toBeNull();
  });

  it('hold the counters known by then, each from its newest reading', () => {
    const state = stateAfter([
      say('fuelStateRead', { readings: [used('FU1', 100), used('FUS', 5)] }),
      say('suctionTurnedOn', { wing: 'both', readings: [used('FU1', 120)] }),
      read,
      say('fuelStateRead', {
        readings: [{ instrument: 'FU1', blank: 'notRead' }, used('FU2', 90)],
      }),
    ]);
    const values = (counters: Glance['circumstances']['counters']) =>
      Object.entries(counters).map(([consumer, { reading }]) => [
        consumer,
        'value' in reading ? reading.value : null,
      ]);
    expect(values(itemAt(state.glances, 2)?.circumstances.counters ?? {})).toEqual([
      ['1', 120],
      ['suctionUnit', 5],
    ]);
    expect(values(state.counters)).toEqual([
      ['1', 120],
      ['2', 90],
      ['suctionUnit', 5],
    ]);
  });
});
