// `npm run demo`: writes the demo flight that the app ships, from its input script.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runnerImport } from 'vite';

const ROOT = join(import.meta.dirname, '..');
const { module } = await runnerImport('/test/flights/demoTimeline.ts', {
  root: ROOT,
  configFile: false,
  logLevel: 'error',
});
const folder = join(ROOT, 'public', 'demo');
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, 'flight-a.jsonl'), module.demoTimeline());
