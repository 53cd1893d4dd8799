import { historyOf } from '../../analysis/readingHistory.ts';
import type { EpochMs } from '../../record/brand.ts';
import type { Instrument } from '../../record/sheet.ts';
import { hms } from '../kit/time.ts';
import type { NumberSpec } from './field.ts';
import type { Fly } from './flyContext.ts';
import type { Pad, ReadingRunOf } from './flyState.ts';
import {
  airInstruments,
  fuelInstruments,
  instrumentWords,
  probeInstrument,
  tankInstruments,
  unitWords,
} from './instruments.ts';

/** What the boxes are for now. */
export interface NumberJob {
  readonly spec: NumberSpec;
  /** The gauge that is read; `null` for a number that is no reading. */
  readonly instrument: Instrument | null;
  readonly lastAt: EpochMs | null;
  /** What comes after this one, so that the eye can go there already. */
  readonly next: string | null;
}

/** The instruments of a run of readings, in the order in which the pad asks for them. */
export function readingRun(of: ReadingRunOf, fly: Pick<Fly, 'sheet'>): readonly Instrument[] {
  switch (of) {
    case 'fuel':
      return [...fuelInstruments(fly.sheet), ...airInstruments(fly.sheet)];
    case 'air':
      return airInstruments(fly.sheet);
    case 'tank':
      return tankInstruments(fly.sheet);
  }
}

const CLOCK_FORMAT = { wholeDigits: 6, decimals: 0, signed: false, exact: true } as const;

/** What an open pad of digits asks for; `null` for other pads, and when a run of readings is through. */
export function numberJob(
  pad: Pad,
  fly: Pick<Fly, 'sheet' | 'view'>,
  now: EpochMs,
): NumberJob | null {
  switch (pad.kind) {
    case 'readings': {
      const run = readingRun(pad.of, fly);
      const instrument = run[pad.step];
      const next = run[pad.step + 1];
      return instrument === undefined
        ? null
        : readingJob(instrument, fly, now, next === undefined ? null : nextWords(next, fly, now));
    }
    case 'reading':
      return readingJob(pad.field.instrument, fly, now, null);
    case 'number':
      return { spec: pad.field.spec, instrument: null, lastAt: null, next: null };
    case 'clock':
      return {
        spec: {
          title: `${pad.field.label}, UTC`,
          unit: 'Z',
          format: CLOCK_FORMAT,
          last: null,
          step: 1,
          clock: true,
        },
        instrument: null,
        lastAt: null,
        next: `entry at ${hms(fly.view.byId(pad.target)?.at ?? now)}`,
      };
    case 'tubes':
      return { spec: tubeSpec(pad.target, fly), instrument: null, lastAt: null, next: null };
    case 'pressures':
      return pad.probe === null ? null : pressureJob(pad.probe, fly, now);
    default:
      return null;
  }
}

function readingJob(
  instrument: Instrument,
  fly: Pick<Fly, 'sheet' | 'view'>,
  now: EpochMs,
  next: string | null,
): NumberJob {
  const { lastValue, lastAt } = historyOf(fly.view, instrument.id, now);
  return {
    spec: {
      title: instrumentWords(instrument, fly.sheet),
      unit: unitWords(instrument.unit),
      format: { ...instrument.format, exact: true },
      last: lastValue,
      step: instrument.resolution > 0 ? instrument.resolution : 10 ** -instrument.format.decimals,
    },
    instrument,
    lastAt,
    next,
  };
}

function nextWords(next: Instrument, fly: Pick<Fly, 'sheet' | 'view'>, now: EpochMs): string {
  const { lastValue } = historyOf(fly.view, next.id, now);
  const words = instrumentWords(next, fly.sheet);
  return lastValue === null
    ? `then ${words}`
    : `then ${words}, last ${lastValue.toFixed(next.format.decimals)}`;
}

const PRESSURE_FORMAT = { wholeDigits: 2, decimals: 1, signed: false, exact: false } as const;

function tubeSpec(
  target: Extract<Pad, { kind: 'tubes' }>['target'],
  fly: Pick<Fly, 'sheet' | 'view'>,
): NumberSpec {
  const entry = fly.view.byId(target)?.effective;
  const read = entry?.kind === 'rakeRead' ? (entry.body.tubes ?? []) : [];
  return {
    title: `Tube ${read.length + 1} from the surface`,
    unit: unitWords(pressureUnit(fly)),
    format: PRESSURE_FORMAT,
    last: read.at(-1) ?? null,
    step: 0.1,
  };
}

/** By the probe's own gauge where the flight sheet has one; else by digits in the unit of the aircraft's probes. */
function pressureJob(probe: string, fly: Pick<Fly, 'sheet' | 'view'>, now: EpochMs): NumberJob {
  const own = probeInstrument(fly.sheet, probe);
  if (own !== null) {
    return readingJob(own, fly, now, null);
  }
  const { lastValue, lastAt } = historyOf(fly.view, probe, now);
  return {
    spec: {
      title: `Probe ${probe}`,
      unit: unitWords(pressureUnit(fly)),
      format: PRESSURE_FORMAT,
      last: lastValue,
      step: 0.1,
    },
    instrument: null,
    lastAt,
    next: null,
  };
}

/** The unit that this aircraft's probes are read in. */
export function pressureUnit(fly: Pick<Fly, 'sheet'>): Instrument['unit'] {
  return fly.sheet?.laminarBelow?.unit ?? 'inH2O';
}
