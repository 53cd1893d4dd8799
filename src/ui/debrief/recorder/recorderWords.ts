import type { NoOffset, RecorderOffset } from '../../../analysis/recorder/clockOffset.ts';
import type { NoRecordedNumber } from '../../../analysis/recorder/recorderResults.ts';
import type { RecordedGate } from '../../../analysis/recorder/secondsLeft.ts';
import type { ChannelUse } from '../../../analysis/recorder/trace.ts';
import type { NoHead, RecorderHead } from '../../../file/recorder/recorderHead.ts';
import type { Counted, RecorderTroubles } from '../../../file/recorder/recorderReader.ts';
import type { TimeForm } from '../../../file/recorder/recorderTimes.ts';
import { figure } from '../../kit/number.ts';
import type { RecorderMapping } from './mapping.ts';

export const USE_WORDS: Readonly<Record<ChannelUse, string>> = {
  fuelFlow: 'fuel flow, engine',
  suctionFuelFlow: 'suction unit fuel flow',
  mach: 'Mach',
  pressureAltitude: 'pressure altitude',
  staticAirTemp: 'static air temperature',
  totalAirTemp: 'total air temperature',
  other: 'drawn only',
};

export const FORM_WORDS: Readonly<Record<TimeForm, string>> = {
  iso: 'date and time, UTC',
  dayOfYear: 'day of year and time',
  clock: 'time of day',
  secondsOfDay: 'seconds of the day',
  elapsed: 'seconds from a start',
  unix: 'seconds since 1970',
};

export const REFUSED_WORDS: Readonly<Record<NoHead | 'unreadable', string>> = {
  noTable:
    'No table in it: rows of numbers under a line of names are wanted. Choose the recorder’s CSV.',
  noHeader:
    'Its columns have no names. Put a line of names above the first row, then open it again.',
  unreadable:
    'It could not be read to the end. It may be damaged, or larger than this tablet holds.',
};

const NO_OFFSET_WORDS: Readonly<Record<NoOffset['because'], string>> = {
  nothingToMatch:
    'Clock not found: neither a fuel flow of each engine nor a mark that the recorder shows too.',
  tooFewReadings: 'Clock not found: fewer than four readings and marks to match.',
  noOverlap: 'Clock not found: at no setting do half of the readings lie in the recording.',
  doesNotFit:
    'Clock not found: flows differ by more than the gauges’ doubt wherever it is laid. Another flight, or another column?',
  tooFewSteps:
    'Clock not found: the flow hardly changed between readings, so the clock could stand anywhere.',
  ambiguous: 'Clock not found: two settings fit nearly alike.',
};

/** "Recorder clock +3.2 ± 1.6 s (95 %) against the time base". */
export function offsetWords(offset: RecorderOffset | NoOffset): string {
  if (offset.kind === 'noOffset') {
    const tried = offset.candidatesS.map((s) => `${signedFigure(s)} s`).join(' or ');
    return `${NO_OFFSET_WORDS[offset.because]}${tried === '' ? '' : ` It would be ${tried}.`}`;
  }
  const { offsetS, standardUncertaintyS } = offset;
  const gps = Math.abs(Math.abs(offsetS) - GPS_LESS_UTC_S) < 2 * standardUncertaintyS;
  return `Recorder clock ${signedFigure(offsetS)} ± ${figure(2 * standardUncertaintyS, 1)} s (95 %) against the time base.${
    gps ? ' 18 s is what GPS time is ahead of UTC: ask which one it keeps.' : ''
  }`;
}

/** Since 2017 (IERS Bulletin C); only said beside a figure, never applied. */
const GPS_LESS_UTC_S = 18;

export function signedFigure(value: number, decimals = 1): string {
  const shown = figure(value, decimals);
  return value > 0 && /[1-9]/.test(shown) ? `+${shown}` : shown;
}

export const NO_NUMBER_WORDS: Readonly<Record<NoRecordedNumber, string>> = {
  noFlightSheet: 'no flight sheet',
  channelMissing: 'a channel is missing',
  notRecorded: 'not recorded',
  everySecondCut: 'every second cut out',
  noWeight: 'no weight',
  noBaseline: 'no suction-off run',
};

export const CUT_WORDS: Readonly<Record<RecordedGate, string>> = {
  machDrift: 'Mach drift',
  climb: 'climb',
  mach: 'Mach',
  altitude: 'height',
  turn: 'turn',
  moisture: 'moisture',
  beforeOnCondition: 'before on condition',
  notRecorded: 'nothing recorded',
};

/** What was left out of a file or looked odd, a sentence each; empty where nothing was. */
export function troubleWords(
  troubles: RecorderTroubles,
  head: RecorderHead,
  mapping: RecorderMapping,
): readonly string[] {
  const { brokenRows, unreadableTimes, backwardTimes, repeatedTimes, blankLines } = troubles;
  return [
    said(brokenRows, 'with another number of cells than names: left out', false),
    said(unreadableTimes, 'with a time that cannot be read: left out', true),
    said(backwardTimes, 'whose time goes back, or more than a day ahead: left out', true),
    said(repeatedTimes, 'with the time of the row before: kept', false),
    blankLines === 0 ? null : `${rowsWords(blankLines)} blank: left out.`,
    ...mapping.channels.flatMap(({ column }, index) => {
      const name = head.headers[column] ?? '';
      const channel = troubles.columns[index];
      if (channel === undefined) return [];
      return [
        channel.missing === 0
          ? null
          : `${name}: ${rowsWords(channel.missing)} with nothing recorded.`,
        channel.junk.count === 0
          ? null
          : `${name}: ${said(channel.junk, 'with something else than a number: taken as not recorded', true) ?? ''}`,
      ];
    }),
  ].filter((words) => words !== null);
}

function said(
  { count, firstLine, firstText }: Counted,
  words: string,
  quote: boolean,
): string | null {
  if (count === 0) return null;
  const first = quote ? `line ${firstLine}, “${firstText}”` : `line ${firstLine}`;
  return `${rowsWords(count)} ${words}. First: ${first}.`;
}

export function unitWords(unit: string | null): string {
  return { degC: '°C', degF: '°F', '1': '' }[unit ?? '1'] ?? unit ?? '';
}

export function rowsWords(count: number): string {
  return `${grouped(count)} ${count === 1 ? 'row' : 'rows'}`;
}

/** "3 000 000". */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, '\u00a0');
}

export function sizeOf(bytes: number): string {
  return bytes < 1e6 ? `${figure(bytes / 1e3, 0)} kB` : `${figure(bytes / 1e6, 1)} MB`;
}
