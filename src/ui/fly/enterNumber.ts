import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { Entry, Stamp } from '../../record/entry.ts';
import type { Instrument } from '../../record/sheet.ts';
import { valueOf } from './boxes.ts';
import { amendmentOf } from './amend.ts';
import { change, type Change } from './field.ts';
import type { Fly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import { instrumentWords, isAir } from './instruments.ts';
import { judged, readingChange, slipWords, type Judged } from './judgedReading.ts';
import { clockChanges, pressureChange, tubeChanges } from './keyedChanges.ts';
import { readingRun, type NumberJob } from './numberJob.ts';

/** Enter: what stands in the boxes is written, whatever it is; a doubt about it is asked afterwards and stops nobody. */
export async function enterNumber(fly: Fly, pad: Pad, job: NumberJob, stamp: Stamp): Promise<void> {
  const value = valueOf(fly.ui.boxes, job.spec.format);
  switch (pad.kind) {
    case 'readings':
      return enterOfRun(fly, pad, job, value, stamp);
    case 'reading':
      fly.move({ do: 'next', pad: pad.back });
      if (value !== null) {
        const { reading, query, bearsOut } = judged(fly, pad.field.instrument, value, stamp.wall);
        await bearOut(fly, pad.field.instrument, bearsOut, stamp);
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
      doubtAbout(fly, job, value);
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
      return enterPressure(fly, pad, job, value, stamp);
    default:
      return;
  }
}

/** A probe with an instrument of its own is judged like any gauge; one without has no band to be judged by. */
async function enterPressure(
  fly: Fly,
  pad: Extract<Pad, { kind: 'pressures' }>,
  job: NumberJob,
  value: number | null,
  stamp: Stamp,
): Promise<void> {
  const next = { ...pad, probe: null } as const;
  if (value === null || pad.probe === null || job.instrument === null) {
    const changes =
      value === null || pad.probe === null ? [] : [pressureChange(fly, pad.probe, value)];
    return amendWith(fly, pad.target, changes, stamp, next);
  }
  fly.move({ do: 'next', pad: next });
  const { reading, query, bearsOut } = judged(fly, job.instrument, value, stamp.wall);
  const entry = await fly.amend(pad.target, [readingChange(reading)], stamp);
  await bearOut(fly, job.instrument, bearsOut, stamp);
  ask(fly, entry === null ? null : pad.target, reading, query, stamp.wall);
}

/** A weight or a height is no gauge's reading and carries no mark; a likely slip is said once and changes nothing. */
function doubtAbout(fly: Fly, { spec }: NumberJob, value: number | null): void {
  const words = value === null ? null : slipWords(spec, value);
  if (words !== null) {
    fly.move({ do: 'notice', words, at: fly.clock.now() });
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
  const { reading, query, bearsOut } = judged(fly, instrument, value, stamp.wall);
  const body = { glance, readings: [reading] };
  const kind =
    pad.of === 'tank'
      ? ('fuelStateRead' as const)
      : isAir(instrument)
        ? ('airDataRead' as const)
        : ('fuelRead' as const);
  const entry = await fly.append({ kind, body, stamp });
  await bearOut(fly, instrument, bearsOut, stamp);
  ask(fly, entry?.id ?? null, reading, query, stamp.wall);
}

/** Two readings agree where one alone was in question: the first is kept as read, and one line says so. */
async function bearOut(
  fly: Fly,
  instrument: Instrument,
  entry: EntryId | null,
  stamp: Stamp,
): Promise<void> {
  if (entry === null) {
    return;
  }
  const words = `${instrumentWords(instrument, fly.sheet)}: a real change, both kept.`;
  fly.move({ do: 'notice', words, at: fly.clock.now() });
  const draft = amendmentOf(fly.view, entry, [change(`readings.${instrument.id}.queried`, null)], {
    stamp,
    code: 'kept',
    reason: 'the next reading agrees',
  });
  if (draft !== null) {
    await fly.append(draft);
  }
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
