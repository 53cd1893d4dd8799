import { describe, expect, it } from 'vitest';
import { cutEverywhere, flippedBits } from '../drills/flippedBits.ts';
import { mutatedFiles } from '../drills/mutatedFiles.ts';

const SEED = 20_320_602;

describe('a timeline file', () => {
  it('with one bit flipped loses no other line, and names that one', () => {
    expect(flippedBits(1_500, SEED).broken).toEqual([]);
  });

  it('cut at any byte gives back every whole line', () => {
    expect(cutEverywhere().broken).toEqual([]);
  });

  it('to which anything happened is read to its end, and tells what is wrong with it', () => {
    expect(mutatedFiles(3_000, SEED).broken).toEqual([]);
  });
});
