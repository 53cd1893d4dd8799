// `npm test`: every check there is, in order, and one closing line. A static check counts as one test.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { countTests } from './counts.mjs';

const ROOT = join(import.meta.dirname, '..');
const BIN = join(ROOT, 'node_modules');

/** Checks of the text alone, quickest first. */
const STATIC = [
  { name: 'format', args: ['prettier/bin/prettier.cjs', '--check', '.'] },
  { name: 'lint', args: ['oxlint/bin/oxlint', '--type-aware', '--deny-warnings'] },
  {
    name: 'walls',
    args: [
      'dependency-cruiser/bin/dependency-cruise.mjs',
      'src',
      '--config',
      '.dependency-cruiser.mjs',
    ],
  },
  { name: 'dead code', args: ['knip/bin/knip.js'] },
  { name: 'types', args: ['../.tools/types.mjs'] },
];

/** The build stands before the journeys, which drive what it wrote. */
const BUILD = [
  { name: 'build', args: ['vite/bin/vite.js', 'build'] },
  { name: 'starts offline', args: ['../.tools/precache.mjs'] },
  { name: 'command line', args: ['../.tools/desk.mjs'] },
];

const scratch = mkdtempSync(join(tmpdir(), 'kneeline-check-'));
let passed = 0;
let failed = 0;

/** @param {{ name: string, args: string[] }} step */
function runOnce({ name, args: [program = '', ...args] }) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(BIN, program), ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  if (status === 0) {
    passed += 1;
    console.log(`${name}: passed`);
  } else {
    failed += 1;
    console.log(`${stdout}${stderr}\n${name}: failed`);
  }
}

/**
 * @param {string} name
 * @param {string[]} projects
 */
function runTests(name, projects) {
  const report = join(scratch, `${projects.join('-')}.json`);
  const { status } = spawnSync(
    process.execPath,
    [
      join(BIN, 'vitest/vitest.mjs'),
      'run',
      ...projects.flatMap((project) => ['--project', project]),
      '--reporter=default',
      '--reporter=./test/browser/requirements/tableReporter.ts',
      '--reporter=json',
      `--outputFile.json=${report}`,
    ],
    { cwd: ROOT, stdio: ['ignore', 'inherit', 'inherit'] },
  );
  const counts = countTests(report, status);
  passed += counts.passed;
  failed += counts.failed;
  console.log(`${name}: ${counts.passed} passed, ${counts.failed} failed`);
}

STATIC.forEach(runOnce);
runTests('unit and component tests', ['pure', 'screens', 'journal', 'journal-browser']);
BUILD.forEach(runOnce);
runTests('journeys', ['journeys']);

rmSync(scratch, { recursive: true, force: true });
process.exitCode = failed === 0 ? 0 : 1;
console.log(`${passed} passed, ${failed} failed`);
