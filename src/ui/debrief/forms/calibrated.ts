import type { Body } from '../../../record/entry.ts';
import { bad, good, type Result } from '../../../record/result.ts';
import { readNumber } from '../../kit/Ground.tsx';
import { isDay } from '../../kit/time.ts';
import { optional } from './FormFoot.tsx';

/** A certificate as it was typed; numbers in the unit of the instrument. */
export interface TypedCertificate {
  readonly instrument: string;
  readonly condition: 'asFound' | 'asLeft';
  readonly calibratedOn: string;
  readonly dueOn: string;
  readonly correction: string;
  /** One line a row: reading, then correction. */
  readonly table: string;
  readonly common: string;
  readonly independent: string;
  readonly reason: string;
}

const FEWEST_ROWS = 2;

/** The body of the entry; the error is a sentence for the person. */
export function certificateOf(
  typed: TypedCertificate,
): Result<Body<'instrumentCalibrated'>, string> {
  const correction = readNumber(typed.correction);
  const common = readNumber(typed.common);
  const independent = readNumber(typed.independent);
  const points = tableOf(typed.table);
  const dueOn = typed.dueOn.trim();
  const calibratedOn = typed.calibratedOn.trim();
  if (typed.instrument === '') return bad('Choose the instrument first.');
  if (!isDay(calibratedOn)) return bad('Calibrated on: a date as 2032-06-05.');
  if (dueOn !== '' && !isDay(dueOn)) return bad('Due on: a date as 2032-06-05, or nothing.');
  if (correction.kind === 'fault') return bad('The correction is a figure, as 4 or −2.5.');
  if (common.kind === 'fault' || independent.kind === 'fault') {
    return bad('A doubt is a figure, as 6.');
  }
  if (isNegative(common) || isNegative(independent)) return bad('A doubt is never below zero.');
  if (points === null) {
    return bad('The table needs two rows or more, each a reading and its correction, as 800 −3.');
  }
  const isSilent = [correction, common, independent].every(({ kind }) => kind === 'blank');
  if (isSilent && points.length === 0) {
    return bad('Give a correction, a table or a doubt: a certificate says one of them.');
  }
  if (typed.reason.trim() === '') return bad('Say why: the certificate, or what was found.');
  return good({
    instrument: typed.instrument,
    condition: typed.condition,
    calibratedOn,
    reason: typed.reason.trim(),
    ...optional('dueOn', dueOn),
    ...(points.length === 0 ? {} : { points }),
    ...(correction.kind === 'number' ? { correction: correction.value } : {}),
    ...(common.kind === 'number' ? { commonStandardUncertainty: common.value } : {}),
    ...(independent.kind === 'number' ? { independentStandardUncertainty: independent.value } : {}),
  });
}

type Typed = ReturnType<typeof readNumber>;

const isNegative = (read: Typed): boolean => read.kind === 'number' && read.value < 0;

/** Empty where nothing was typed; null where it is no table. */
function tableOf(
  text: string,
): readonly { readonly reading: number; readonly correction: number }[] | null {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  const rows = lines.flatMap((line) => {
    const [reading, correction, ...more] = line
      .trim()
      .split(/[\s;]+/)
      .map((word) => readNumber(word));
    return reading?.kind === 'number' && correction?.kind === 'number' && more.length === 0
      ? [{ reading: reading.value, correction: correction.value }]
      : [];
  });
  const isTable = rows.length === lines.length && (rows.length === 0 || rows.length >= FEWEST_ROWS);
  return isTable ? rows : null;
}
