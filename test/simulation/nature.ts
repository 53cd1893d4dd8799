/*
 * What is really so in a simulated flight: air, drag, thrust and fuel, in formulas of its own. Nothing here is shared
 * with what is being tested. SI throughout.
 */

export const GRAVITY_M_PER_S2 = 9.80665;
const SEA_LEVEL_K = 288.15;
const SEA_LEVEL_PA = 101_325;
const TROPOPAUSE_M = 11_000;
const TROPOPAUSE_K = 216.65;
const TROPOPAUSE_PA = 22_632.06;
const GAS_J_PER_KG_K = 287.053;

/** U.S. Standard Atmosphere, 1976, up to 20 km. */
export function standardDay(pressureAltitudeM: number): {
  readonly temperatureK: number;
  readonly pressureRatio: number;
} {
  if (pressureAltitudeM <= TROPOPAUSE_M) {
    const temperatureK = SEA_LEVEL_K - 0.0065 * pressureAltitudeM;
    return { temperatureK, pressureRatio: (temperatureK / SEA_LEVEL_K) ** 5.25588 };
  }
  const heights =
    ((pressureAltitudeM - TROPOPAUSE_M) * GRAVITY_M_PER_S2) / (GAS_J_PER_KG_K * TROPOPAUSE_K);
  return {
    temperatureK: TROPOPAUSE_K,
    pressureRatio: (TROPOPAUSE_PA / SEA_LEVEL_PA) * Math.exp(-heights),
  };
}

export function soundMPerS(temperatureK: number): number {
  return Math.sqrt(1.4 * GAS_J_PER_KG_K * temperatureK);
}

/** An aircraft at the Mach number of its cards. Forces over ambient pressure ratio repeat, so all is kept that way. */
export interface Aircraft {
  readonly mach: number;
  /** Drag over pressure ratio that does not come from lift, N, all turbulent. */
  readonly parasiteN: number;
  /** Drag over pressure ratio is this times the square of weight over pressure ratio, 1/N. */
  readonly inducedPerN: number;
  /** Fuel flow over pressure ratio and root of temperature ratio: at no thrust, kg/s, and for each newton. */
  readonly idleKgPerS: number;
  readonly kgPerSPerN: number;
  /** How flow goes with Mach number, d ln F/d ln M. */
  readonly machPower: { readonly turbulent: number; readonly laminar: number };
}

/** Where and how it flies at one moment. */
export interface Moment {
  readonly weightN: number;
  readonly pressureAltitudeM: number;
  readonly temperatureK: number;
  readonly mach: number;
  /** Share of the parasite drag that laminar flow takes away. */
  readonly laminarShare: number;
  /** Lift over weight: above one in a turn. */
  readonly loadFactor?: number;
  /** Climb on the altimeter and growth of Mach number, that the thrust pays for. */
  readonly climbMPerS?: number;
  readonly machPerS?: number;
}

/** Fuel that all engines burn together, kg/s. */
export function fuelKgPerS(aircraft: Aircraft, at: Moment): number {
  const { loadFactor = 1, climbMPerS = 0, machPerS = 0 } = at;
  const day = standardDay(at.pressureAltitudeM);
  const lift = (loadFactor * at.weightN) / day.pressureRatio;
  const drag = aircraft.parasiteN * (1 - at.laminarShare) + aircraft.inducedPerN * lift * lift;
  const rootTheta = Math.sqrt(at.temperatureK / SEA_LEVEL_K);
  const steady =
    (aircraft.idleKgPerS + aircraft.kgPerSPerN * drag) *
    day.pressureRatio *
    rootTheta *
    machFactor(aircraft, at);
  const sound = soundMPerS(at.temperatureK);
  const truly = climbMPerS * (at.temperatureK / day.temperatureK);
  const excessN = at.weightN * (truly / (at.mach * sound) + (machPerS * sound) / GRAVITY_M_PER_S2);
  return steady + aircraft.kgPerSPerN * rootTheta * excessN;
}

function machFactor({ mach, machPower }: Aircraft, at: Moment): number {
  const power = at.laminarShare === 0 ? machPower.turbulent : machPower.laminar;
  return (at.mach / mach) ** power;
}

/** What laminar flow is worth at the weight, height and temperature of a moment, at the Mach number of the cards. */
export interface Worth {
  /** Share of the fuel flow. */
  readonly fuel: number;
  /** Share of the drag. */
  readonly drag: number;
  /** Share of the fuel flow when the suction unit's own is paid for. */
  readonly net: number;
  /** At the card's height on a standard day, kg/s. */
  readonly savedAtCardKgPerS: number;
  /** As flown, kg/s. */
  readonly savedKgPerS: number;
  readonly netKgPerS: number;
}

export function worthOf(
  aircraft: Aircraft,
  at: Moment,
  { unitKgPerS, cardAltitudeM }: { readonly unitKgPerS: number; readonly cardAltitudeM: number },
): Worth {
  const steady: Moment = {
    weightN: at.weightN,
    pressureAltitudeM: at.pressureAltitudeM,
    temperatureK: at.temperatureK,
    mach: aircraft.mach,
    laminarShare: at.laminarShare,
  };
  const turbulentKgPerS = fuelKgPerS(aircraft, { ...steady, laminarShare: 0 });
  const savedKgPerS = turbulentKgPerS - fuelKgPerS(aircraft, steady);
  const here = standardDay(at.pressureAltitudeM);
  const card = standardDay(cardAltitudeM);
  const lift = at.weightN / here.pressureRatio;
  const drag = aircraft.parasiteN + aircraft.inducedPerN * lift * lift;
  return {
    fuel: savedKgPerS / turbulentKgPerS,
    drag: (aircraft.parasiteN * at.laminarShare) / drag,
    net: (savedKgPerS - unitKgPerS) / turbulentKgPerS,
    savedAtCardKgPerS:
      savedKgPerS *
      (card.pressureRatio / here.pressureRatio) *
      Math.sqrt(card.temperatureK / at.temperatureK),
    savedKgPerS,
    netKgPerS: savedKgPerS - unitKgPerS,
  };
}

/** d ln F/d ln W with suction off. */
export function weightElasticity(aircraft: Aircraft, weightN: number, altitudeM: number): number {
  const lift = weightN / standardDay(altitudeM).pressureRatio;
  const induced = aircraft.kgPerSPerN * aircraft.inducedPerN * lift * lift;
  return (2 * induced) / (aircraft.idleKgPerS + aircraft.kgPerSPerN * aircraft.parasiteN + induced);
}
