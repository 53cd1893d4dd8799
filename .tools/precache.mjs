// Checks that a built app can start with no network: every file is on the worker's list with the hash of its bytes.
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The worker is fetched by the browser itself and is the one file that cannot hold its own hash. */
const WORKER = 'worker.js';

/** A tablet may fetch the app over a slow link on a ramp. */
const LARGEST_BUILD_BYTES = 1_500_000;

/**
 * SHA-256 of bytes, in hex.
 * @param {import('node:crypto').BinaryLike} bytes
 */
export function sha256Hex(bytes) {
  return createHash('sha256').update(bytes).digest('hex');
}

/**
 * The files of a build as the worker lists them.
 * @param {string} worker text of the built worker
 * @returns {Map<string, string>} hash by address
 */
function listedFiles(worker) {
  const pair = /["']?(url|revision)["']?:\s*["'`]([^"'`]*)["'`]/;
  const listed = new Map();
  for (const [record] of worker.matchAll(/\{[^{}]*\brevision\b[^{}]*\}/g)) {
    const fields = Object.fromEntries(
      record.split(',').flatMap((part) => {
        const found = pair.exec(part);
        return found ? [[found[1], found[2]]] : [];
      }),
    );
    if (fields.url !== undefined) listed.set(fields.url, fields.revision ?? '');
  }
  return listed;
}

/**
 * What keeps a build from starting offline, in words; an empty list when nothing does.
 * @param {string} folder the built app
 * @returns {string[]}
 */
export function precacheFaults(folder) {
  const built = readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'));
  if (!built.includes(WORKER)) return [`${WORKER} was not built`];
  const listed = listedFiles(readFileSync(join(folder, WORKER), 'utf8'));
  const faults = [];
  let totalBytes = 0;
  for (const file of built) {
    const bytes = readFileSync(join(folder, file));
    totalBytes += bytes.length;
    if (file === WORKER) continue;
    const revision = listed.get(file);
    if (revision === undefined) faults.push(`${file} is not on the worker's list`);
    else if (revision !== sha256Hex(bytes)) faults.push(`${file} differs from the worker's list`);
  }
  for (const file of listed.keys()) {
    if (!built.includes(file)) faults.push(`${file} is on the worker's list and was not built`);
  }
  if (totalBytes > LARGEST_BUILD_BYTES) {
    faults.push(`the build must be at most ${LARGEST_BUILD_BYTES} bytes, is ${totalBytes}`);
  }
  return faults;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const faults = precacheFaults(join(import.meta.dirname, '../dist'));
  for (const fault of faults) console.error(fault);
  if (faults.length > 0) process.exit(1);
  console.log('Every built file is on the list of the worker.');
}
