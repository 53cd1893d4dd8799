import type { Answer } from '../../../src/analysis/answer.ts';

export const POUND_KG = 0.45359237;

/** The value of a result that must be there. */
export function answerOf<Value>(answer: Answer<Value, string, string, string>): Value {
  if (answer.kind === 'noAnswer') throw new Error(`no answer: ${answer.because}`);
  return answer.value;
}

/** Why a result that must be missing is. */
export function reasonOf(answer: Answer<unknown, string, string, string>): string {
  if (answer.kind === 'answer') throw new Error(`an answer: ${JSON.stringify(answer.value)}`);
  return answer.because;
}

export function relative(actual: number, expected: number): number {
  return Math.abs(actual / expected - 1);
}
