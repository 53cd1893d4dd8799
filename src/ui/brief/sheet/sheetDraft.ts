import * as v from 'valibot';
import { createContext, use, useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { Shelf } from '../../../journal/journal.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { checkSheet } from '../../../record/sheetCheck.ts';
import type { SheetDoubt } from '../../../record/sheetDoubt.ts';
import { withValue, type SheetPath } from '../../../record/sheetEdit.ts';
import { TILE_IDS } from '../../../record/tiles.ts';
import { SheetKeeper, type KeeperState } from './sheetKeeper.ts';
import { useKept } from '../useKept.ts';

/** What the pages of the editor work on. */
export interface SheetDraft extends KeeperState {
  /** Changes one field; where the record would not take it, the text is kept with the reason instead: then false. */
  readonly put: (path: SheetPath, value: unknown, refusal: Refusal) => boolean;
  readonly replace: (sheet: FlightSheet) => void;
  readonly undo: () => void;
  /** A text that is no value yet, with the reason; null when the field is sound. */
  readonly keptAt: (path: SheetPath) => Refusal | null;
  readonly keep: (path: SheetPath, refusal: Refusal) => void;
  readonly doubts: readonly SheetDoubt[];
  readonly faultAt: (path: SheetPath) => string | null;
  /** UTC date. */
  readonly today: string;
  /** The row that is open on a page of rows; null shows the list. */
  readonly item: number | null;
  readonly openItem: (item: number | null) => void;
}

export interface Refusal {
  readonly text: string;
  readonly words: string;
}

export const DraftContext = createContext<SheetDraft | null>(null);

export function useDraft(): SheetDraft {
  const draft = use(DraftContext);
  if (draft === null) {
    throw new Error('a page of the flight sheet stands inside DraftContext');
  }
  return draft;
}

/** The keeper of a flight sheet on the shelf; null until it is found, 'absent' when it is not there. */
export function useSheetKeeper(shelf: Shelf, id: string): SheetKeeper | null | 'absent' {
  const [found, setFound] = useState<{ id: string; keeper: SheetKeeper | 'absent' } | null>(null);
  useEffect(() => {
    let wanted = true;
    void shelf.sheets().then((sheets) => {
      const sheet = sheets.find((one) => one.id === id);
      if (wanted) {
        setFound({ id, keeper: sheet === undefined ? 'absent' : new SheetKeeper(shelf, sheet) });
      }
    });
    return () => {
      wanted = false;
    };
  }, [shelf, id]);
  return found?.id === id ? found.keeper : null;
}

const keptSchema = v.record(v.string(), v.object({ text: v.string(), words: v.string() }));
const NONE_KEPT: v.InferOutput<typeof keptSchema> = {};

export function useSheetDraft(
  keeper: SheetKeeper,
  given: {
    readonly today: string;
    readonly item: number | null;
    readonly openItem: (item: number | null) => void;
  },
): SheetDraft {
  const state = useSyncExternalStore(keeper.subscribe, keeper.get);
  const [kept, setKept] = useKept(`texts-${state.sheet.id}`, keptSchema, NONE_KEPT);
  const { sheet } = state;
  const { today } = given;
  const doubts = useMemo(() => {
    const texts = Object.entries(kept).flatMap(([path, { words }]) =>
      isPath(path) ? [{ path, words: rowName(sheet, path) + words }] : [],
    );
    return [...texts, ...checkSheet(sheet, { today, tiles: TILE_IDS })];
  }, [kept, sheet, today]);

  const forget = (under: string) =>
    setKept((now) =>
      Object.fromEntries(
        Object.entries(now).filter(([path]) => path !== under && !path.startsWith(`${under}.`)),
      ),
    );
  const keep = (path: SheetPath, refusal: Refusal) =>
    setKept((now) => ({ ...now, [path]: refusal }));
  return {
    ...state,
    ...given,
    doubts,
    keep,
    put: (path, value, refusal) => {
      const next = withValue(keeper.get().sheet, path, value);
      if (next === null) {
        keep(path, refusal);
        return false;
      }
      // A row that goes moves those after it: texts kept under their numbers would name the wrong row.
      forget(value === undefined ? path.replace(/\.\d+$/, '') : path);
      keeper.replace(next);
      return true;
    },
    replace: (next) => keeper.replace(next),
    undo: () => {
      setKept(() => NONE_KEPT);
      keeper.undo();
    },
    keptAt: (path) => kept[path] ?? null,
    faultAt: (path) => {
      const field = path.replace(/\.value$/, '');
      return doubts.find((one) => one.path === path || one.path === field)?.words ?? null;
    },
  };
}

/** Which row a kept text stands in, so that the list of doubts can be read without the page. */
function rowName(sheet: FlightSheet, path: string): string {
  const [list, row, field] = path.split('.');
  if (field === undefined) {
    return '';
  }
  switch (list) {
    case 'instruments':
    case 'panels':
    case 'probes':
    case 'testCards':
    case 'clocks':
    case 'people':
    case 'baselineArchive': {
      const found = sheet[list]?.[Number(row)];
      return found === undefined ? '' : `${found.id}. `;
    }
    default:
      return '';
  }
}

/** Kept texts were written under paths by this file; the first letter is checked so that a foreign key is dropped. */
function isPath(path: string): path is SheetPath {
  return /^[a-z]/.test(path);
}
