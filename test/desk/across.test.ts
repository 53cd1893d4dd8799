import { describe, expect, it } from 'vitest';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import { flightA } from '../analysis/flights.ts';
import { laterFlight } from '../analysis/laterFlight.ts';
import { typed } from './typed.ts';

const files = {
  a: writeTimeline(flightA.entries),
  b: writeTimeline(laterFlight(flightA.entries, { days: 7, hex: 'b' })),
};

describe('results of two flights', () => {
  const { code, out } = typed('results b a', files);
  const across = out.slice(out.indexOf('Across 2 flights'));

  it('end with what shows only across them', () => {
    expect(code).toBe(0);
    expect(out.split('\f')).toHaveLength(3);
    expect(across).toContain('Panels turbulent flight after flight');
    expect(across).toMatch(/turbulent probes: .*L18 in 2 of 2/);
    expect(across).toContain('cannot be told apart');
  });

  it('set the work after one beside what the next one showed', () => {
    // The squawks of flight A add up to 25.1 h; its clear-air share is 86 %, its net saving 19.7 %.
    expect(across.replace(/\s+/g, ' ')).toMatch(
      /25\.1 h; then Suction effectiveness, five legs showed 86 % laminar in clear air, net saving 19\.7 %/,
    );
  });

  it('let the earlier flight tell what is chronic on the later one', () => {
    const [first = '', second = ''] = out.replace(/ +|\n +/g, ' ').split('\f');
    expect(first).toContain('Of none can be told: the same probe on earlier flights.');
    expect(second).toContain('the same probe on earlier flights: L18 turbulent in 1 of 1');
  });

  it('are the same as JSON in whatever order the files are named', () => {
    const ofBoth = typed('results --json a b', files).out;
    expect(typed('results --json b a', files).out).toBe(ofBoth);
    const { across: found, flights } = JSON.parse(ofBoth);
    expect(flights).toHaveLength(2);
    expect(found.baselineDrift).toHaveLength(2);
  });
});
