// Builds the command line: src/desk with all that it needs in one file that Node runs as it is, apart from the app that
// is served. The file says in its second line what it was made from.
import { createHash } from 'node:crypto';
import { chmodSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildId } from './buildId.mjs';

const ROOT = join(import.meta.dirname, '..');
const FOLDER = join(ROOT, 'dist-desk');
export const DESK = join(FOLDER, 'kneeline.mjs');

/** Second line of the file that present sources and this script make. */
function mark() {
  const self = createHash('sha256').update(readFileSync(fileURLToPath(import.meta.url)));
  return `// ${buildId(ROOT)} ${self.digest('hex').slice(0, 10)}`;
}

/** Whether the command line stands as the present sources make it, told by content and not by file times. */
export function isDeskBuilt() {
  try {
    return readFileSync(DESK, 'utf8').split('\n', 2)[1] === mark();
  } catch {
    return false;
  }
}

/** @throws what the builder says when the sources cannot be built */
async function buildDesk() {
  // Loaded late: this file is also read by scripts that run before anything is installed.
  const { build } = await import('vite');
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    define: { __BUILD_ID__: JSON.stringify(buildId(ROOT)) },
    ssr: { noExternal: true },
    build: {
      ssr: 'src/desk/main.ts',
      outDir: FOLDER,
      emptyOutDir: true,
      target: 'node20.19',
      minify: false,
      rolldownOptions: {
        output: {
          entryFileNames: 'kneeline.mjs',
          codeSplitting: false,
          banner: `#!/usr/bin/env node\n${mark()}`,
        },
      },
    },
  });
  chmodSync(DESK, 0o755);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildDesk();
