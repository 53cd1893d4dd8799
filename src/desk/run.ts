import { check } from './check.ts';
import type { Command } from './commandLine.ts';
import { merge } from './merge.ts';
import type { Outcome } from './outcome.ts';
import { printable } from './printable.ts';
import { results } from './results.ts';
import type { Source } from './sources.ts';
import { tables } from './tables.ts';

/** What a command says and wants written, from the files that it names. */
export function run(command: Command, sources: readonly Source[], build: string): Outcome {
  switch (command.verb) {
    case 'check':
      return check(sources);
    case 'merge':
      return merge(sources, command);
    case 'results':
      return results(sources, { json: command.json, build });
    case 'tables':
      return tables(sources, { into: command.into, build });
    case 'say':
      return { code: 0, out: command.text, err: '', files: [] };
    case 'wrong':
      return { code: 2, out: '', err: `${printable(command.because)}\n`, files: [] };
  }
}
