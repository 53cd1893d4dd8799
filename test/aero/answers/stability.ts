import { STABILITY_LIMITS } from '../../../src/aero/stability.ts';
import { feetFromMetres } from '../../../src/aero/conversions.ts';
import type { Answers } from '../referenceRow.ts';

/** A hold of ± x is a range of 2 x. */
export const stabilityAnswers: Answers = {
  'reference fact: Mach hold during a point': () => STABILITY_LIMITS.machRange / 2,
  'reference fact: altitude hold during a point': () =>
    feetFromMetres(STABILITY_LIMITS.altitudeRangeM / 2),
};
