import { screen } from '@testing-library/react';
import { expect, it } from 'vitest';
import { items } from '../../../src/record/trail.ts';
import { onFly, type OnFly } from './onFly.tsx';

const runs = (fly: OnFly): readonly string[] =>
  [...items(fly.view().state.runs)].map(({ point, run, state }) => `${point}.${run} ${state}`);

async function cards(fly: OnFly): Promise<void> {
  await fly.tap('tile-more');
  await fly.tap('tile-cards');
}

async function inCruise(): Promise<OnFly> {
  const fly = await onFly();
  await fly.tap('phase-cruise');
  return fly;
}

it('a spoiled point is flown again under its next run number', async () => {
  const fly = await inCruise();
  await fly.tap('tile-point');
  await cards(fly);
  await fly.tap('cards-point-interrupt', 5_000);
  await cards(fly);
  await fly.tap('card-TP01');
  await fly.tap('tile-point');
  expect(runs(fly)).toEqual(['TP01.1 interrupted', 'TP01.2 open']);
});

it('a card ahead of its turn is started instead, once', async () => {
  const fly = await inCruise();
  await cards(fly);
  await fly.tap('card-TP04');
  await fly.tap('tile-point');
  await fly.tap('tile-point', 5_000);
  await fly.tap('tile-point', 5_000);
  expect(runs(fly)).toEqual(['TP04.1 complete', 'TP01.1 open']);
});

it('Stop terminates the open point with one touch', async () => {
  const fly = await inCruise();
  await fly.tap('tile-point');
  await fly.tap('tile-stop', 5_000);
  expect(runs(fly)).toEqual(['TP01.1 terminated']);
});

it('says how long the open point was in tolerance, and what the cards want', async () => {
  const fly = await inCruise();
  await fly.tap('tile-point');
  await cards(fly);
  expect(screen.getByText('TP01 run 1, in tolerance 00:00')).toBeTruthy();
  // 300 + 260 + 5 x 230 + 250 + 280 lb of the nine cards; nobody read what is left.
  expect(screen.getByText(/^Cards want 2\s240\slb; left or joker unknown\.$/)).toBeTruthy();
});
