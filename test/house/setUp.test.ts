import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { countTests } from '../../.tools/counts.mjs';
import { isInstalled, isNodeRecentEnough } from '../../.tools/install.mjs';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kneeline-set-up-'));
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

describe('what is installed', () => {
  const one = { version: '1.0.0', integrity: 'sha512-a' };
  const other = { version: '2.0.0', integrity: 'sha512-b', optional: true };
  const asked = { packages: { '': {}, 'node_modules/one': one, 'node_modules/other': other } };

  it.each([
    ['as locked', { 'node_modules/one': one, 'node_modules/other': other }, true],
    ['without what is for other machines', { 'node_modules/one': one }, true],
    ['without a package', { 'node_modules/other': other }, false],
    ['with another version', { 'node_modules/one': { ...one, version: '1.0.1' } }, false],
    ['with other bytes', { 'node_modules/one': { ...one, integrity: 'sha512-c' } }, false],
    ['with a package too many', { 'node_modules/one': one, 'node_modules/more': one }, false],
    ['nothing at all', {}, false],
  ])('is checked: %s', (_, packages, expected) => {
    expect(isInstalled(asked, { packages })).toBe(expected);
  });

  it('is nothing where there is no folder', () => {
    expect(isInstalled(asked, {})).toBe(false);
  });
});

describe('Node', () => {
  it.each([
    ['18.20.0', false],
    ['20.18.3', false],
    ['20.19.0', true],
    ['20.20.2', true],
    ['22.0.0', true],
  ])('%s is recent enough: %s', (version, expected) => {
    expect(isNodeRecentEnough(version)).toBe(expected);
  });
});

describe('the browser', () => {
  const program = (name: string) => {
    const path = join(folder, name);
    writeFileSync(path, '');
    chmodSync(path, 0o755);
    return path;
  };

  beforeEach(() => {
    vi.stubEnv('PLAYWRIGHT_BROWSERS_PATH', join(folder, 'none'));
    vi.stubEnv('PATH', folder);
  });

  it('is the one that CHROME_PATH names', () => {
    program('chromium');
    const chosen = program('my-browser');
    vi.stubEnv('CHROME_PATH', chosen);
    expect(findBrowser()).toBe(chosen);
  });

  it('is none when CHROME_PATH is wrong, even if there is another', () => {
    program('chromium');
    vi.stubEnv('CHROME_PATH', join(folder, 'gone'));
    expect(findBrowser()).toBeNull();
  });

  it('is found on the path', () => {
    vi.stubEnv('CHROME_PATH', '');
    const chromium = program('chromium');
    program('microsoft-edge');
    expect(findBrowser()).toBe(chromium);
  });
});

describe('the closing count', () => {
  const report = (fields: object) => {
    const file = join(folder, 'report.json');
    const empty = { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0 };
    writeFileSync(file, JSON.stringify({ ...empty, testResults: [], ...fields }));
    return file;
  };

  it.each([
    ['all well', { numPassedTests: 5 }, 0, { passed: 5, failed: 0 }],
    ['a failure', { numPassedTests: 5, numFailedTests: 2 }, 1, { passed: 5, failed: 2 }],
    ['a skipped test', { numPassedTests: 5, numPendingTests: 1 }, 0, { passed: 5, failed: 1 }],
    [
      'a file that did not load',
      { numPassedTests: 5, testResults: [{ status: 'failed', assertionResults: [] }] },
      1,
      { passed: 5, failed: 1 },
    ],
    ['an error outside of any test', { numPassedTests: 5 }, 1, { passed: 5, failed: 1 }],
    ['no test at all', {}, 0, { passed: 0, failed: 1 }],
  ])('of a run with %s', (_, fields, status, expected) => {
    expect(countTests(report(fields), status)).toEqual(expected);
  });

  it('of a run that left no report', () => {
    expect(countTests(join(folder, 'gone.json'), 1)).toEqual({ passed: 0, failed: 1 });
  });
});
