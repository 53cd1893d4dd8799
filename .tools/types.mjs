// Checks types room by room: what a pure room may not have, its settings do not know.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..');
const TSC = join(ROOT, 'node_modules/typescript/bin/tsc');
const PROJECTS = [
  '.',
  ...['aero', 'record', 'analysis', 'file', 'handover', 'sw', 'desk'].map((room) => `src/${room}`),
  'test',
];

let failed = 0;
for (const project of PROJECTS) {
  if (project === 'src/desk' && !existsSync(join(ROOT, project))) continue;
  const { status } = spawnSync(process.execPath, [TSC, '--noEmit', '-p', project], {
    cwd: ROOT,
    stdio: 'inherit',
  });
  if (status !== 0) failed += 1;
}
process.exitCode = failed === 0 ? 0 : 1;
