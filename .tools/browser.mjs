// Finds the browser that the tests drive. Node built-ins only: this runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, readdirSync, readFileSync } from 'node:fs';
import { homedir, platform } from 'node:os';
import { delimiter, join } from 'node:path';

/** Switches that every test browser starts with: no sandbox (tests may run as root), no talk to the outside. */
export const BROWSER_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
  'microsoft-edge',
];

const APPLICATIONS = {
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    'C:/Program Files/Google/Chrome/Application/chrome.exe',
    'C:/Program Files (x86)/Microsoft/Edge/Application/msedge.exe',
    'C:/Program Files/Microsoft/Edge/Application/msedge.exe',
  ],
};

/** @param {string} file */
function runnable(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** Full browsers that Playwright itself has installed for this user, newest first. */
function playwrightBrowsers() {
  const home = homedir();
  const usual =
    platform() === 'darwin'
      ? 'Library/Caches'
      : platform() === 'win32'
        ? 'AppData/Local'
        : '.cache';
  const cache = process.env['PLAYWRIGHT_BROWSERS_PATH'] ?? join(home, usual, 'ms-playwright');
  /** @type {string[]} */
  let folders = [];
  try {
    folders = readdirSync(cache).filter((name) => name.startsWith('chromium-'));
  } catch {
    return [];
  }
  const inside = [
    'chrome-linux/chrome',
    'chrome-linux64/chrome',
    'chrome-win/chrome.exe',
    'chrome-mac/Chromium.app/Contents/MacOS/Chromium',
  ];
  return folders
    .sort()
    .reverse()
    .flatMap((folder) => inside.map((file) => join(cache, folder, file)));
}

/**
 * Path of a Chromium, Chrome or Edge on this machine, or null where there is none.
 * CHROME_PATH decides when it is set, even if it is wrong: a silent second choice would hide the mistake.
 * @returns {string | null}
 */
export function findBrowser() {
  const chosen = process.env['CHROME_PATH'];
  if (chosen !== undefined && chosen !== '') return runnable(chosen) ? chosen : null;
  const onPath = NAMES.flatMap((name) =>
    (process.env['PATH'] ?? '').split(delimiter).map((folder) => join(folder, name)),
  );
  const applications = platform() === 'darwin' ? APPLICATIONS.darwin : APPLICATIONS.win32;
  const candidates = [
    ...playwrightBrowsers(),
    ...onPath,
    ...(platform() === 'linux' ? [] : applications),
  ];
  return candidates.find(runnable) ?? null;
}

function isDebian() {
  try {
    return /^ID(_LIKE)?=.*debian/m.test(readFileSync('/etc/os-release', 'utf8'));
  } catch {
    return false;
  }
}

/**
 * A browser path, installing Debian's Chromium where this user may. Null, with one line said, where that cannot be.
 * @returns {string | null}
 */
export function ensureBrowser() {
  const found = findBrowser();
  if (found !== null) return found;
  const chosen = process.env['CHROME_PATH'];
  if (chosen !== undefined && chosen !== '') {
    console.error(`CHROME_PATH names no program that can be run: ${chosen}`);
    return null;
  }
  if (isDebian() && process.getuid?.() === 0) {
    console.log('No browser found; installing chromium for the tests.');
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    for (const args of [['update'], ['install', '-y', 'chromium']]) {
      const { status } = spawnSync('apt-get', args, {
        stdio: ['ignore', 'ignore', 'inherit'],
        env,
      });
      if (status !== 0) break;
    }
    const installed = findBrowser();
    if (installed !== null) return installed;
  }
  console.error(
    'The tests need a browser: install Chromium, Chrome or Edge, or set CHROME_PATH to one.',
  );
  return null;
}
