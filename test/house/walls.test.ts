import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');

/** A small house with one breach of each wall. The comment of a wall says what is wrong with it. */
const SOURCES: Record<string, string> = {
  'src/aero/upward.ts': `import type { Entry } from '../record/entry.ts';\nexport type A = Entry;`,
  'src/record/entry.ts': `export interface Entry { readonly kind: string }`,
  'src/record/meaning.ts': `import { worth } from '../analysis/worth.ts';\nexport const kind = worth;`,
  'src/analysis/stored.ts': `import type { Journal } from '../journal/journal.ts';\nexport type A = Journal;`,
  'src/file/meaning.ts': `import { worth } from '../analysis/worth.ts';\nexport const cell = worth;`,
  'src/analysis/worth.ts': `export const worth = 1;`,
  'src/journal/journal.ts': `import type { Entry } from '../record/entry.ts';\nexport interface Journal { readonly entries: () => readonly Entry[] }`,
  'src/journal/idbJournal.ts': `import { openDB } from 'idb';\nexport const open = openDB;`,
  'src/journal/meaning.ts': `import { worth } from '../analysis/worth.ts';\nexport const kept = worth;`,
  'src/copies/drawn.ts': `import { shared } from '../ui/kit/shared.ts';\nexport const copy = shared;`,
  'src/handover/drawn.ts': `import { shared } from '../ui/kit/shared.ts';\nexport const file = shared;`,
  'src/ui/kit/shared.ts': `export const shared = 1;`,
  'src/ui/fly/stored.ts': `import { open } from '../../journal/idbJournal.ts';\nexport const screen = open;`,
  'src/ui/fly/direct.ts': `import { openDB } from 'idb';\nexport const screen = openDB;`,
  'src/ui/fly/next.ts': `import { page } from '../debrief/page.ts';\nexport const next = page;`,
  'src/ui/debrief/page.ts': `import { shared } from '../kit/shared.ts';\nexport const page = shared;`,
  'src/ui/kit/first.ts': `import { second } from './second.ts';\nexport const first = (): unknown => second;`,
  'src/ui/kit/second.ts': `import { first } from './first.ts';\nexport const second = (): unknown => first;`,
  'src/ui/kit/top.ts': `import { app } from '../../main.tsx';\nexport const top = app;`,
  'src/ui/kit/lost.ts': `import { gone } from './gone.ts';\nexport const lost = gone;`,
  'src/ui/kit/tool.ts': `import fc from 'fast-check';\nexport const tool = fc;`,
  'src/ui/kit/sample.ts': `import { sample } from '../../../test/sample.ts';\nexport const tested = sample;`,
  'src/desk/screen.ts': `import fs from 'node:fs';\nimport { shared } from '../ui/kit/shared.ts';\nexport const desk = [fs, shared];`,
  'src/sw/reach.ts': `import { worth } from '../analysis/worth.ts';\nexport const reach = worth;`,
  'src/main.tsx': `import { open } from './journal/idbJournal.ts';\nimport { page } from './ui/debrief/page.ts';\nexport const app = [open, page];`,
  'test/sample.ts': `export const sample = 1;`,
};

/** Wall, the file that breaks it, and what that file reaches for. */
const BREACHES = [
  ['aero-reaches-only-its-own', 'src/aero/upward.ts', 'src/record/entry.ts'],
  ['record-reaches-only-its-own', 'src/record/meaning.ts', 'src/analysis/worth.ts'],
  ['analysis-reaches-only-its-own', 'src/analysis/stored.ts', 'src/journal/journal.ts'],
  ['file-reaches-only-its-own', 'src/file/meaning.ts', 'src/analysis/worth.ts'],
  ['journal-reaches-only-its-own', 'src/journal/meaning.ts', 'src/analysis/worth.ts'],
  ['handover-reaches-only-its-own', 'src/handover/drawn.ts', 'src/ui/kit/shared.ts'],
  ['copies-reaches-only-its-own', 'src/copies/drawn.ts', 'src/ui/kit/shared.ts'],
  ['ui-reaches-only-its-own', 'src/ui/fly/stored.ts', 'src/journal/idbJournal.ts'],
  ['ui-reaches-only-its-own', 'src/ui/fly/direct.ts', 'idb'],
  ['desk-reaches-only-its-own', 'src/desk/screen.ts', 'src/ui/kit/shared.ts'],
  ['sw-reaches-only-its-own', 'src/sw/reach.ts', 'src/analysis/worth.ts'],
  ['phases-stay-apart', 'src/ui/fly/next.ts', 'src/ui/debrief/page.ts'],
  ['nobody-imports-main', 'src/ui/kit/top.ts', 'src/main.tsx'],
  ['source-never-needs-tests', 'src/ui/kit/sample.ts', 'test/sample.ts'],
  ['no-cycles', 'src/ui/kit/first.ts', 'src/ui/kit/second.ts'],
  ['everything-is-found', 'src/ui/kit/lost.ts', './gone.ts'],
  ['no-packages-of-the-workshop', 'src/ui/kit/tool.ts', 'fast-check'],
] as const;

interface Violation {
  readonly from: string;
  readonly to: string;
  readonly rule: { readonly name: string };
}

let house = '';
let violations: readonly Violation[] = [];

beforeAll(() => {
  house = mkdtempSync(join(tmpdir(), 'kneeline-walls-'));
  for (const [file, text] of Object.entries(SOURCES)) {
    mkdirSync(join(house, dirname(file)), { recursive: true });
    writeFileSync(join(house, file), `${text}\n`);
  }
  for (const name of ['package.json', 'tsconfig.json', '.dependency-cruiser.mjs']) {
    cpSync(join(ROOT, name), join(house, name));
  }
  symlinkSync(join(ROOT, 'node_modules'), join(house, 'node_modules'));
  const { stdout } = spawnSync(
    process.execPath,
    [
      join(ROOT, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs'),
      'src',
      '--config',
      '.dependency-cruiser.mjs',
      '--output-type',
      'json',
    ],
    { cwd: house, encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 },
  );
  violations = JSON.parse(stdout).summary.violations;
}, 60_000);

afterAll(() => rmSync(house, { recursive: true, force: true }));

describe('the walls of the house', () => {
  it.each(BREACHES)('%s stops %s from reaching %s', (wall, from, to) => {
    const found = violations.filter((breach) => breach.rule.name === wall && breach.from === from);
    expect(found.map((breach) => breach.to)).toContainEqual(expect.stringContaining(to));
  });

  it.each([
    ['src/main.tsx', 'joins the rooms'],
    ['src/journal/idbJournal.ts', 'is the one place for its library'],
    ['src/ui/debrief/page.ts', 'takes what two phases share from the kit'],
  ])('lets %s through: it %s', (from) => {
    expect(
      violations.filter((breach) => breach.from === from && breach.rule.name !== 'no-cycles'),
    ).toEqual([]);
  });

  it('lets the command line use files', () => {
    const reached = violations.filter((breach) => breach.from === 'src/desk/screen.ts');
    expect(reached.map((breach) => breach.to)).toEqual(['src/ui/kit/shared.ts']);
  });
});
