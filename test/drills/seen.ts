/** What one drill did and what it found. */
export interface DrillSeen {
  readonly drill: string;
  readonly rounds: number;
  /** Crashes, failing disks, damaged files and whatever else was done to the record. */
  readonly faults: number;
  /** Entries that a promise covered and that were gone, doubled or altered afterwards. */
  readonly lost: number;
  /** Every promise that did not hold, with the number of the round that shows it again. */
  readonly broken: readonly string[];
  /** What a reader should know beside the numbers. */
  readonly note?: string;
}

/** One round of a drill. */
export interface RoundSeen {
  readonly faults: number;
  readonly lost: number;
  readonly broken: readonly string[];
}

/** Adds up rounds numbered from 0; a broken promise carries its round's number. */
export function gathered(
  drill: string,
  rounds: number,
  round: (number: number) => RoundSeen,
): DrillSeen {
  let faults = 0;
  let lost = 0;
  const broken: string[] = [];
  for (let number = 0; number < rounds; number += 1) {
    const seen = round(number);
    faults += seen.faults;
    lost += seen.lost;
    broken.push(...seen.broken.map((words) => `${drill} ${number}: ${words}`));
  }
  return { drill, rounds, faults, lost, broken };
}
