import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as calendar from '../../src/aero/calendar.ts';
import * as timeScales from '../../src/aero/timeScales.ts';
import { valueOf } from './referenceRow.ts';

const FIRST_MS = valueOf(calendar.parseIso('0001-01-01'));
const LAST_MS = valueOf(calendar.parseIso('9999-12-31T23:59:59.999Z'));
const anyInstant = fc.integer({ min: FIRST_MS, max: LAST_MS });

describe('the calendar', () => {
  // The platform's own calendar is the reference here: it may be asked in tests.
  it('writes every instant as the platform does', () => {
    fc.assert(
      fc.property(anyInstant, (epochMs) => {
        expect(calendar.isoInstant(epochMs)).toBe(new Date(epochMs).toISOString());
      }),
    );
  });

  it('reads back what it wrote', () => {
    fc.assert(
      fc.property(anyInstant, (epochMs) => {
        expect(valueOf(calendar.parseIso(calendar.isoInstant(epochMs)))).toBe(epochMs);
        const { year } = calendar.civilFromEpochMs(epochMs);
        expect(valueOf(calendar.parseDayTime(calendar.dayTime(epochMs), year))).toBe(epochMs);
        expect(calendar.epochMsFromCivil(calendar.civilFromEpochMs(epochMs))).toBe(epochMs);
      }),
    );
  });

  it.each([
    ['2023-12-31T23:59:59.999Z', '365:23:59:59.999'],
    ['2024-01-01T00:00:00.000Z', '001:00:00:00.000'],
    ['2024-12-31T23:59:59.999Z', '366:23:59:59.999'],
    ['2032-06-02T22:26:04.000Z', '154:22:26:04.000'],
    ['2000-02-29T00:00:00.000Z', '060:00:00:00.000'],
    ['1900-03-01T00:00:00.000Z', '060:00:00:00.000'],
    // The rules of every 100th and every 400th year, a day either side.
    ['2100-12-31T00:00:00.000Z', '365:00:00:00.000'],
    ['2101-01-01T00:00:00.000Z', '001:00:00:00.000'],
    ['2400-12-31T00:00:00.000Z', '366:00:00:00.000'],
    ['2401-01-01T00:00:00.000Z', '001:00:00:00.000'],
  ])('calls %s %s', (iso, dayTime) => {
    expect(calendar.dayTime(valueOf(calendar.parseIso(iso)))).toBe(dayTime);
  });

  it.each([
    [1900, false],
    [2000, true],
    [2023, false],
    [2024, true],
    [2100, false],
  ])('takes %d for a leap year: %s', (year, leap) => {
    expect(calendar.isLeapYear(year)).toBe(leap);
  });

  it('reads a day time with fewer decimals or none', () => {
    const at = (text: string) => valueOf(calendar.parseDayTime(text, 2024));
    expect(at('060:07:05:09')).toBe(at('060:07:05:09.000'));
    expect(at('060:07:05:09.04')).toBe(at('060:07:05:09.040'));
  });

  it.each([
    ['366:00:00:00', 'noSuchTime'],
    ['000:00:00:00', 'noSuchTime'],
    ['100:24:00:00', 'noSuchTime'],
    ['100:00:60:00', 'noSuchTime'],
    ['100:00:00:60', 'noSuchTime'],
    ['60:07:05:09', 'notDayTime'],
    ['060:07:05', 'notDayTime'],
    ['060:07:05:09.0401', 'notDayTime'],
    ['', 'notDayTime'],
  ])('finds %s in 2023 to be %s', (text, because) => {
    expect(calendar.parseDayTime(text, 2023)).toEqual({ kind: 'unavailable', because });
  });

  it.each([
    ['2023-02-29', 'noSuchTime'],
    ['2023-13-01', 'noSuchTime'],
    ['2023-00-01', 'noSuchTime'],
    ['2023-04-31', 'noSuchTime'],
    ['0000-01-01', 'noSuchTime'],
    ['2023-04-30T24:00Z', 'noSuchTime'],
    ['2023-04-30T12:60Z', 'noSuchTime'],
    ['2023-04-30T12:00:60Z', 'noSuchTime'],
    ['2023-04-30T12:00:00+02:00', 'notIso'],
    ['2023-04-30T12:00:00', 'notIso'],
    ['30.04.2023', 'notIso'],
  ])('finds %s to be %s', (text, because) => {
    expect(calendar.parseIso(text)).toEqual({ kind: 'unavailable', because });
  });

  it('refuses parts of a millisecond and dates that do not exist', () => {
    expect(() => calendar.civilFromEpochMs(0.5)).toThrow(RangeError);
    expect(() => calendar.civilFromEpochMs(LAST_MS + 1)).toThrow(RangeError);
    expect(() => calendar.dayOfYear({ year: 2023, month: 2, day: 29 })).toThrow(RangeError);
    expect(() => calendar.epochMsFromCivil({ ...calendar.civilFromEpochMs(0), hour: 24 })).toThrow(
      RangeError,
    );
    for (const part of [{ minute: 60 }, { second: 60 }, { millisecond: 1000 }, { second: 0.5 }]) {
      expect(() => calendar.epochMsFromCivil({ ...calendar.civilFromEpochMs(0), ...part })).toThrow(
        RangeError,
      );
    }
    expect(() => calendar.isLeapYear(10_000)).toThrow(RangeError);
  });
});

describe('time scales', () => {
  const at = (iso: string) => valueOf(calendar.parseIso(iso));

  it('step at the leap second', () => {
    const tai = (iso: string) => valueOf(timeScales.taiMinusUtc(at(iso))).seconds;
    expect(tai('2016-12-31T23:59:59.999Z')).toBe(36);
    expect(tai('2017-01-01T00:00:00.000Z')).toBe(37);
  });

  it('say where no bulletin reaches', () => {
    expect(valueOf(timeScales.gpsMinusUtc(at('2023-12-31')))).toEqual({
      seconds: 18,
      covered: true,
    });
    expect(valueOf(timeScales.gpsMinusUtc(at('2032-06-02')))).toEqual({
      seconds: 18,
      covered: false,
    });
  });

  it('take a newer table where there is one', () => {
    const { rows } = timeScales.LEAP_SECONDS;
    const newer = {
      rows: [...rows, { fromEpochMs: at('2030-01-01'), taiMinusUtcS: 38 }],
      coversUntilEpochMs: at('2033-01-01'),
    };
    expect(valueOf(timeScales.gpsMinusUtc(at('2032-06-02'), newer))).toEqual({
      seconds: 19,
      covered: true,
    });
    expect(valueOf(timeScales.gpsSeconds(at('1980-01-06'), newer))).toBe(0);
  });

  it('begin somewhere', () => {
    const before = { kind: 'unavailable', because: 'beforeTable' };
    expect(timeScales.taiMinusUtc(at('1971-12-31'))).toEqual(before);
    expect(timeScales.gpsMinusUtc(at('1980-01-05'))).toEqual(before);
    expect(timeScales.gpsSeconds(at('1971-12-31'))).toEqual(before);
    expect(() => timeScales.taiMinusUtc(0.5)).toThrow(RangeError);
  });

  it('are recognised when one is taken for the other', () => {
    const gps = (offsetS: number, iso: string) => timeScales.looksLikeGpsTime(offsetS, at(iso));
    expect(gps(17.6, '2032-06-02')).toBe(true);
    expect(gps(-18.4, '2032-06-02')).toBe(true);
    expect(gps(17.4, '2032-06-02')).toBe(false);
    expect(gps(0.2, '2032-06-02')).toBe(false);
    expect(gps(17, '2016-06-01')).toBe(true);
    // In its first year GPS time was UTC: no offset can tell them apart.
    expect(gps(0, '1980-06-01')).toBe(false);
    expect(gps(18, '1975-01-01')).toBe(false);
  });
});
