import { describe, expect, it } from 'vitest';
import { checkChains } from '../../src/record/chain.ts';
import { scriptA } from '../flights/flightA.ts';
import { flightOfScript } from '../flights/scriptToEntries.ts';

const PAGES_TURNED = 3;

describe('the scripted flight', () => {
  const flight = flightOfScript(scriptA);

  it('is one recorder whose chain holds', () => {
    expect(flight.entries).toHaveLength(1 + 152 + 1 + PAGES_TURNED);
    expect(checkChains(flight.entries)).toEqual([]);
  });

  it('gives the same bytes each time', () => {
    expect(flightOfScript(scriptA).entries.map((entry) => entry.id)).toEqual(
      flight.entries.map((entry) => entry.id),
    );
  });

  it('keeps each line inside the limit of a line, the flight sheet included', () => {
    expect(Math.max(...flight.entries.map((entry) => entry.line.length))).toBeLessThan(65_536);
  });
});
