import type { Loss } from '../../../../analysis/encounters/losses.ts';
import type { EntryId, EpochMs } from '../../../../record/brand.ts';

/** What one entry called on both wings: its cause is decided once. */
export interface LossesTogether {
  readonly at: EpochMs;
  readonly by: EntryId;
  readonly kind: Loss['kind'];
  readonly losses: readonly Loss[];
}

export function lossesTogether(losses: readonly Loss[]): readonly LossesTogether[] {
  const groups = new Map<string, LossesTogether>();
  for (const loss of losses) {
    const { seen, kind } = loss;
    const key = `${seen.by} ${kind}`;
    const before = groups.get(key)?.losses ?? [];
    groups.set(key, { at: seen.at, by: seen.by, kind, losses: [...before, loss] });
  }
  return [...groups.values()];
}
