import type { FlightView } from '../record/flight.ts';
import type { Glance } from '../record/flightState.ts';
import type { Instrument } from '../record/sheet.ts';
import { items } from '../record/trail.ts';
import { contextOf, type Context } from './reading/context.ts';
import { engineDisagrees } from './reading/engineShares.ts';
import { totalFlow } from './reduceReading.ts';

/** What no band can catch in flight, listed for a person to look at: none of it says that a value is wrong. */
export type ToReview =
  /** Neighbouring readings of one gauge with the same digits in another order: 1 234 and 1 243. */
  | {
      readonly kind: 'sameDigits';
      readonly instrument: string;
      readonly glances: readonly [earlier: number, later: number];
    }
  /** The same value again and again: a gauge that is stuck, or eyes that were. */
  | {
      readonly kind: 'repeated';
      readonly instrument: string;
      readonly value: number;
      readonly glances: readonly number[];
    }
  /** The shares of the engines fit the other readings once these two are exchanged. */
  | {
      readonly kind: 'enginesSwapped';
      readonly glance: number;
      readonly instruments: readonly [string, string];
    };

/** As many equal values in a row are worth a look (a choice). */
const REPEATED_AT_LEAST = 4;

export function readingsToReview(view: FlightView): readonly ToReview[] {
  const context = contextOf(view);
  if (context === null) return [];
  const glances = [...items(view.state.glances)];
  const gauges = context.terms.sheet.instruments.filter(
    ({ quantity }) => quantity === 'fuelFlow' || quantity === 'fuelUsed',
  );
  return [
    ...gauges.flatMap((gauge) => {
      const read = valuesOf(gauge, glances);
      return [...sameDigits(gauge, read), ...repeated(gauge, read)];
    }),
    ...glances.flatMap((glance, index) => swappedIn(context, glance, index)),
  ];
}

interface Read {
  readonly glance: number;
  readonly value: number;
}

function valuesOf({ id }: Instrument, glances: readonly Glance[]): readonly Read[] {
  return glances.flatMap(({ readings }, glance) => {
    const reading = readings[id];
    return reading === undefined || 'blank' in reading ? [] : [{ glance, value: reading.value }];
  });
}

function sameDigits(gauge: Instrument, read: readonly Read[]): readonly ToReview[] {
  return read.slice(1).flatMap((later, index): readonly ToReview[] => {
    const earlier = read[index];
    if (earlier === undefined || earlier.value === later.value) return [];
    if (digitsOf(gauge, earlier.value) !== digitsOf(gauge, later.value)) return [];
    return [
      {
        kind: 'sameDigits',
        instrument: gauge.id,
        glances: [earlier.glance, later.glance],
      },
    ];
  });
}

function digitsOf({ format }: Instrument, value: number): string {
  const boxes = format.wholeDigits + format.decimals;
  const keyed = Math.round(Math.abs(value) * 10 ** format.decimals).toString();
  return keyed.padStart(boxes, '0').split('').sort().join('');
}

function repeated(gauge: Instrument, read: readonly Read[]): readonly ToReview[] {
  const found: ToReview[] = [];
  let from = 0;
  for (let index = 1; index <= read.length; index += 1) {
    const first = read[from];
    if (first === undefined || read[index]?.value === first.value) continue;
    const stretch = read.slice(from, index);
    if (stretch.length >= REPEATED_AT_LEAST) {
      found.push({
        kind: 'repeated',
        instrument: gauge.id,
        value: first.value,
        glances: stretch.map(({ glance }) => glance),
      });
    }
    from = index;
  }
  return found;
}

function swappedIn(context: Context, glance: Glance, index: number): readonly ToReview[] {
  const { state, terms } = context;
  const flow = totalFlow(terms, glance);
  if (flow.kind === 'missing' || !engineDisagrees(state, terms, index, flow)) return [];
  const ids = terms.engineFlows.map(({ id }) => id);
  return ids.flatMap((one, position) =>
    ids.slice(position + 1).flatMap((other): readonly ToReview[] => {
      const exchanged = totalFlow(terms, { ...glance, readings: exchange(glance, one, other) });
      if (exchanged.kind === 'missing' || engineDisagrees(state, terms, index, exchanged)) {
        return [];
      }
      return [{ kind: 'enginesSwapped', glance: index, instruments: [one, other] }];
    }),
  );
}

function exchange({ readings }: Glance, one: string, other: string): Glance['readings'] {
  const [a, b] = [readings[one], readings[other]];
  if (a === undefined || b === undefined) return readings;
  return { ...readings, [one]: { ...b, instrument: one }, [other]: { ...a, instrument: other } };
}
