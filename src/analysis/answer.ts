import type { EntryId } from '../record/brand.ts';

/** How a result was made, so that a person can go from the number back to the touches. */
export interface HowMade<Method extends string, Gate extends string = never> {
  /** Every entry that the result rests on, each once. */
  readonly entries: readonly EntryId[];
  readonly method: Method;
  /** Gates that strike the value: it stays readable, the gate is named. */
  readonly broken: readonly Gate[];
}

/** A result of the debrief, or the reason why there is none; never a blank. */
export type Answer<
  Value,
  Because extends string,
  Method extends string,
  Gate extends string = never,
> =
  | { readonly kind: 'answer'; readonly value: Value; readonly how: HowMade<Method, Gate> }
  | {
      readonly kind: 'noAnswer';
      readonly because: Because;
      /** What was looked at in vain; may be empty. */
      readonly entries: readonly EntryId[];
    };

/** The reasons that an answer may give for being none. */
export type BecauseOf<Answered> =
  Extract<Answered, { readonly kind: 'noAnswer' }> extends { readonly because: infer Because }
    ? Because
    : never;
