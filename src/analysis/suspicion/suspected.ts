import type { EntryId } from '../../record/brand.ts';
import type { Slip } from '../slips.ts';

/** A reading that may not be what the gauge showed. It stays as it is until a person amends it. */
export type Suspicion =
  | {
      /** The difference between two engines has the other sign than the rest of the run, and exchanged it fits. */
      readonly kind: 'enginesSwapped';
      readonly glance: number;
      readonly instruments: readonly [one: string, other: string];
      /** What each would have read, in its own unit. */
      readonly candidates: readonly [one: number, other: number];
      readonly entries: readonly EntryId[];
    }
  | {
      readonly kind: 'digitSlip';
      readonly glance: number;
      readonly instrument: string;
      readonly value: number;
      /** What may have been meant, in the gauge's unit. */
      readonly candidate: number;
      readonly cause: Slip;
      /** What the value disagrees with and the candidate agrees with. */
      readonly against: readonly Witness[];
      readonly entries: readonly EntryId[];
    };

/** The gauge's own readings beside it, the other engines by their usual share, and the slope of the engine's counter. */
export type Witness = 'lastValue' | 'otherEngine' | 'counterSlope';
