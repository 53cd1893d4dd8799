import * as v from 'valibot';
import { entryIdSchema, instantSchema } from '../../record/bodyParts.ts';
import type { EpochMs } from '../../record/brand.ts';
import { wingSchema } from '../../record/sheet.ts';
import { strokesSchema } from '../../record/sketch.ts';
import { flyMoved, HOME, type FlyUi } from './flyState.ts';

/**
 * Where Fly stood, kept beside the record in the browser's small storage, so that a reload or a kill comes back to the
 * same view with what was half-done. It is no record: what cannot be read again is left out, never guessed.
 */

/** A view older than this is as one left idle: only what was half-done comes back. */
const SAME_VIEW_MS = 30_000;
/** One for the tablet: nobody flies two flights at once. */
const KEY = 'kneeline-fly';

const stamp = v.object({ wall: instantSchema, mono: v.number(), boot: v.string() });
const target = entryIdSchema;
const page = v.number();
const kind = <const Kind extends string, const Own extends v.ObjectEntries>(name: Kind, own: Own) =>
  v.object({ kind: v.literal(name), ...own });

/** Pads whose field asks with a function are not among them: their digits are, in `drafts`. */
const padSchema = v.variant('kind', [
  kind('readings', {
    of: v.picklist(['fuel', 'air', 'tank']),
    step: v.number(),
    glance: v.nullable(instantSchema),
  }),
  kind('text', { target, path: v.string(), label: v.string() }),
  kind('tubes', { target }),
  kind('pressures', { target, probe: v.nullable(v.string()), page, wing: wingSchema }),
  kind('covers', { target, wing: wingSchema }),
  kind('probes', { target: v.nullable(target), stamp: v.nullable(stamp), wing: wingSchema }),
  kind('count', {
    target: v.nullable(target),
    stamp: v.nullable(stamp),
    wing: wingSchema,
    page: v.exactOptional(page),
  }),
  kind('sketch', { target: v.nullable(target) }),
  kind('wing', { wing: wingSchema }),
  kind('more', { page }),
  kind('log', { page }),
]);

const panelSchema = v.variant('kind', [
  kind('detail', { target, field: v.number(), page }),
  kind('chosen', { target }),
  kind('cards', { page }),
  kind('rake', {}),
]);

const boxesSchema = v.object({ digits: v.string(), minus: v.boolean(), stepped: v.boolean() });
const pairs = <const Value extends v.GenericSchema>(value: Value) =>
  v.array(v.tuple([v.string(), value]));

const keptSchema = v.object({
  flight: v.string(),
  at: instantSchema,
  pad: v.fallback(v.nullable(padSchema), null),
  panel: v.fallback(v.nullable(panelSchema), null),
  chosen: v.nullable(target),
  wingPanel: v.nullable(v.object({ panel: v.string(), stamp, used: v.boolean() })),
  boxes: boxesSchema,
  firstDigit: v.nullable(stamp),
  drafts: pairs(boxesSchema),
  texts: pairs(v.string()),
  inks: pairs(v.object({ strokes: strokesSchema, first: stamp })),
  chosenPoint: v.nullable(v.string()),
});

type Keep = Pick<Storage, 'getItem' | 'setItem'>;

export function keepUi(storage: Keep, flight: string, ui: FlyUi, at: EpochMs): void {
  const { pad, panel, chosen, wingPanel, boxes, firstDigit, chosenPoint } = ui;
  const kept = {
    flight,
    at,
    pad,
    panel,
    chosen,
    wingPanel,
    boxes,
    firstDigit,
    // What stands in the boxes of an open pad is a draft once the view is not the same any more.
    drafts: [...flyMoved(ui, { do: 'home' }).drafts],
    texts: [...ui.texts],
    inks: [...ui.inks],
    chosenPoint,
  };
  try {
    storage.setItem(KEY, JSON.stringify(kept));
  } catch {
    // Full or blocked: a reload then comes back to Fly home, with every entry.
  }
}

/** Where Fly opens: as it stood a moment ago, else at home with what was left half-done. */
export function keptUi(storage: Keep, flight: string, now: EpochMs): FlyUi {
  const kept = read(storage, flight);
  if (kept === null) {
    return HOME;
  }
  const halfDone = {
    ...HOME,
    drafts: new Map(kept.drafts),
    texts: new Map(kept.texts),
    inks: new Map(kept.inks),
    chosenPoint: kept.chosenPoint,
  };
  const ageMs = now - kept.at;
  if (ageMs < 0 || ageMs > SAME_VIEW_MS) {
    return halfDone;
  }
  const { pad, panel, chosen, wingPanel, boxes, firstDigit } = kept;
  return {
    ...halfDone,
    pad,
    panel,
    chosen,
    wingPanel,
    ...(pad !== null && { boxes, firstDigit }),
  };
}

function read(storage: Keep, flight: string): v.InferOutput<typeof keptSchema> | null {
  try {
    const text = storage.getItem(KEY);
    const parsed = text === null ? null : v.safeParse(keptSchema, JSON.parse(text));
    return parsed?.success === true && parsed.output.flight === flight ? parsed.output : null;
  } catch {
    return null;
  }
}
