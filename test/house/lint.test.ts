import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');

/** One seeded fault a file, and the rule that must name it. */
const FAULTS: readonly (readonly [file: string, rule: string, text: string])[] = [
  ['src/record/clock.ts', 'no-restricted-globals', 'export const at = (): number => Date.now();'],
  [
    'src/file/id.ts',
    'no-restricted-globals',
    'export const id = (): string => crypto.randomUUID();',
  ],
  [
    'src/aero/noise.ts',
    'no-restricted-properties',
    'export const noise = (): number => Math.random();',
  ],
  [
    'src/analysis/open.ts',
    'explicit-module-boundary-types',
    'export function open(a: number) { return a; }',
  ],
  [
    'src/journal/shortcut.ts',
    'no-restricted-properties',
    "export const write = (db: Map<string, string> & { put: (s: string) => void }) => db.put('x');",
  ],
  [
    'src/journal/floating.ts',
    'no-floating-promises',
    'const append = () => Promise.resolve();\nexport function tap() {\n  append();\n}',
  ],
  [
    'src/ui/Raw.tsx',
    'no-danger',
    'export const Raw = ({ html }: { html: string }) => <p dangerouslySetInnerHTML={{ __html: html }} />;',
  ],
  ['src/ui/loose.ts', 'no-explicit-any', 'export const loose = (a: any) => a;'],
  [
    'src/ui/sure.ts',
    'no-non-null-assertion',
    'export const sure = (a: string | null) => a!.length;',
  ],
  [
    'src/ui/forgotten.ts',
    'switch-exhaustiveness-check',
    "export function word(a: 'lam' | 'trb') {\n  switch (a) {\n    case 'lam':\n      return 1;\n  }\n  return 2;\n}",
  ],
  ['src/ui/unnamed.ts', 'no-default-export', 'export default 1;'],
  ['src/ui/chatty.ts', 'no-console', "export const chatty = () => console.log('x');"],
];

let house = '';
let found: readonly { readonly filename: string; readonly code: string }[] = [];

beforeAll(() => {
  house = mkdtempSync(join(tmpdir(), 'kneeline-lint-'));
  for (const [file, , text] of FAULTS) {
    mkdirSync(join(house, dirname(file)), { recursive: true });
    writeFileSync(join(house, file), `${text}\n`);
  }
  for (const name of ['tsconfig.json', '.oxlintrc.json']) {
    cpSync(join(ROOT, name), join(house, name));
  }
  symlinkSync(join(ROOT, 'node_modules'), join(house, 'node_modules'));
  const { stdout } = spawnSync(
    process.execPath,
    [join(ROOT, 'node_modules/oxlint/bin/oxlint'), '--type-aware', '--format', 'json', 'src'],
    { cwd: house, encoding: 'utf8' },
  );
  found = JSON.parse(stdout).diagnostics;
}, 60_000);

afterAll(() => rmSync(house, { recursive: true, force: true }));

describe('the lint rules', () => {
  it.each(FAULTS)('find in %s a breach of %s', (file, rule) => {
    const codes = found.filter(({ filename }) => filename === file).map(({ code }) => code);
    expect(codes).toContainEqual(expect.stringContaining(rule));
  });
});
