import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { commandOf } from '../../src/desk/commandLine.ts';
import type { Outcome } from '../../src/desk/outcome.ts';
import { run } from '../../src/desk/run.ts';
import type { SourceFault } from '../../src/desk/sources.ts';

export const BUILD = '0.0.0-test';

/** The demonstration flight. */
export const DEMO = readFileSync(join(import.meta.dirname, '../flights/flight-a.jsonl'), 'utf8');

/** What a command line does with these files, given as text, bytes or a fault; no disk and no process. */
export function typed(
  line: string,
  files: Readonly<Record<string, string | Uint8Array | SourceFault>> = {},
): Outcome {
  const command = commandOf(line === '' ? [] : line.split(' '), BUILD);
  const named = 'files' in command ? command.files : [];
  return run(
    command,
    named.map((name) => {
      const content = files[name] ?? { fault: 'missing' };
      return { name, content: typeof content === 'string' ? Buffer.from(content) : content };
    }),
    BUILD,
  );
}
