import * as v from 'valibot';
import type { RecorderHead } from '../../../file/recorder/recorderHead.ts';
import { mappingSchema, type RecorderMapping } from './mapping.ts';

type Keep = Pick<Storage, 'getItem' | 'setItem'>;

const KEY = 'kneeline-recorders';
/** A workshop has a handful of recorders; the oldest gives way. */
const KEPT_AT_MOST = 20;

const keptSchema = v.array(v.object({ headers: v.array(v.string()), mapping: mappingSchema }));

/** The mapping that was last used for a file with the same column names; null where none was. */
export function keptMapping(storage: Keep, head: RecorderHead): RecorderMapping | null {
  return all(storage).find(({ headers }) => isSame(headers, head))?.mapping ?? null;
}

/** Newest first. A storage that is full or blocked costs a choice made again, nothing else. */
export function keepMapping(storage: Keep, head: RecorderHead, mapping: RecorderMapping): void {
  const others = all(storage).filter(({ headers }) => !isSame(headers, head));
  const kept = [{ headers: head.headers, mapping }, ...others].slice(0, KEPT_AT_MOST);
  try {
    storage.setItem(KEY, JSON.stringify(kept));
  } catch {
    // Said above.
  }
}

function all(storage: Keep): v.InferOutput<typeof keptSchema> {
  try {
    const read = v.safeParse(keptSchema, JSON.parse(storage.getItem(KEY) ?? '[]'));
    return read.success ? read.output : [];
  } catch {
    return [];
  }
}

function isSame(headers: readonly string[], head: RecorderHead): boolean {
  return JSON.stringify(headers) === JSON.stringify(head.headers);
}
