import * as v from 'valibot';
import { useCallback, useState } from 'react';

/**
 * Half-done work on the ground (a form, a place, a number that is not one yet) that has to survive a reload. It is no
 * part of the record, so the browser's small storage does; a refused write costs the memory and nothing else.
 */
export function useKept<Schema extends v.GenericSchema>(
  key: string,
  schema: Schema,
  first: v.InferOutput<Schema>,
): readonly [
  v.InferOutput<Schema>,
  (change: (now: v.InferOutput<Schema>) => v.InferOutput<Schema>) => void,
] {
  const [held, setHeld] = useState(() => ({ key, value: read(key, schema) ?? first }));
  const value = held.key === key ? held.value : (read(key, schema) ?? first);
  const set = useCallback(
    (change: (now: v.InferOutput<Schema>) => v.InferOutput<Schema>) => {
      const next = change(read(key, schema) ?? first);
      write(key, next);
      setHeld({ key, value: next });
    },
    [key, schema, first],
  );
  return [value, set];
}

const textsSchema = v.record(v.string(), v.string());
const NO_TEXTS: v.InferOutput<typeof textsSchema> = {};

export interface KeptTexts {
  readonly of: (name: string, first?: string) => string;
  readonly put: (name: string, text: string) => void;
  readonly clear: () => void;
}

/** The texts of a form by field name, as typed. */
export function useKeptTexts(key: string): KeptTexts {
  const [texts, set] = useKept(key, textsSchema, NO_TEXTS);
  return {
    of: (name, first = '') => texts[name] ?? first,
    put: (name, text) => set((now) => ({ ...now, [name]: text })),
    clear: () => set(() => NO_TEXTS),
  };
}

const PREFIX = 'kneeline-brief-';

function read<Schema extends v.GenericSchema>(
  key: string,
  schema: Schema,
): v.InferOutput<Schema> | null {
  try {
    const text = sessionStorage.getItem(PREFIX + key);
    const parsed = text === null ? null : v.safeParse(schema, JSON.parse(text));
    return parsed?.success === true ? parsed.output : null;
  } catch {
    return null;
  }
}

function write(key: string, value: unknown): void {
  try {
    sessionStorage.setItem(PREFIX + key, JSON.stringify(value));
  } catch {
    // Full or blocked: what stands on the screen still stands there.
  }
}
