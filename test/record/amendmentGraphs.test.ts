import { expect, it } from 'vitest';
import { amendmentGraphs } from '../drills/amendmentGraphs.ts';
import { merges } from '../drills/merges.ts';

const SEED = 20_320_602;

it('corrections by two recorders stand at what the rules say, in whatever order they arrive', () => {
  expect(amendmentGraphs(500, SEED).broken).toEqual([]);
});

it('copies merged in any order and grouping give one set, one file and one head code', () => {
  expect(merges(1_000, SEED).broken).toEqual([]);
});
