import { utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalJson } from './canonical.ts';
import { hashBytes } from './chain.ts';
import type { Entry } from './entry.ts';
import { entryFrom, type EntryFault } from './envelope.ts';
import { bad, type Result } from './result.ts';

export const LINE_LIMIT_BYTES = 65_536;
export const DEPTH_LIMIT = 12;

const FORBIDDEN_KEYS = ['__proto__', 'constructor', 'prototype'] as const;

/**
 * The only way into the record, for files and for the database alike. A line is an entry when it is exactly what the
 * record would have written: one canonical JSON object of a known envelope whose body fits its kind.
 */
export function parseEntry(line: string): Result<Entry, EntryFault> {
  // A text longer in code units than the limit is longer in bytes too; do not encode a huge one to learn that.
  if (line.length > LINE_LIMIT_BYTES) {
    return bad({ reason: 'tooLong', bytes: line.length, limitBytes: LINE_LIMIT_BYTES });
  }
  const bytes = utf8ToBytes(line);
  if (bytes.length > LINE_LIMIT_BYTES) {
    return bad({ reason: 'tooLong', bytes: bytes.length, limitBytes: LINE_LIMIT_BYTES });
  }
  if (deeperThan(line, DEPTH_LIMIT)) {
    return bad({ reason: 'tooDeep', limit: DEPTH_LIMIT });
  }
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    return bad({ reason: 'notJson' });
  }
  const rewritten = rewrite(value);
  if (rewritten !== line) {
    return bad({ reason: 'notCanonical', at: firstDifference(line, rewritten) });
  }
  const forbidden = FORBIDDEN_KEYS.find((key) => line.includes(`"${key}":`));
  if (forbidden !== undefined) {
    return bad({ reason: 'forbiddenKey', key: forbidden });
  }
  return entryFrom(value, line, hashBytes(bytes));
}

/** Canonical text of what was read; empty when it has none (a lone surrogate written as an escape). */
function rewrite(value: unknown): string {
  try {
    return canonicalJson(value);
  } catch {
    return '';
  }
}

function firstDifference(a: string, b: string): number {
  let at = 0;
  while (at < a.length && a[at] === b[at]) {
    at += 1;
  }
  return at;
}

/** Counts brackets outside strings before anything is parsed: a deep file must not reach the stack. */
function deeperThan(line: string, limit: number): boolean {
  let depth = 0;
  let inString = false;
  for (let at = 0; at < line.length; at += 1) {
    const char = line[at];
    if (inString) {
      if (char === '\\') {
        at += 1;
      } else if (char === '"') {
        inString = false;
      }
    } else if (char === '"') {
      inString = true;
    } else if (char === '{' || char === '[') {
      depth += 1;
      if (depth > limit) {
        return true;
      }
    } else if (char === '}' || char === ']') {
      depth -= 1;
    }
  }
  return false;
}
