import { parseArgs, type ParseArgsConfig } from 'node:util';
import { helpOf, USAGE, VERBS, type Verb } from './usage.ts';

/** What was asked for on the command line. */
export type Command =
  | { readonly verb: 'check'; readonly files: readonly string[] }
  | {
      readonly verb: 'merge';
      readonly files: readonly string[];
      readonly out: string;
      readonly force: boolean;
    }
  | { readonly verb: 'results'; readonly files: readonly string[]; readonly json: boolean }
  | {
      readonly verb: 'tables';
      readonly files: readonly string[];
      readonly into: string;
      readonly force: boolean;
    }
  | { readonly verb: 'say'; readonly text: string }
  | { readonly verb: 'wrong'; readonly because: string };

const OPTIONS = {
  check: {},
  merge: { out: { type: 'string' }, force: { type: 'boolean' } },
  results: { json: { type: 'boolean' } },
  tables: { into: { type: 'string' }, force: { type: 'boolean' } },
} as const satisfies Readonly<Record<Verb, ParseArgsConfig['options']>>;

/** @param build what `--version` names */
export function commandOf(args: readonly string[], build: string): Command {
  const [first, ...rest] = args;
  if (first === undefined) return wrong('Say what to do.');
  if (first === '--help' || first === '-h' || first === 'help') {
    const verb = VERBS.find((known) => known === rest[0]);
    return { verb: 'say', text: verb === undefined ? USAGE : helpOf(verb) };
  }
  if (first === '--version') return { verb: 'say', text: `kneeline ${build}\n` };
  const verb = VERBS.find((known) => known === first);
  if (verb === undefined) return wrong(`There is no verb ${first}.`);
  try {
    return asked(verb, rest);
  } catch (error) {
    // parseArgs throws for the user's mistakes, with a sentence that names the option.
    return wrong(error instanceof Error ? firstSentence(error.message) : String(error), verb);
  }
}

function asked(verb: Verb, args: readonly string[]): Command {
  const { values, positionals: files } = parseArgs({
    args: [...args],
    options: { ...OPTIONS[verb], help: { type: 'boolean', short: 'h' } },
    allowPositionals: true,
  });
  const flags: Readonly<Record<string, unknown>> = values;
  if (flags['help'] === true) return { verb: 'say', text: helpOf(verb) };
  if (files.length === 0) return wrong('Name at least one file.', verb);
  if (files.filter((file) => file === '-').length > 1) {
    return wrong('Standard input can be read once; - stands there twice.', verb);
  }
  const force = flags['force'] === true;
  switch (verb) {
    case 'check':
      return { verb, files };
    case 'results':
      return { verb, files, json: flags['json'] === true };
    case 'merge': {
      const { out } = flags;
      return typeof out === 'string' && out !== ''
        ? { verb, files, out, force }
        : wrong('Say where the merged file goes: --out FILE.', verb);
    }
    case 'tables': {
      const { into } = flags;
      return typeof into === 'string' && into !== ''
        ? { verb, files, into, force }
        : wrong('Say where the tables go: --into FOLDER.', verb);
    }
  }
}

function wrong(because: string, verb?: Verb): Command {
  const help = verb === undefined ? 'kneeline --help' : `kneeline ${verb} --help`;
  return { verb: 'wrong', because: `${because} See: ${help}` };
}

function firstSentence(message: string): string {
  return `${message.split(/\.\s/)[0]?.replace(/\.$/, '') ?? message}.`;
}
