// `npm run demo`: writes the demo flight from its input script, as a timeline file and packed as the app ships it.
// No name that ends in .gz: some servers would unpack such a file on its way, and its bytes would not be those listed.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { runnerImport } from 'vite';

const ROOT = join(import.meta.dirname, '..');
const { module } = await runnerImport('/test/flights/demoTimeline.ts', {
  root: ROOT,
  configFile: false,
  logLevel: 'error',
});
const folder = join(ROOT, 'public', 'demo');
mkdirSync(folder, { recursive: true });
const text = module.demoTimeline();
writeFileSync(join(ROOT, 'test', 'flights', 'flight-a.jsonl'), text);
writeFileSync(join(folder, 'flight-a.packed'), gzipSync(text, { level: 9 }));
