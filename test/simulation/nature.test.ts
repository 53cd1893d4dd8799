import { describe, expect, it } from 'vitest';
import { fuelKgPerS, soundMPerS, standardDay, worthOf, type Aircraft } from './nature.ts';

/** At the height of 40 000 ft: drag over δ of 40 000 N without lift, and 20 000 N more at W/δ = 10⁶ N. */
const aircraft: Aircraft = {
  mach: 0.75,
  parasiteN: 40_000,
  inducedPerN: 2e-8,
  idleKgPerS: 0.1,
  kgPerSPerN: 2e-5,
  machPower: { turbulent: 1, laminar: 0.5 },
};
const DELTA = 0.185087;
const CARD_M = 12_192;
const moment = {
  weightN: 1e6 * DELTA,
  pressureAltitudeM: CARD_M,
  temperatureK: 216.65,
  mach: 0.75,
  laminarShare: 0,
};
const ROOT_THETA = Math.sqrt(216.65 / 288.15);

describe('the truth of a simulated flight', () => {
  it.each([
    // U.S. Standard Atmosphere, 1976: geopotential metres, kelvin, pressure over 101 325 Pa.
    [0, 288.15, 1],
    [6096, 248.526, 0.459544],
    [9144, 228.714, 0.296961],
    [12_192, 216.65, 0.185087],
  ])('has the standard day at %d m', (heightM, temperatureK, pressureRatio) => {
    const day = standardDay(heightM);
    expect(day.temperatureK).toBeCloseTo(temperatureK, 2);
    expect(Math.abs(day.pressureRatio / pressureRatio - 1)).toBeLessThan(2e-5);
  });

  it('has the speed of sound of the standard day: 573.57 kt at 216.65 K', () => {
    expect(soundMPerS(216.65)).toBeCloseTo((573.57 * 1852) / 3600, 1);
  });

  it('burns for idle and for drag, over pressure and temperature', () => {
    // 0.1 + 2e-5 x 60 000 = 1.3 kg/s, times δ √θ.
    expect(fuelKgPerS(aircraft, moment)).toBeCloseTo(1.3 * DELTA * ROOT_THETA, 5);
  });

  it('saves what laminar flow takes off the drag that does not come from lift', () => {
    // A quarter of 40 000 N is 10 000 of 60 000 N of drag, and 0.2 of 1.3 kg/s of flow.
    const worth = worthOf(
      aircraft,
      { ...moment, laminarShare: 0.25 },
      { unitKgPerS: 0.05 * DELTA * ROOT_THETA, cardAltitudeM: CARD_M },
    );
    expect(worth.drag).toBeCloseTo(1 / 6, 5);
    expect(worth.fuel).toBeCloseTo(0.2 / 1.3, 5);
    expect(worth.net).toBeCloseTo(0.15 / 1.3, 5);
    expect(worth.savedKgPerS).toBeCloseTo(0.2 * DELTA * ROOT_THETA, 5);
    expect(worth.savedAtCardKgPerS).toBeCloseTo(worth.savedKgPerS, 5);
    expect(worth.netKgPerS).toBeCloseTo(0.15 * DELTA * ROOT_THETA, 5);
  });

  it('pays for a climb with thrust: weight times climb over speed', () => {
    const climbing = fuelKgPerS(aircraft, { ...moment, climbMPerS: 1 });
    const thrustN = moment.weightN / (0.75 * soundMPerS(216.65));
    expect(climbing - fuelKgPerS(aircraft, moment)).toBeCloseTo(2e-5 * ROOT_THETA * thrustN, 6);
  });
});
