import type { EntryId } from '../../../record/brand.ts';
import type { TimelineModel } from './model.ts';

/**
 * The same lanes, bars and curves with the marks of these entries alone; the selected one keeps its mark, so that the
 * cursor never goes out under a filter. The same model where all stay.
 */
export function narrowed(
  model: TimelineModel,
  entries: readonly { readonly id: EntryId }[],
  selected: EntryId | null,
): TimelineModel {
  if (entries.length >= model.marks.length) {
    return model;
  }
  const kept = new Set(entries.map(({ id }) => id));
  return {
    ...model,
    marks: model.marks.filter(({ entry }) => entry === selected || kept.has(entry)),
  };
}
