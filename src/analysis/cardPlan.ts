import { STANDARD_GRAVITY_M_PER_S2 } from '../aero/units.ts';
import type { EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { FlightSheet } from '../record/sheet.ts';
import { itemAt } from '../record/trail.ts';
import { correctedReading, instrumentsFor, measureSi } from './calibrate.ts';
import type { CardProgress } from './results.ts';
import { grossWeightAt } from './weight.ts';

/** What the cards still to fly expect to burn beside what is left above joker. For the record: no fuel planning. */
export interface CardPlan {
  readonly left: FuelLeft | null;
  /** Of the cards still to fly that say what they expect; null where none does. */
  readonly neededKg: number | null;
  /** Cards still to fly that do not say. */
  readonly unknown: number;
  readonly aboveJokerKg: number | null;
  readonly aboveBingoKg: number | null;
  /** `unknown` where fuel left, joker or every expectation is missing. */
  readonly verdict: 'enough' | 'short' | 'unknown';
  /** Most wanted first, with the cards that what is left covers. */
  readonly wanted: readonly WantedCard[];
}

export interface FuelLeft {
  readonly massKg: number;
  readonly at: EpochMs;
  /** Read as fuel left, or reckoned from ramp weight, counters and the weight without fuel. */
  readonly from: 'gauge' | 'weight';
}

export interface WantedCard {
  readonly point: string;
  readonly priority: number;
  readonly expectedKg: number | null;
  /** Whether what is left above joker covers it after the more wanted ones; null where nobody can say. */
  readonly fits: boolean | null;
}

/** The answer must not cost more late in a flight. */
const GLANCES_LOOKED_AT = 60;

export function cardPlan(view: FlightView, cards: readonly CardProgress[]): CardPlan {
  const { sheet } = view.state;
  const left = sheet === null ? null : fuelLeft(view, sheet);
  const above = (limit: FlightSheet['limits']['joker']): number | null => {
    const limitKg = limit === undefined ? undefined : measureSi(limit, 'mass');
    return left === null || limitKg === undefined ? null : left.massKg - limitKg;
  };
  const aboveJokerKg = above(sheet?.limits.joker);
  const wanted = wantedCards(sheet, cards, aboveJokerKg);
  const expected = wanted.flatMap(({ expectedKg }) => (expectedKg === null ? [] : [expectedKg]));
  const neededKg =
    expected.length === 0 ? null : expected.reduce((total, massKg) => total + massKg, 0);
  return {
    left,
    neededKg,
    unknown: wanted.length - expected.length,
    aboveJokerKg,
    aboveBingoKg: above(sheet?.limits.bingo),
    verdict:
      neededKg === null || aboveJokerKg === null
        ? 'unknown'
        : neededKg <= aboveJokerKg
          ? 'enough'
          : 'short',
    wanted,
  };
}

/** By priority, and among equals in card order. A card that does not fit leaves its fuel to the less wanted ones. */
function wantedCards(
  sheet: FlightSheet | null,
  cards: readonly CardProgress[],
  aboveJokerKg: number | null,
): readonly WantedCard[] {
  const planned = new Map(sheet?.testCards.map((card) => [card.id, card] as const));
  let spareKg = aboveJokerKg;
  return cards
    .filter(({ state }) => state !== 'complete')
    .map(({ point }) => {
      const card = planned.get(point);
      const expected = card?.expectedFuel;
      const expectedKg = expected === undefined ? null : (measureSi(expected, 'mass') ?? null);
      return { point, priority: card?.priority ?? 0, expectedKg };
    })
    .sort((a, b) => a.priority - b.priority)
    .map((card) => {
      const fits = spareKg === null || card.expectedKg === null ? null : card.expectedKg <= spareKg;
      if (fits === true && spareKg !== null && card.expectedKg !== null) {
        spareKg -= card.expectedKg;
      }
      return { ...card, fits };
    });
}

/** The newer of what a gauge of fuel left shows and what the weight says; null where neither is there. */
function fuelLeft(view: FlightView, sheet: FlightSheet): FuelLeft | null {
  const read = gaugeLeft(view, sheet);
  const reckoned = weightLeft(view, sheet);
  if (read === null || reckoned === null) return read ?? reckoned;
  return read.at >= reckoned.at ? read : reckoned;
}

function gaugeLeft({ state }: FlightView, sheet: FlightSheet): FuelLeft | null {
  const gauges = instrumentsFor(sheet, 'fuelRemaining');
  const oldest = Math.max(0, state.glances.length - GLANCES_LOOKED_AT);
  for (let index = state.glances.length - 1; index >= oldest; index -= 1) {
    const glance = itemAt(state.glances, index);
    for (const gauge of gauges) {
      const reading = glance?.readings[gauge.id];
      const corrected = reading === undefined ? null : correctedReading(gauge, reading);
      if (glance !== undefined && corrected?.kind === 'corrected') {
        return { massKg: corrected.valueSi, at: glance.at, from: 'gauge' };
      }
    }
  }
  return null;
}

function weightLeft(view: FlightView, sheet: FlightSheet): FuelLeft | null {
  const { zeroFuel } = sheet.weights;
  const emptyKg = zeroFuel === undefined ? undefined : measureSi(zeroFuel, 'mass');
  if (emptyKg === undefined) return null;
  const { glances } = view.state;
  const oldest = Math.max(0, glances.length - GLANCES_LOOKED_AT);
  for (let index = glances.length - 1; index >= oldest; index -= 1) {
    const glance = itemAt(glances, index);
    const weight = grossWeightAt(view, index);
    if (glance !== undefined && weight.kind === 'weight') {
      const massKg = weight.weightN / STANDARD_GRAVITY_M_PER_S2 - emptyKg;
      return { massKg, at: glance.at, from: 'weight' };
    }
  }
  return null;
}
