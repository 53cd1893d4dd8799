// Runs before `npm start` and `npm test`: installs what is missing, so that one command does everything on a fresh
// machine. Node built-ins only, and plain enough for an old Node to reach the message about its age.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { isInstalled, isNodeRecentEnough } from './install.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

/** @param {string} name */
function readLock(name) {
  try {
    return JSON.parse(readFileSync(root + name, 'utf8'));
  } catch {
    return {};
  }
}

function install() {
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  // npm names itself to its scripts; outside of npm the one on the path has to do.
  const npm = process.env['npm_execpath'];
  const { status } = npm
    ? spawnSync(process.execPath, [npm, ...args], { cwd: root, stdio: 'inherit' })
    : spawnSync('npm', args, {
        cwd: root,
        stdio: 'inherit',
        shell: process.platform === 'win32',
      });
  return status === 0;
}

async function ensure() {
  if (!isNodeRecentEnough(process.versions.node)) {
    console.error(`Kneeline needs Node 20.19 or newer; this is ${process.versions.node}.`);
    return false;
  }
  const locked = readLock('package-lock.json');
  if (!isInstalled(locked, readLock('node_modules/.package-lock.json')) && !install()) {
    console.error('The packages could not be installed; npm says why above.');
    return false;
  }
  if (!process.argv.includes('--browser')) return true;
  const { ensureBrowser } = await import('./browser.mjs');
  return ensureBrowser() !== null;
}

if (!(await ensure())) process.exitCode = 1;
