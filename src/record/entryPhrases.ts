import type { Body, WingProbes } from './entry.ts';
import type { PanelState } from './kinds.ts';
import { measureWords, numberWords } from './readingWords.ts';
import type { Measure } from './measure.ts';
import { type Wing, WINGS } from './sheet.ts';

/** Parts of a line of the log: each gives a few words, or `undefined` where the entry says nothing. */

export const DEVICE_WORDS: Readonly<Record<Body<'deviceNoted'>['what'], string>> = {
  started: 'started',
  resumed: 'resumed',
  hidden: 'screen left',
  shown: 'screen back',
  clockStepped: 'clock stepped',
  sleptOrStepped: 'slept or clock stepped',
  awakeLost: 'may sleep',
  awakeHeld: 'held awake',
  storageTrouble: 'not saving',
};

export const STOP_WORDS: Readonly<Record<Body<'stopCalled'>['call'], string>> = {
  knockItOff: 'Knock-it-off',
  terminate: 'Terminate',
  abort: 'Abort',
};

export const STATE_WORDS: Readonly<Record<PanelState, string>> = {
  laminar: 'LAM',
  intermittent: 'INT',
  turbulent: 'TRB',
  notAssessed: 'not assessed',
};

/** An instant needs no word after its name. */
export const FORM_WORDS: Readonly<Record<Body<'ownEventMarked'>['form'], string | undefined>> = {
  instant: undefined,
  opened: 'opened',
  closed: 'closed',
  on: 'on',
  off: 'off',
};

export function onOff(on: boolean): string {
  return on ? 'on' : 'off';
}

export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** `47.1234 N, 11.5678 E, within 8 m`: digits worth about ten metres. */
export function positionWords(body: Body<'positionRead'>): readonly string[] {
  const { latitudeDeg, longitudeDeg, altitudeM, accuracyM } = body;
  return [
    `${Math.abs(latitudeDeg).toFixed(4)}\u00a0${latitudeDeg < 0 ? 'S' : 'N'}`,
    `${Math.abs(longitudeDeg).toFixed(4)}\u00a0${longitudeDeg < 0 ? 'W' : 'E'}`,
    ...(altitudeM === undefined ? [] : [`${Math.round(altitudeM)}\u00a0m by receiver`]),
    `within ${Math.ceil(accuracyM)}\u00a0m`,
  ];
}

export function wingWords(wing: Wing | 'both'): string {
  return wing === 'both' ? 'L and R' : wing;
}

export function numbered(before: string, number: number | undefined): string | undefined {
  return number === undefined ? undefined : `${before}${number}`;
}

export function measured(measure: Measure | undefined): string | undefined {
  return measure === undefined ? undefined : measureWords(measure);
}

export function listed(head: string, names: readonly string[] | undefined): string | undefined {
  return names === undefined || names.length === 0 ? undefined : `${head} ${names.join(' ')}`;
}

export function signed(value: number): string {
  return value > 0 ? `+${numberWords(value)}` : numberWords(value);
}

/** `as found 2032-07-01`, what it corrects by, and why it was entered. */
export function calibrationWords(body: Body<'instrumentCalibrated'>): readonly string[] {
  const { condition, calibratedOn, correction, points, reason } = body;
  const said = points === undefined ? correction : `table of ${points.length}`;
  return [
    `${condition === 'asFound' ? 'as found' : 'as left'} ${calibratedOn}`,
    ...(said === undefined ? [] : [typeof said === 'number' ? signed(said) : said]),
    reason,
  ];
}

/** How long the record has a gap, and from when it is reckoned. */
export function awayWords({ what, awayS }: Body<'deviceNoted'>): string | undefined {
  if (awayS === undefined) {
    return undefined;
  }
  return what === 'resumed' ? `${lasting(awayS)} after its last entry` : `after ${lasting(awayS)}`;
}

/** `42 s`, `3 min 20 s`, `1 h 05 min`. */
function lasting(seconds: number): string {
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  if (whole < 60) {
    return `${whole}\u00a0s`;
  }
  return minutes < 60
    ? `${minutes}\u00a0min ${whole % 60}\u00a0s`
    : `${Math.floor(minutes / 60)}\u00a0h ${String(minutes % 60).padStart(2, '0')}\u00a0min`;
}

export function stepWords(stepMs: number | undefined): string | undefined {
  return stepMs === undefined ? undefined : `${signed(stepMs / 1000)}\u00a0s`;
}

/** `L 22 of 24`: the count as called, or counted from the names. */
export function wingsWords(
  wings: { readonly L?: WingProbes; readonly R?: WingProbes } | undefined,
): readonly string[] {
  return WINGS.flatMap((wing) => {
    const called = wings?.[wing];
    if (called === undefined) {
      return [];
    }
    const count = called.laminarCount ?? laminarCount(called);
    return [count === null ? wing : `${wing} ${count} of ${called.of}`];
  });
}

function laminarCount(called: WingProbes): number | null {
  const { laminarProbes, turbulentProbes, intermittentProbes = [], of } = called;
  if (laminarProbes !== undefined) {
    return laminarProbes.length;
  }
  return turbulentProbes === undefined
    ? null
    : of - turbulentProbes.length - intermittentProbes.length;
}

/** `FF2 910 to 810`: which field, and from what to what. */
export function changeWords(change: Body<'entryAmended'>['changes'][number]): string {
  return `${fieldWords(change.field)} ${valueWords(change.field, change.old)} to ${valueWords(change.field, change.new)}`;
}

function fieldWords(field: string): string {
  if (field === 'at') {
    return 'time';
  }
  return field.replace(/^readings\./, '').replace(/\.value$/, '');
}

function valueWords(field: string, value: unknown): string {
  switch (typeof value) {
    case 'number':
      return field === 'at' ? timeOfDay(value) : numberWords(value);
    case 'string':
      return value;
    case 'boolean':
      return value ? 'yes' : 'no';
    default:
      return value === null || value === undefined ? 'nothing' : itemsWords(value);
  }
}

function itemsWords(value: unknown): string {
  if (Array.isArray(value)) {
    return value.map((item) => valueWords('', item)).join(' ') || 'none';
  }
  return typeof value === 'object' && value !== null && 'value' in value
    ? valueWords('', value.value)
    : JSON.stringify(value);
}

/** Hours, minutes and seconds UTC of an instant. */
function timeOfDay(at: number): string {
  const dayS = Math.floor((((at % 86_400_000) + 86_400_000) % 86_400_000) / 1000);
  const parts = [Math.floor(dayS / 3600), Math.floor(dayS / 60) % 60, dayS % 60];
  return parts.map((part) => String(part).padStart(2, '0')).join(':');
}
