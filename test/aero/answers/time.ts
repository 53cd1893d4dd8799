import { dayOfYear, dayTime, ordinalDate, parseIso } from '../../../src/aero/calendar.ts';
import { civilFromEpochMs } from '../../../src/aero/calendar.ts';
import { fitClock, offsetAt, type ClockModel } from '../../../src/aero/clocks.ts';
import { gpsMinusUtc, gpsSeconds, TAI_MINUS_GPS_S } from '../../../src/aero/timeScales.ts';
import { taiMinusUtc } from '../../../src/aero/timeScales.ts';
import { given, itemAt, valueOf, type Answers, type RowReader } from '../referenceRow.ts';

const instantOf = (text: string): number => valueOf(parseIso(text));
const START_OF_2017 = instantOf('2017-01-01');

export const calendarAnswers: Answers = {
  'TAI minus UTC from 2017-01-01 until further notice': () =>
    valueOf(taiMinusUtc(START_OF_2017)).seconds,
  'TAI minus GPS time, constant': () => TAI_MINUS_GPS_S,
  'GPS minus UTC since 2017-01-01': () => valueOf(gpsMinusUtc(START_OF_2017)).seconds,
  'GPS seconds at 2017-01-01T00:00:00Z (epoch 1980-01-06T00:00:00Z)': (row) =>
    valueOf(gpsSeconds(instantOf(row.text('utc')))),
  'ISO 8601 ordinal date': (row) => ordinalDate(instantOf(row.text('date'))),
  'day of year': (row) => dayOfYear(civilFromEpochMs(instantOf(row.text('date')))),
  'DDD:HH:MM:SS.sss string of a UTC instant': (row) => dayTime(instantOf(row.text('utc'))),
};

function hacksOf(row: RowReader): ClockModel {
  const data = row.has('data') ? row.through('data') : row;
  const offsets = data.list('aircraft_minus_tablet');
  return given(
    fitClock(
      data.list('tablet').map((tabletS, index) => ({
        tabletS,
        offsetS: itemAt(offsets, index),
        standardUncertaintyS: 0,
      })),
    ),
  );
}

function steadyClock(rate: number): ClockModel {
  const hacks = [0, 3600, 7200].map((tabletS) => ({
    tabletS,
    offsetS: rate * tabletS,
    standardUncertaintyS: 0,
  }));
  return given(fitClock(hacks));
}

export const clockAnswers: Answers = {
  'clock offset at tablet time zero': (row) => offsetAt(hacksOf(row), 0).offsetS,
  'clock drift': (row) => row.out(valueOf(hacksOf(row).rate).value),
  'standard uncertainty of drift': (row) => row.out(valueOf(hacksOf(row).rate).standardUncertainty),
  'offset extrapolated to 10800 s': (row) => offsetAt(hacksOf(row), row.raw('tablet')).offsetS,
  '95 percent expanded uncertainty of that offset (t, 3 degrees of freedom)': (row) =>
    offsetAt(hacksOf(row), row.raw('tablet')).expanded95S,
  'drift standard uncertainty from two hacks of 0.1 s each, 7200 s apart': (row) => {
    const hack = { offsetS: 0, standardUncertaintyS: row.raw('u_hack') };
    const model = given(
      fitClock([
        { ...hack, tabletS: 0 },
        { ...hack, tabletS: row.raw('span') },
      ]),
    );
    return row.out(valueOf(model.rate).standardUncertainty);
  },
  'time error after one day at 78 ppm': (row) =>
    offsetAt(steadyClock(row.si('drift')), 86_400).offsetS,
};
