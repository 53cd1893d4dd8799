import { describe, expect, it } from 'vitest';
import { VERBS } from '../../src/desk/usage.ts';
import { BUILD, typed } from './typed.ts';

describe('the command line', () => {
  it('says how it is used, on standard output', () => {
    for (const asked of ['--help', '-h', 'help']) {
      const { code, out, err } = typed(asked);
      expect(code).toBe(0);
      expect(err).toBe('');
      for (const verb of VERBS) expect(out).toContain(`kneeline ${verb} FILE...`);
    }
  });

  it.each(VERBS)('says more about %s, asked either way', (verb) => {
    const { code, out } = typed(`${verb} --help`);
    expect(code).toBe(0);
    expect(out).toMatch(new RegExp(`^kneeline ${verb} FILE`));
    expect(out).toContain('Exit codes:');
    expect(typed(`help ${verb}`).out).toBe(out);
  });

  it('names its build', () => {
    expect(typed('--version')).toMatchObject({ code: 0, out: `kneeline ${BUILD}\n` });
  });

  it('defers to the operator before anything else', () => {
    expect(typed('--help').out).toContain("the operator's approval and the test safety plan");
  });

  it.each([
    ['', 'Say what to do. See: kneeline --help'],
    ['erase a.jsonl', 'There is no verb erase. See: kneeline --help'],
    ['check', 'Name at least one file. See: kneeline check --help'],
    ['check --json a.jsonl', "Unknown option '--json'"],
    ['results --json=yes a.jsonl', "Option '--json' does not take an argument"],
    ['merge a.jsonl b.jsonl', 'Say where the merged file goes: --out FILE.'],
    ['merge a.jsonl --out', "Option '--out <value>' argument missing"],
    ['merge a.jsonl --out=', 'Say where the merged file goes: --out FILE.'],
    ['tables a.jsonl', 'Say where the tables go: --into FOLDER.'],
    ['check - -', 'Standard input can be read once; - stands there twice.'],
  ])('refuses “%s” in words, on standard error, with code 2', (line, words) => {
    const { code, out, err, files } = typed(line);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(words);
    expect(err.trimEnd()).not.toContain('\n');
    expect(files).toEqual([]);
  });

  it('takes a file whose name looks like an option after --', () => {
    expect(typed('check -- --help').err).toContain('--help: there is no such file.');
  });
});
