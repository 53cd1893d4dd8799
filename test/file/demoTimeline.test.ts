import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { readTimeline } from '../../src/file/readTimeline.ts';
import { demoTimeline } from '../flights/demoTimeline.ts';

const packed = readFileSync(join(import.meta.dirname, '../../public/demo/flight-a.packed'));
const shipped = gunzipSync(packed).toString('utf8');
const plain = readFileSync(join(import.meta.dirname, '../flights/flight-a.jsonl'), 'utf8');

describe('the demo flight that the app ships', () => {
  it('is what its input script says; `npm run demo` writes it anew', () => {
    expect(shipped).toBe(demoTimeline());
    expect(plain).toBe(shipped);
  });

  it('reads without a finding and never passes as a real flight', () => {
    const reading = readTimeline(shipped, shipped.length);
    expect(reading).toMatchObject({
      kind: 'read',
      refused: [],
      findings: [],
      header: { nature: 'demo' },
    });
  });
});
