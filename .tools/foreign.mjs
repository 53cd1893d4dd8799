// Reads the files of a hand-over with programs that nobody here wrote. Says which are missing instead of passing without.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..');
const NEEDED = {
  'python3-pandas': ['/usr/bin/python3', '-c', 'import pandas'],
  'libreoffice-calc': ['soffice', '--version'],
  'gdal-bin': ['ogrinfo', '--version'],
  jq: ['jq', '--version'],
};

const missing = Object.entries(NEEDED).flatMap(([name, [program = '', ...args]]) =>
  spawnSync(program, args).status === 0 ? [] : [name],
);
if (missing.length > 0) {
  process.stderr.write(`Missing. On Debian: apt-get install ${missing.join(' ')}\n`);
  process.exitCode = 1;
} else {
  const { status } = spawnSync(
    process.execPath,
    [join(ROOT, 'node_modules/vitest/vitest.mjs'), 'run', '--project', 'foreign'],
    { cwd: ROOT, stdio: 'inherit' },
  );
  process.exitCode = status ?? 1;
}
