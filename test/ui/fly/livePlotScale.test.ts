import { describe, expect, it } from 'vitest';
import { clearTicks, type PlotScale } from '../../../src/ui/fly/livePlotScale.ts';

const scale: PlotScale = { low: 0, high: 0.4, ticks: [0, 0.1, 0.2, 0.3, 0.4] };

describe('the figures of the value axis', () => {
  it('are all there on a long axis without a target', () => {
    expect(clearTicks(scale, null, 90)).toEqual([0, 0.1, 0.2, 0.3, 0.4]);
  });

  it('give way to the target and leave a gap to it', () => {
    // 90 mm for 40 %: 30 stands 2.25 mm from 29, two figures and their gap need 6.4 mm.
    expect(clearTicks(scale, 0.29, 90)).toEqual([0, 0.1, 0.2, 0.4]);
  });

  it('give way to each other on a short axis, the ends last', () => {
    // 20 mm: 10 % is 5 mm. The ends stand inside the axis, so 3.2 mm from it.
    expect(clearTicks(scale, null, 20)).toEqual([0, 0.2, 0.4]);
    expect(clearTicks(scale, 0.39, 20)).toEqual([0, 0.2]);
  });
});
