import type { Reading } from '../../src/record/entry.ts';
import { KG_PER_UNIT, type Drawn } from './draw.ts';
import { fuelKgPerS, GRAVITY_M_PER_S2, standardDay, type Moment } from './nature.ts';

const FOOT_M = 0.3048;
const STEP_S = 60;
/** Climb to the height of the cards, which the flight sheet has nothing to say about. */
const CLIMB_S = 1800;

/** True sums of one stretch with suction on, kg. */
export interface Span {
  readonly turbulentKg: number;
  readonly burntKg: number;
  readonly unitKg: number;
}

/** The aircraft in the air: time passes and fuel burns, as they truly do. */
export interface Aloft {
  readonly seconds: () => number;
  /** Steady flight by the card, now. */
  readonly steady: () => Moment;
  readonly unitKgPerS: () => number;
  readonly suctionIsOn: () => boolean;
  readonly fly: (forS: number) => void;
  readonly setSuction: (to: Drawn['runs'][number]) => void;
  /** What the counters show, one for each engine and one for the suction unit. */
  readonly counters: () => readonly Reading[];
  /** One for each stretch of suction on. */
  readonly spans: () => readonly Span[];
}

/** @param climbShare of the ramp weight, burnt before the height of the cards is reached */
export function aloft(drawn: Drawn, climbShare: number): Aloft {
  const { aircraft, day } = drawn;
  const pressureAltitudeM = drawn.cardAltitudeFt * FOOT_M;
  const spans: Span[] = [];
  let seconds = CLIMB_S;
  let burntKg = climbShare * drawn.rampKg;
  let unitBurntKg = 0;
  let suction: Pick<Drawn['runs'][number], 'laminarShare' | 'unitKgPerS'> | null = null;

  const steady = (): Moment => ({
    weightN: (drawn.rampKg - burntKg - unitBurntKg) * GRAVITY_M_PER_S2,
    pressureAltitudeM,
    temperatureK:
      standardDay(pressureAltitudeM).temperatureK + day.offsetK + (day.perHourK * seconds) / 3600,
    mach: aircraft.mach,
    laminarShare: suction?.laminarShare ?? 0,
  });
  const unitKgPerS = (): number => suction?.unitKgPerS ?? 0;

  function burn(stepS: number): void {
    const now = steady();
    const kg = stepS * fuelKgPerS(aircraft, now);
    const unitKg = stepS * unitKgPerS();
    const span = spans.at(-1);
    if (suction !== null && span !== undefined) {
      spans[spans.length - 1] = {
        turbulentKg: span.turbulentKg + stepS * fuelKgPerS(aircraft, { ...now, laminarShare: 0 }),
        burntKg: span.burntKg + kg,
        unitKg: span.unitKg + unitKg,
      };
    }
    burntKg += kg;
    unitBurntKg += unitKg;
    seconds += stepS;
  }

  const counter = (instrument: string, kg: number): Reading => ({
    instrument,
    value: Math.round((kg * drawn.counterScale) / KG_PER_UNIT[drawn.unit]),
    unit: drawn.unit,
  });

  return {
    seconds: () => seconds,
    steady,
    unitKgPerS,
    suctionIsOn: () => suction !== null,
    fly: (forS) => {
      for (let leftS = forS; leftS > 0; leftS -= STEP_S) burn(Math.min(STEP_S, leftS));
    },
    setSuction: (to) => {
      const on = to.suction === 'on';
      if (on && suction === null) spans.push({ turbulentKg: 0, burntKg: 0, unitKg: 0 });
      suction = on ? to : null;
    },
    counters: () => [
      ...drawn.engineShares.map((share, index) => counter(`FU${index + 1}`, burntKg * share)),
      counter('FUS', unitBurntKg),
    ],
    spans: () => spans,
  };
}
