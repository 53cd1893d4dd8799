import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildId } from '../../.tools/buildId.mjs';
import { precacheFaults } from '../../.tools/precache.mjs';

// SHA-256 of "abc" and of the empty text: FIPS 180-4 example values, published by NIST.
const ABC = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const EMPTY = 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kneeline-build-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const write = (name: string, text: string) => {
  mkdirSync(join(folder, name, '..'), { recursive: true });
  writeFileSync(join(folder, name), text);
};
const worker = (files: Record<string, string>) =>
  `const s=${JSON.stringify(Object.entries(files).map(([url, revision]) => ({ revision, url })))}.map(e=>e);`;

describe('the list of a built worker', () => {
  beforeEach(() => {
    write('index.html', 'abc');
    write('assets/index-a.js', '');
  });

  it('is whole when every file stands on it with the hash of its bytes', () => {
    write('worker.js', worker({ 'index.html': ABC, 'assets/index-a.js': EMPTY }));
    expect(precacheFaults(folder)).toEqual([]);
  });

  it('may be written with bare names and single quotes', () => {
    write(
      'worker.js',
      `[{url:'index.html',revision:'${ABC}'},{url:"assets/index-a.js",revision:"${EMPTY}"}]`,
    );
    expect(precacheFaults(folder)).toEqual([]);
  });

  it('lacks a file', () => {
    write('worker.js', worker({ 'index.html': ABC }));
    expect(precacheFaults(folder)).toEqual(["assets/index-a.js is not on the worker's list"]);
  });

  it('has other bytes', () => {
    write('worker.js', worker({ 'index.html': EMPTY, 'assets/index-a.js': EMPTY }));
    expect(precacheFaults(folder)).toEqual(["index.html differs from the worker's list"]);
  });

  it('names a file that is not there', () => {
    write('worker.js', worker({ 'index.html': ABC, 'assets/index-a.js': EMPTY, 'gone.js': EMPTY }));
    expect(precacheFaults(folder)).toEqual(["gone.js is on the worker's list and was not built"]);
  });

  it('needs a worker', () => {
    expect(precacheFaults(folder)).toEqual(['worker.js was not built']);
  });

  it('is too heavy above 1.5 MB in all', () => {
    write(
      'worker.js',
      worker({ 'index.html': ABC, 'assets/index-a.js': EMPTY }) + ' '.repeat(1_500_000),
    );
    expect(precacheFaults(folder)).toEqual([
      expect.stringMatching(/^the build must be at most 1500000 bytes, is 1500\d{3}$/),
    ]);
  });
});

describe('the build id', () => {
  beforeEach(() => {
    write('package.json', '{"version":"1.2.3"}');
    write('package-lock.json', '{}');
    write('vite.config.ts', '');
    write('src/main.tsx', 'a');
    write('public/icon.svg', 'b');
  });

  it('is the version and a digest', () => {
    expect(buildId(folder)).toMatch(/^1\.2\.3-[0-9a-f]{10}$/);
  });

  it('is the same for the same files, whenever they were written', () => {
    const before = buildId(folder);
    utimesSync(join(folder, 'src/main.tsx'), 0, 0);
    expect(buildId(folder)).toBe(before);
  });

  it.each([
    ['a source changes', 'src/main.tsx', 'A'],
    ['a file is added', 'src/record/entry.ts', ''],
    ['a packed library changes', 'package-lock.json', '{ }'],
    ['an icon changes', 'public/icon.svg', 'B'],
  ])('is another when %s', (_, name, text) => {
    const before = buildId(folder);
    write(name, text);
    expect(buildId(folder)).not.toBe(before);
  });

  it('tells files apart that hold the same text between them', () => {
    write('src/a.ts', 'xy');
    write('src/b.ts', 'z');
    const before = buildId(folder);
    write('src/a.ts', 'x');
    write('src/b.ts', 'yz');
    expect(buildId(folder)).not.toBe(before);
  });
});
