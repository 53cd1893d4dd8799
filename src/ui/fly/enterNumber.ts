import { historyOf } from '../../analysis/readingHistory.ts';
import { judgeReading } from '../../analysis/plausibility.ts';
import { latestAtDigits } from '../kit/time.ts';
import { figure } from '../kit/number.ts';
import { epochMs, type EntryId, type EpochMs } from '../../record/brand.ts';
import type { Entry, Reading, Stamp } from '../../record/entry.ts';
import type { Instrument } from '../../record/sheet.ts';
import { isFull, valueOf } from './boxes.ts';
import { change, type Change } from './field.ts';
import type { Fly } from './flyContext.ts';
import type { Pad, Query } from './flyState.ts';
import { isAir } from './instruments.ts';
import { pressureUnit, readingRun, type NumberJob } from './numberJob.ts';

const HALF_DAY_MS = 43_200_000;

/** Enter: what stands in the boxes is written, whatever it is; a doubt about it is asked afterwards and stops nobody. */
export async function enterNumber(fly: Fly, pad: Pad, job: NumberJob, stamp: Stamp): Promise<void> {
  const value = valueOf(fly.ui.boxes, job.spec.format);
  switch (pad.kind) {
    case 'readings':
      return enterOfRun(fly, pad, job, value, stamp);
    case 'reading':
      fly.move({ do: 'next', pad: pad.back });
      if (value !== null) {
        const { reading, query } = judged(fly, pad.field.instrument, value, stamp.wall);
        const entry = await fly.amend(pad.target, [readingChange(reading)], stamp);
        askWhy(fly, pad.back, entry);
        ask(fly, entry === null ? null : pad.target, reading, query, stamp.wall);
        if (entry?.kind === 'entryAmended' && entry.body.code === 'misKeyed') {
          // What stood there was wrong: why, and on what grounds, is asked while it is known.
          const panel = { kind: 'detail', target: entry.id, field: 0, page: 0 } as const;
          fly.move({ do: 'panel', panel });
        }
      }
      return;
    case 'number':
      return amendWith(
        fly,
        pad.target,
        value === null ? [] : pad.field.changes(value, fly.ui.boxes.digits),
        stamp,
        null,
      );
    case 'clock':
      return amendWith(
        fly,
        pad.target,
        clockChanges(fly, pad, fly.ui.boxes.digits, stamp),
        stamp,
        null,
      );
    case 'tubes':
      return amendWith(
        fly,
        pad.target,
        value === null ? [] : tubeChanges(fly, pad.target, value),
        stamp,
        value === null ? null : pad,
      );
    case 'pressures':
      return amendWith(
        fly,
        pad.target,
        value === null || pad.probe === null ? [] : [pressureChange(fly, pad.probe, value)],
        stamp,
        { ...pad, probe: null },
      );
    default:
      return;
  }
}

/** A value that was put right wants a reason: the panel turns to the amendment itself. */
function askWhy(fly: Fly, back: Pad | null, entry: Entry | null): void {
  if (back === null && entry?.kind === 'entryAmended' && entry.body.code === 'misKeyed') {
    fly.move({ do: 'panel', panel: { kind: 'detail', target: entry.id, field: 0, page: 0 } });
  }
}

async function amendWith(
  fly: Fly,
  target: EntryId,
  changes: readonly Change[],
  stamp: Stamp,
  next: Pad | null,
): Promise<void> {
  fly.move({ do: 'next', pad: next });
  if (changes.length > 0) {
    await fly.amend(target, changes, stamp);
  }
}

async function enterOfRun(
  fly: Fly,
  pad: Extract<Pad, { kind: 'readings' }>,
  job: NumberJob,
  value: number | null,
  stamp: Stamp,
): Promise<void> {
  const { instrument } = job;
  const glance = pad.glance ?? fly.ui.firstDigit?.wall ?? stamp.wall;
  const isLast = pad.step + 1 >= readingRun(pad.of, fly).length;
  fly.move({
    do: 'next',
    pad: isLast
      ? null
      : { ...pad, step: pad.step + 1, glance: value === null ? pad.glance : glance },
  });
  if (value === null || instrument === null) {
    return;
  }
  const { reading, query } = judged(fly, instrument, value, stamp.wall);
  const body = { glance, readings: [reading] };
  const kind =
    pad.of === 'tank'
      ? ('fuelStateRead' as const)
      : isAir(instrument)
        ? ('airDataRead' as const)
        : ('fuelRead' as const);
  const entry = await fly.append({ kind, body, stamp });
  ask(fly, entry?.id ?? null, reading, query, stamp.wall);
}

interface Judged {
  readonly reading: Extract<Reading, { readonly value: number }>;
  readonly query: Pick<Query, 'candidate' | 'words'> | null;
}

function judged(fly: Fly, instrument: Instrument, value: number, now: EpochMs): Judged {
  const { boxes } = fly.ui;
  const plain = {
    instrument: instrument.id,
    value,
    unit: instrument.unit,
    method: boxes.stepped ? ('steps' as const) : ('digits' as const),
  };
  if (!isFull(boxes, { ...instrument.format, exact: true })) {
    return {
      reading: { ...plain, queried: 'short' },
      query: { candidate: null, words: 'Short: a digit is missing.' },
    };
  }
  const past = historyOf(fly.view, instrument.id, now);
  const judgement = judgeReading({
    instrument,
    value,
    history: past.history,
    rangeLow: instrument.rangeLow,
    rangeHigh: instrument.rangeHigh,
    lastQueried: past.lastQueried,
    expected: past.expected,
  });
  if (judgement.kind !== 'query') {
    return { reading: plain, query: null };
  }
  return {
    reading: { ...plain, queried: 'outsideBand' },
    query: { candidate: judgement.candidate, words: queryWords(judgement, instrument) },
  };
}

const SLIP_WORDS = {
  timesTen: 'ten times too much?',
  tenth: 'a tenth of it?',
  swapped: 'two digits changed places?',
  doubledOrDropped: 'a digit doubled or dropped?',
  neighbourKey: 'the key beside it?',
} as const;

function queryWords(
  query: {
    readonly percentOff: number | null;
    readonly candidate: number | null;
    readonly cause: keyof typeof SLIP_WORDS | null;
  },
  instrument: Instrument,
): string {
  if (query.candidate !== null && query.cause !== null) {
    return `Read ${figure(query.candidate, instrument.format.decimals)}? ${SLIP_WORDS[query.cause]}`;
  }
  return query.percentOff === null
    ? 'Outside the range of the gauge.'
    : `${query.percentOff > 0 ? '+' : '\u2212'}${Math.abs(query.percentOff).toFixed(0)}\u00a0% from the last ones.`;
}

function ask(
  fly: Fly,
  entry: EntryId | null,
  reading: Judged['reading'],
  query: Judged['query'],
  now: EpochMs,
): void {
  if (entry !== null && query !== null) {
    fly.move({
      do: 'query',
      query: {
        ...query,
        entry,
        instrument: reading.instrument,
        value: reading.value,
        askedAt: now,
      },
    });
  } else if (entry !== null && fly.ui.query !== null) {
    fly.move({ do: 'query', query: null });
  }
}

function readingChange(reading: Judged['reading']): Change {
  const { instrument, value, unit, method, queried } = reading;
  return change(`readings.${instrument}`, {
    instrument,
    value,
    unit,
    ...(method !== undefined && { method }),
    ...(queried !== undefined && { queried }),
  });
}

/** A time keyed as six digits is the last such time; a clock's reading is the one nearest to the hack. */
function clockChanges(
  fly: Fly,
  pad: Extract<Pad, { kind: 'clock' }>,
  digits: string,
  stamp: Stamp,
): readonly Change[] {
  const standing = fly.view.byId(pad.target);
  if (standing === undefined) {
    return [];
  }
  if (pad.field.form === 'time') {
    const at = latestAtDigits(digits, stamp.wall);
    return at === null ? [] : [change('at', at)];
  }
  const shown = latestAtDigits(digits, epochMs(standing.at + HALF_DAY_MS));
  if (shown === null) {
    return [];
  }
  const { clock } = pad.field;
  const entry = standing.effective;
  if (clock === null || entry.kind !== 'timeHackTaken') {
    return [change('master', shown)];
  }
  const others = entry.body.shown
    .filter((each) => each.clock !== clock)
    .map((each) => ({ clock: each.clock, shown: each.shown }));
  return [change('shown', [...others, { clock, shown }])];
}

function tubeChanges(fly: Fly, target: EntryId, value: number): readonly Change[] {
  const entry = fly.view.byId(target)?.effective;
  const read = entry?.kind === 'rakeRead' ? (entry.body.tubes ?? []) : [];
  return [change('tubes', [...read, value]), change('tubeUnit', pressureUnit(fly))];
}

/** A probe's pressure is a reading of its instrument; a sheet that names none for it lends the probe's own id. */
function pressureChange(fly: Fly, probe: string, value: number): Change {
  const instrument = fly.sheet?.instruments.find(
    (each) => each.quantity === 'probeDeficit' && each.probe === probe,
  );
  const id = instrument?.id ?? probe;
  return change(`readings.${id}`, {
    instrument: id,
    value,
    unit: instrument?.unit ?? pressureUnit(fly),
  });
}
