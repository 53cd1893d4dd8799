import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { Stamp } from '../../record/entry.ts';
import type { Wing } from '../../record/sheet.ts';
import type { Strokes } from '../../record/sketch.ts';
import type { Boxes } from './boxes.ts';
import type { Field } from './field.ts';

/** Which readings are asked for, one after the other. */
export type ReadingRunOf = 'fuel' | 'air' | 'tank';

/** A value that was queried at Enter: saved already, and asked about once. */
export interface Query {
  readonly entry: EntryId;
  readonly instrument: string;
  readonly value: number;
  readonly candidate: number | null;
  readonly words: string;
  readonly askedAt: EpochMs;
}

/** What stands where the tiles stand; `null` is Fly home. */
export type Pad =
  | {
      readonly kind: 'readings';
      readonly of: ReadingRunOf;
      readonly step: number;
      readonly glance: EpochMs | null;
    }
  | {
      readonly kind: 'number';
      readonly target: EntryId;
      readonly field: Extract<Field, { form: 'number' }>;
    }
  | {
      readonly kind: 'reading';
      readonly target: EntryId;
      readonly field: Extract<Field, { form: 'reading' }>;
      /** The pad that this one was opened from, to go back to. */
      readonly back: Pad | null;
    }
  | {
      readonly kind: 'clock';
      readonly target: EntryId;
      readonly field: Extract<Field, { form: 'clock' | 'time' }>;
    }
  | {
      readonly kind: 'text';
      readonly target: EntryId;
      readonly path: string;
      readonly label: string;
    }
  | { readonly kind: 'tubes'; readonly target: EntryId }
  | {
      readonly kind: 'pressures';
      readonly target: EntryId;
      readonly probe: string | null;
      readonly page: number;
      readonly wing: Wing;
    }
  | { readonly kind: 'covers'; readonly target: EntryId; readonly wing: Wing }
  | {
      readonly kind: 'probes';
      readonly target: EntryId | null;
      readonly stamp: Stamp | null;
      readonly wing: Wing;
    }
  | {
      readonly kind: 'count';
      /** The gain, loss or reading that the count belongs to; null: a reading is written with it. */
      readonly target: EntryId | null;
      readonly stamp: Stamp | null;
      readonly wing: Wing;
      readonly page?: number;
    }
  /** A blank card; what is drawn on it is about `target`, or about now. */
  | { readonly kind: 'sketch'; readonly target: EntryId | null }
  | { readonly kind: 'wing'; readonly wing: Wing }
  | { readonly kind: 'more'; readonly page: number }
  | { readonly kind: 'log'; readonly page: number };

/** What stands in the panel of chips; `null` leaves the wing or the figure in view. */
export type Panel =
  | {
      readonly kind: 'detail';
      readonly target: EntryId;
      readonly field: number;
      readonly page: number;
    }
  | { readonly kind: 'chosen'; readonly target: EntryId }
  | { readonly kind: 'cards'; readonly page: number }
  | { readonly kind: 'rake' }
  | {
      readonly kind: 'desk';
      readonly page: 'first' | 'scribe' | 'complete' | 'aborted';
      readonly chips: number;
    };

/** What is drawn on a card so far, and when its first stroke began: the time of the sketch. */
export interface Ink {
  readonly strokes: Strokes;
  readonly first: Stamp;
}

export interface FlyUi {
  readonly pad: Pad | null;
  readonly panel: Panel | null;
  /** Entry chosen in the log: back-date keys, withdraw and amend act on it. */
  readonly chosen: EntryId | null;
  /** Panel touched on the wing, and when; the state key that follows writes that time. */
  readonly wingPanel: {
    readonly panel: string;
    readonly stamp: Stamp;
    readonly used: boolean;
  } | null;
  readonly boxes: Boxes;
  /** Contact of the first digit in the boxes: the time of the reading. */
  readonly firstDigit: Stamp | null;
  readonly query: Query | null;
  /** Boxes that were left half-filled, by what they were for. */
  readonly drafts: ReadonlyMap<string, Boxes>;
  /** Words that were left half-written. */
  readonly texts: ReadonlyMap<string, string>;
  /** Cards that were left half-drawn, by what they are about. */
  readonly inks: ReadonlyMap<string, Ink>;
  /** The card that the scribe chose to fly next, ahead of the order of the cards. */
  readonly chosenPoint: string | null;
  /** One line: a touch that was ignored, a back gesture. */
  readonly notice: { readonly words: string; readonly at: EpochMs } | null;
}

export const HOME: FlyUi = {
  pad: null,
  panel: null,
  chosen: null,
  wingPanel: null,
  boxes: { digits: '', minus: false, stepped: false },
  firstDigit: null,
  query: null,
  drafts: new Map(),
  texts: new Map(),
  inks: new Map(),
  chosenPoint: null,
  notice: null,
};

export type FlyMove =
  | { readonly do: 'open'; readonly pad: Pad; readonly boxes?: Boxes }
  | { readonly do: 'closePad' }
  | { readonly do: 'panel'; readonly panel: Panel | null }
  | { readonly do: 'choose'; readonly entry: EntryId | null }
  | { readonly do: 'boxes'; readonly boxes: Boxes; readonly stamp: Stamp }
  | { readonly do: 'next'; readonly pad: Pad | null }
  | { readonly do: 'query'; readonly query: Query | null }
  | { readonly do: 'wingPanel'; readonly wingPanel: FlyUi['wingPanel'] }
  | { readonly do: 'point'; readonly point: string | null }
  | { readonly do: 'notice'; readonly words: string; readonly at: EpochMs }
  | { readonly do: 'keepText'; readonly key: string; readonly text: string }
  | { readonly do: 'ink'; readonly key: string; readonly ink: Ink | null }
  | { readonly do: 'home' };

/** Whether controls stand beside the pad, in place of what is echoed. */
export function hasControls(pad: Pad): boolean {
  return (
    pad.kind === 'wing' ||
    pad.kind === 'probes' ||
    pad.kind === 'count' ||
    pad.kind === 'sketch' ||
    pad.kind === 'covers' ||
    (pad.kind === 'pressures' && pad.probe === null)
  );
}

/** What an open pad's boxes are kept under; `null` for pads without boxes. */
function draftKey(pad: Pad | null): string | null {
  switch (pad?.kind) {
    case 'readings':
      return `${pad.of}-${pad.step}`;
    case 'number':
    case 'reading':
    case 'clock':
      return `${pad.target}-${pad.field.id}`;
    default:
      return null;
  }
}

function keptDrafts(ui: FlyUi): FlyUi['drafts'] {
  const key = draftKey(ui.pad);
  if (key === null) {
    return ui.drafts;
  }
  const drafts = new Map(ui.drafts);
  if (ui.boxes.digits === '') {
    drafts.delete(key);
  } else {
    drafts.set(key, ui.boxes);
  }
  return drafts;
}

/** The places of Fly: what is open, and what is half-done. Nothing of it is in the record. */
export function flyMoved(ui: FlyUi, move: FlyMove): FlyUi {
  switch (move.do) {
    case 'open': {
      const key = draftKey(move.pad);
      const draft = key === null ? undefined : ui.drafts.get(key);
      return {
        ...ui,
        pad: move.pad,
        drafts: keptDrafts(ui),
        boxes: draft ?? move.boxes ?? HOME.boxes,
        firstDigit: null,
      };
    }
    case 'closePad':
      return {
        ...ui,
        pad: null,
        drafts: keptDrafts(ui),
        boxes: HOME.boxes,
        firstDigit: null,
        query: null,
      };
    case 'panel':
      return { ...ui, panel: move.panel };
    case 'choose':
      return { ...ui, chosen: move.entry };
    case 'boxes':
      return {
        ...ui,
        boxes: move.boxes,
        firstDigit: move.boxes.digits === '' ? null : (ui.firstDigit ?? move.stamp),
      };
    case 'next': {
      const key = draftKey(ui.pad);
      const drafts = new Map(ui.drafts);
      if (key !== null) {
        drafts.delete(key);
      }
      const draft = draftKey(move.pad);
      return {
        ...ui,
        pad: move.pad,
        drafts,
        boxes: (draft === null ? undefined : drafts.get(draft)) ?? HOME.boxes,
        firstDigit: null,
      };
    }
    case 'query':
      return { ...ui, query: move.query };
    case 'wingPanel':
      return { ...ui, wingPanel: move.wingPanel };
    case 'point':
      return { ...ui, chosenPoint: move.point };
    case 'notice':
      return { ...ui, notice: { words: move.words, at: move.at } };
    case 'keepText': {
      const texts = new Map(ui.texts);
      if (move.text === '') {
        texts.delete(move.key);
      } else {
        texts.set(move.key, move.text);
      }
      return { ...ui, texts };
    }
    case 'ink': {
      const inks = new Map(ui.inks);
      if (move.ink === null) {
        inks.delete(move.key);
      } else {
        inks.set(move.key, move.ink);
      }
      return { ...ui, inks };
    }
    case 'home':
      return {
        ...HOME,
        texts: ui.texts,
        inks: ui.inks,
        drafts: keptDrafts(ui),
        chosenPoint: ui.chosenPoint,
        notice: ui.notice,
      };
  }
}
