import type { Reading, WingProbes } from '../../src/record/entry.ts';
import type { FlightSheet, Instrument, Wing } from '../../src/record/sheet.ts';
import type { Scribe } from './scribe.ts';

/** How many boxes stand before and after the printed point. */
export interface Boxes {
  readonly wholeDigits: number;
  readonly decimals: number;
}

/** The digits that a gauge with these boxes shows. */
export function digitsOf(value: number, { wholeDigits, decimals }: Boxes): string {
  return Math.abs(value)
    .toFixed(decimals)
    .replace('.', '')
    .padStart(wholeDigits + decimals, '0');
}

/** Keys digits into the open pad; the first one at `atMs` where a time is given. */
export async function keyDigits(scribe: Scribe, digits: string, atMs?: number): Promise<void> {
  for (const [place, digit] of digits.split('').entries()) {
    if (place > 0) {
      await scribe.tapDigit(`key-${digit}`);
    } else if (atMs === undefined) {
      await scribe.tap(`key-${digit}`);
    } else {
      await scribe.tapAt(`key-${digit}`, atMs);
    }
  }
}

/** Keys a value with its sign and enters it; a query about it is answered with Keep, for that is what was read. */
export async function keyReading(
  scribe: Scribe,
  value: number,
  boxes: Boxes,
  at: { readonly firstDigitMs?: number; readonly enterMs?: number } = {},
): Promise<void> {
  await keyDigits(scribe, digitsOf(value, boxes), at.firstDigitMs);
  if (value < 0) {
    await scribe.tapDigit('key-sign');
  }
  const before = await scribe.tablet.saved();
  if (at.enterMs === undefined) {
    await scribe.tapDigit('key-enter');
  } else {
    await scribe.tapAt('key-enter', at.enterMs);
  }
  const after = await scribe.tablet.savedBeyond(before);
  if (await scribe.isThere('query-keep')) {
    await scribe.tap('query-keep');
    await scribe.tablet.savedBeyond(after);
  }
}

/** One look at the panel, gauge after gauge as the pad asks for them; the first digit is the time of the reading. */
export async function keyGlance(
  scribe: Scribe,
  asked: readonly Instrument[],
  read: readonly Reading[],
  atMs: number,
): Promise<void> {
  const valueOf = (instrument: Instrument): number | null => {
    const row = read.find((each) => each.instrument === instrument.id);
    return row === undefined || 'blank' in row ? null : row.value;
  };
  const last = asked.findLastIndex((instrument) => valueOf(instrument) !== null);
  let firstDigitMs: number | undefined = atMs;
  for (const instrument of asked.slice(0, last + 1)) {
    const value = valueOf(instrument);
    if (value === null) {
      await scribe.tap('key-enter');
    } else {
      await keyReading(
        scribe,
        value,
        instrument.format,
        firstDigitMs === undefined ? {} : { firstDigitMs },
      );
      firstDigitMs = undefined;
    }
  }
  if (last + 1 < asked.length) {
    // Nothing more was read: erasing empty boxes closes the pad.
    await scribe.tap('key-erase');
  }
}

/** The gauges that the fuel pad asks for, in the order of the eye. */
export function gaugesOf(sheet: FlightSheet, pad: 'fuel' | 'tank'): readonly Instrument[] {
  const fuel = ['fuelFlow', 'suctionFuelFlow', 'fuelUsed'] as const;
  const air = ['mach', 'pressureAltitude', 'staticAirTemp', 'machRate', 'altitudeRate'] as const;
  const tank = ['fuelUsed', 'tankFuel', 'fuelRemaining'] as const;
  const consumer = (instrument: Instrument): number =>
    typeof instrument.consumer === 'number' ? instrument.consumer : Infinity;
  return (pad === 'fuel' ? [...fuel, ...air] : tank).flatMap((quantity) =>
    sheet.instruments
      .filter((instrument) => instrument.quantity === quantity)
      .toSorted((a, b) => (consumer(a) === consumer(b) ? 0 : consumer(a) - consumer(b))),
  );
}

/** Names the probes of both wings on the open pad, which starts with the left one, and enters them. */
export async function nameProbes(
  scribe: Scribe,
  wings: Readonly<Partial<Record<Wing, WingProbes>>>,
  panels: readonly string[],
): Promise<void> {
  for (const wing of ['L', 'R'] as const) {
    const call = wings[wing];
    if (wing === 'R' && call !== undefined) {
      await scribe.tap('wing-other');
    }
    if (call !== undefined) {
      await nameWing(
        scribe,
        call,
        panels.filter((panel) => panel.startsWith(wing)),
      );
    }
  }
  const before = await scribe.tablet.saved();
  await scribe.tap('probes-enter');
  await scribe.tablet.savedBeyond(before);
}

/** Longer than the hold that a whole wing asks for. */
const WHOLE_WING_MS = 850;

async function nameWing(
  scribe: Scribe,
  call: WingProbes,
  panels: readonly string[],
): Promise<void> {
  const { laminarProbes, turbulentProbes, intermittentProbes = [] } = call;
  if (panels.length > 0) {
    await scribe.tap('brush-laminar');
    for (const panel of panels) {
      await scribe.tap(`whole-${panel}`);
    }
    await brush(scribe, 'turbulent', turbulentProbes ?? []);
  } else if (turbulentProbes !== undefined) {
    await scribe.tap('brush-laminar');
    await scribe.hold('all-brush', WHOLE_WING_MS);
    await brush(scribe, 'turbulent', turbulentProbes);
  } else {
    await scribe.tap('brush-turbulent');
    await scribe.hold('all-brush', WHOLE_WING_MS);
    await brush(scribe, 'laminar', laminarProbes ?? []);
  }
  await brush(scribe, 'intermittent', intermittentProbes);
}

async function brush(
  scribe: Scribe,
  state: 'laminar' | 'turbulent' | 'intermittent',
  probes: readonly string[],
): Promise<void> {
  if (probes.length > 0) {
    await scribe.tap(`brush-${state}`);
  }
  for (const probe of probes) {
    await scribe.tap(`probe-${probe}`);
  }
}

/** What was seen of the covers of one wing. */
export async function nameCovers(
  scribe: Scribe,
  clear: readonly string[],
  hung: readonly string[],
  all: readonly string[],
): Promise<void> {
  if (hung.length > 0) {
    await scribe.tap('brush-hung');
    for (const panel of hung) {
      await scribe.tap(`cover-${panel}`);
    }
  }
  if (clear.length + hung.length === all.length) {
    await scribe.tap('all-clear');
  } else {
    await scribe.tap('brush-clear');
    for (const panel of clear) {
      await scribe.tap(`cover-${panel}`);
    }
  }
  const before = await scribe.tablet.saved();
  await scribe.tap('covers-enter');
  await scribe.tablet.savedBeyond(before);
}
