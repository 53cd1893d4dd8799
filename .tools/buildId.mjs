// The build id: what was built, told by its content alone. No clock and no version control, so two builds of the
// same files carry the same id wherever they are made.
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

const ROOT = join(import.meta.dirname, '..');

/**
 * Every file under a folder, in one order on every machine.
 * @param {string} folder
 * @returns {string[]}
 */
function filesUnder(folder) {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/**
 * Version and a digest of everything that a build reads.
 * @param {string} [root] the repository; another folder in tests
 * @returns {string} for example 0.1.0-3fa9c1d2e0
 */
export function buildId(root = ROOT) {
  const files = [
    ...['package.json', 'package-lock.json', 'vite.config.ts'].map((name) => join(root, name)),
    ...filesUnder(join(root, 'src')),
    ...filesUnder(join(root, 'public')),
  ];
  const digest = createHash('sha256');
  for (const file of files) {
    const bytes = readFileSync(file);
    digest.update(`${relative(root, file).split(sep).join('/')}\0${bytes.length}\0`).update(bytes);
  }
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  return `${version}-${digest.digest('hex').slice(0, 10)}`;
}
