// Makes sure that dist/ and the command line are the build of the files as they are now.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildId } from './buildId.mjs';
import { isDeskBuilt } from './desk.mjs';
import { precacheFaults } from './precache.mjs';

const ROOT = join(import.meta.dirname, '..');
export const DIST = join(ROOT, 'dist');

/** The build id that a built page carries, or null where there is no such page. */
function builtId() {
  try {
    const page = readFileSync(join(DIST, 'index.html'), 'utf8');
    return /<meta name="build" content="([^"]+)"/.exec(page)?.[1] ?? null;
  } catch {
    return null;
  }
}

/** Whether dist/ is the whole build of the present sources, told by content and not by file times. */
function isBuilt() {
  return builtId() === buildId(ROOT) && precacheFaults(DIST).length === 0;
}

/**
 * Builds unless that is done already.
 * @returns {boolean} false when the build failed; it has said why
 */
export function ensureBuilt() {
  return ensureAppBuilt() && ensureDeskBuilt();
}

function ensureAppBuilt() {
  if (isBuilt()) return true;
  const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
  const { VITEST: _insideTests, ...env } = process.env;
  const { status, stdout, stderr } = spawnSync(process.execPath, [vite, 'build'], {
    cwd: ROOT,
    env: { ...env, NODE_ENV: 'production' },
    encoding: 'utf8',
  });
  const faults = status === 0 ? precacheFaults(DIST) : [];
  if (status === 0 && faults.length === 0) return true;
  console.error([stdout, stderr, ...faults].join('\n'));
  return false;
}

function ensureDeskBuilt() {
  if (isDeskBuilt()) return true;
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(import.meta.dirname, 'desk.mjs')],
    { cwd: ROOT, encoding: 'utf8' },
  );
  if (status === 0) return true;
  console.error([stdout, stderr].join('\n'));
  return false;
}
