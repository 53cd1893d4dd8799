import { epochMs, type EpochMs } from '../../../record/brand.ts';
import type { TimeHack } from '../../../record/flightState.ts';
import { numberWords } from '../../../record/sheetMeasure.ts';
import { hms, hmsTenths } from '../../kit/time.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
/** A callout is answered by a touch within this time: until then the minute just gone is still the one called. */
const GRACE_MS = 15_000;

/** The full minute that is called next, or was called just now. */
export function calledMinute(now: EpochMs): EpochMs {
  return epochMs(Math.ceil((now - GRACE_MS) / MINUTE_MS) * MINUTE_MS);
}

export function clockText(at: EpochMs): string {
  return at % 1000 === 0 ? hms(at) : hmsTenths(at);
}

/**
 * What a clock showed, from its digits: 21:36:00, 213600 or 21:36:00.6. The day is the one that puts it nearest to
 * the callout, so that a hack across midnight needs no date.
 */
export function readClock(text: string, near: EpochMs): EpochMs | null {
  const match = /^(\d{1,2}):?(\d{2}):?(\d{2})(?:[.,](\d{1,3}))?$/.exec(text.trim());
  const [, hour = '99', minute = '99', second = '99', part = '0'] = match ?? [];
  if (match === null || Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) {
    return null;
  }
  const ofDay =
    (Number(hour) * 3600 + Number(minute) * 60 + Number(second)) * 1000 +
    Math.round(Number(`0.${part}`) * 1000);
  const days = Math.round((near - ofDay) / DAY_MS);
  return epochMs(days * DAY_MS + ofDay);
}

/** What a clock showed at a hack; null where it was not read. */
export function shownAt(hack: TimeHack, clock: string): EpochMs | null {
  if (clock === hack.masterClock) {
    return hack.master;
  }
  return clock === 'tablet'
    ? hack.at
    : (hack.shown.find((one) => one.clock === clock)?.shown ?? null);
}

/** How far a clock was ahead of the master at a hack; null where it was not read. */
export function offsetMs(hack: TimeHack, clock: string): number | null {
  const shown = shownAt(hack, clock);
  return shown === null ? null : shown - hack.master;
}

/** `0.6 s ahead ± 0.3 s`; a difference inside its doubt is not called one. */
export function offsetWords(offset: number, doubtS: number): string {
  const seconds = Math.abs(offset) / 1000;
  const doubt = ` \u00b1\u00a0${numberWords(doubtS)}\u00a0s`;
  if (seconds === 0) {
    return `with master${doubt}`;
  }
  const size = `${numberWords(Number(seconds.toFixed(1)))}\u00a0s`;
  return `${size} ${offset > 0 ? 'ahead' : 'behind'}${doubt}`;
}

/** How a clock drifted between two hacks, in words; the rate is told only beyond twice its doubt. */
export function driftWords(first: TimeHack, last: TimeHack, clock: string, doubtS: number): string {
  const before = offsetMs(first, clock);
  const after = offsetMs(last, clock);
  const hours = (last.master - first.master) / 3_600_000;
  if (before === null || after === null || hours <= 0) {
    return '';
  }
  const moved = (after - before) / 1000;
  const doubt = doubtS * Math.SQRT2;
  return Math.abs(moved) > 2 * doubt
    ? `drifts ${numberWords(Number((moved / hours).toFixed(2)))}\u00a0s an hour`
    : 'drift not resolved';
}
