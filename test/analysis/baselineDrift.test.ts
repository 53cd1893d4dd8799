import { describe, expect, it } from 'vitest';
import { baselineDrift } from '../../src/analysis/baselineDrift.ts';
import { flightA, sheetA, viewOfEntries, without } from './flights.ts';
import { laterFlight } from './laterFlight.ts';

const first = viewOfEntries(flightA.entries);
const again = viewOfEntries(laterFlight(flightA.entries, { days: 7, hex: 'b' }));

/** Both gauges corrected by 10 lb/h more: 20 lb/h on the sum. The check before flight would say otherwise. */
const thirstier = viewOfEntries(
  laterFlight(
    without(flightA.entries, ({ kind }) => kind === 'calibrationChecked'),
    {
      days: 14,
      hex: 'c',
      sheet: {
        ...sheetA,
        instruments: sheetA.instruments.map((instrument) =>
          instrument.quantity === 'fuelFlow'
            ? {
                ...instrument,
                calibration: {
                  ...instrument.calibration,
                  correction: instrument.calibration.correction + 10,
                },
              }
            : instrument,
        ),
      },
    },
  ),
);

describe('the suction-off flow of several flights', () => {
  it('is held against the first that has one, whatever the order of asking', () => {
    const drifts = baselineDrift([thirstier, again, first]);
    expect(drifts).toEqual(baselineDrift([first, again, thirstier]));
    expect(drifts[0]?.drift).toMatchObject({ kind: 'noAnswer', because: 'isTheFirst' });
  });

  it('does not drift where the same flight is flown again', () => {
    const [, { drift } = { drift: null }] = baselineDrift([first, again]);
    if (drift?.kind !== 'answer') throw new Error('no drift');
    expect(drift.value.driftFraction).toBeCloseTo(0, 9);
    expect(drift.value.differs).toBe(false);
    expect(drift.how.broken).toEqual([]);
  });

  it('shows 20 lb/h more as so much of it, and that a calibration may be why', () => {
    const [, { drift } = { drift: null }] = baselineDrift([first, thirstier]);
    if (drift?.kind !== 'answer') throw new Error('no drift');
    // 20 of 2,344.7 and of 2,204.0 lb/h, the two baselines at the card: 0.88 % in the mean; the card's air within 1 % of it.
    expect(Math.abs(drift.value.driftFraction / 0.0088 - 1)).toBeLessThan(0.02);
    expect(drift.value.differs).toBe(true);
    expect(drift.how.broken).toContain('calibratedBetween');
    expect(drift.how.entries.length).toBeGreaterThan(0);
  });

  it('is not given where no suction-off run was finished, and says so', () => {
    const none = viewOfEntries(
      laterFlight(
        without(
          flightA.entries,
          (entry) => entry.kind === 'testPointEnded' && ['TP01', 'TP09'].includes(entry.body.point),
        ),
        { days: 7, hex: 'd' },
      ),
    );
    expect(baselineDrift([first, none])[1]?.drift).toMatchObject({
      kind: 'noAnswer',
      because: 'noBaselineRun',
    });
  });

  it('is not held against another aircraft, nor another card', () => {
    const of = (change: object) =>
      viewOfEntries(
        laterFlight(flightA.entries, { days: 7, hex: 'e', sheet: { ...sheetA, ...change } }),
      );
    const other = of({ aircraft: { ...sheetA.aircraft, mark: 'QL-OTH' } });
    const card = of({ condition: { ...sheetA.condition, mach: 0.721 } });
    expect(baselineDrift([first, other])[1]?.drift).toMatchObject({ because: 'otherAircraft' });
    expect(baselineDrift([first, card])[1]?.drift).toMatchObject({ because: 'otherCard' });
  });
});
