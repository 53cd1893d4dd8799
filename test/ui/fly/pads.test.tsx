import { screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { historyOf } from '../../../src/analysis/readingHistory.ts';
import { epochMs } from '../../../src/record/brand.ts';
import type { FlightSheet, Instrument } from '../../../src/record/sheet.ts';
import { scriptA } from '../../flights/flightA.ts';
import { sheetOfScript } from '../../flights/sheetOfScript.ts';
import { slipWords } from '../../../src/ui/fly/judgedReading.ts';
import { onFly, type OnFly } from './onFly.tsx';

const last = (fly: OnFly) => fly.journal.entries().at(-1);

async function keyed(fly: OnFly, digits: string): Promise<void> {
  for (const digit of digits) {
    await fly.tap(`key-${digit}`, 300);
  }
}

/** One engine's reading in a glance of its own, minutes after the last. */
async function read(fly: OnFly, digits: string): Promise<void> {
  await fly.tap('tile-fuel', 120_000);
  await keyed(fly, digits);
  await fly.tap('key-enter');
  await fly.tap('key-erase');
}

async function inCruise(change: Partial<FlightSheet> = {}): Promise<OnFly> {
  const fly = await onFly(change);
  await fly.tap('phase-cruise');
  return fly;
}

const queried = (fly: OnFly): readonly (string | undefined)[] =>
  [...fly.view().standing]
    .map(({ effective }) => effective)
    .flatMap((entry) => (entry.kind === 'fuelRead' ? (entry.body.readings ?? []) : []))
    .map((reading) => ('value' in reading ? reading.queried : undefined));

describe('two readings in a row outside the band', () => {
  it('are a real change: both are kept, one line says so, and the reference starts anew', async () => {
    const fly = await inCruise();
    for (const digits of ['0840', '0850', '0840']) await read(fly, digits);
    await read(fly, '1220');
    expect(queried(fly)).toEqual([undefined, undefined, undefined, 'outsideBand']);
    await read(fly, '1230');
    expect(queried(fly)).toEqual([undefined, undefined, undefined, undefined, undefined]);
    expect(screen.getByText('Engine 1 of 2: a real change, both kept.')).toBeTruthy();
    expect(last(fly)).toMatchObject({ kind: 'entryAmended', body: { code: 'kept' } });
    expect(historyOf(fly.view(), 'FF1', epochMs(fly.lastMs())).history).toEqual([1220, 1230]);
    await read(fly, '1210');
    expect(queried(fly).at(-1)).toBeUndefined();
    await read(fly, '0840');
    expect(queried(fly).at(-1)).toBe('outsideBand');
  });
});

describe('the step keys', () => {
  it('start from the last reading, and the method is recorded', async () => {
    const fly = await inCruise();
    await read(fly, '0840');
    await fly.tap('tile-fuel', 60_000);
    await fly.tap('step-up-1');
    const firstAt = fly.lastMs();
    await fly.tap('step-up-1');
    await fly.tap('key-enter');
    // The gauge of the demo flight shows tens.
    expect(last(fly)).toMatchObject({
      body: { glance: firstAt, readings: [{ value: 860, method: 'steps' }] },
    });
    await keyed(fly, '0790');
    await fly.tap('key-enter');
    expect(last(fly)).toMatchObject({ body: { readings: [{ value: 790, method: 'digits' }] } });
  });
});

describe('a probe with a gauge of its own', () => {
  const gauge: Instrument = {
    id: 'DP-L11',
    name: 'deficit L11',
    quantity: 'probeDeficit',
    probe: 'L11',
    unit: 'inH2O',
    format: { wholeDigits: 2, decimals: 1, signed: false },
    resolution: 0.1,
    rangeLow: 0,
    rangeHigh: 20,
    calibration: { correction: 0 },
    serviceable: true,
  };

  it('is judged and marked like any other', async () => {
    const sheet = sheetOfScript(scriptA);
    const fly = await inCruise({ instruments: [...sheet.instruments, gauge] });
    await fly.tap('tile-more');
    while (!fly.has('act-probes')) await fly.tap('more-next');
    await fly.tap('act-probes');
    await fly.tap('pad-close');
    await fly.tap('field-pressures');
    await fly.tap('pressure-L11');
    await keyed(fly, '452');
    await fly.tap('key-enter');
    expect(last(fly)).toMatchObject({
      kind: 'entryAmended',
      body: { changes: [{ new: { instrument: 'DP-L11', value: 45.2, queried: 'outsideBand' } }] },
    });
    expect(fly.has('query-keep')).toBe(true);
  });
});

describe('a weight', () => {
  const weight = {
    title: 'Gross weight',
    unit: 'lb',
    format: { wholeDigits: 5, decimals: 0, signed: false, exact: false },
    last: 24_000,
    step: 10,
  };

  it.each([
    [23_500, null],
    [20_000, null],
    [2_350, 'Gross weight 2\u00a0350 lb: a tenth of it?'],
  ])('%d beside 24 000 lb says %s', (value, words) => {
    expect(slipWords(weight, value)).toBe(words);
  });
});
