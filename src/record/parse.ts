import { utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalJson } from './canonical.ts';
import { hashBytes } from './chain.ts';
import type { Entry } from './entry.ts';
import { entryFrom, type EntryFault } from './envelope.ts';
import { bad, type Result } from './result.ts';

/** The longest line is a flight sheet: 200 instruments and 500 probes take about 150 KiB. */
export const LINE_LIMIT_BYTES = 262_144;
export const DEPTH_LIMIT = 12;

const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const OPEN_BRACKET = 0x5b;
const CLOSE_BRACKET = 0x5d;
const OPEN_BRACE = 0x7b;
const CLOSE_BRACE = 0x7d;

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
  if (!isCanonical(value, line)) {
    return bad({ reason: 'notCanonical', at: firstDifference(line, rewrite(value)) });
  }
  const forbidden = FORBIDDEN_KEYS.find((key) => line.includes(`"${key}":`));
  if (forbidden !== undefined) {
    return bad({ reason: 'forbiddenKey', key: forbidden });
  }
  return entryFrom(value, line, hashBytes(bytes));
}

/** The same verdict as comparing with `canonicalJson`, without building the text anew key by key. */
function isCanonical(value: unknown, line: string): boolean {
  return JSON.stringify(value) === line && keysAscend(value) && !/\\ud[89a-f]/.test(line);
}

function keysAscend(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) {
    return true;
  }
  if (Array.isArray(value)) {
    return value.every(keysAscend);
  }
  let before = '';
  for (const [key, item] of Object.entries(value)) {
    if (key < before || !keysAscend(item)) {
      return false;
    }
    before = key;
  }
  return true;
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
    const code = line.charCodeAt(at);
    if (code === QUOTE) {
      inString = !inString;
    } else if (inString) {
      at += code === BACKSLASH ? 1 : 0;
    } else if (code === OPEN_BRACE || code === OPEN_BRACKET) {
      depth += 1;
      if (depth > limit) {
        return true;
      }
    } else if (code === CLOSE_BRACE || code === CLOSE_BRACKET) {
      depth -= 1;
    }
  }
  return false;
}
