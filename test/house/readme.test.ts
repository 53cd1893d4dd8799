import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const readme = readFileSync(join(ROOT, 'README.md'), 'utf8');
const demo = readFileSync(join(ROOT, 'test/flights/flight-a.jsonl'), 'utf8');
const scratch = mkdtempSync(join(tmpdir(), 'kneeline-readme-'));
const script = join(scratch, 'verify.mjs');
const file = join(scratch, 'flight.jsonl');

afterAll(() => rmSync(scratch, { recursive: true }));

function verify(text: string): string {
  writeFileSync(script, /```js\n([\s\S]*?)```/.exec(readme)?.[1] ?? '');
  writeFileSync(file, text);
  return execFileSync(process.execPath, [script, file], { encoding: 'utf8', stdio: 'pipe' });
}

describe('the lines of code in the README', () => {
  it('verify the chain of the demo flight', () => {
    const entries = demo.trimEnd().split('\n').length - 2;
    expect(verify(demo)).toContain(`${entries} entries`);
  });

  it('find an edited digit', () => {
    expect(() => verify(demo.replace('"value":910', '"value":810'))).toThrow('chain broken');
  });
});
