import { spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DESK } from '../../.tools/desk.mjs';
import { VERBS } from '../../src/desk/usage.ts';
import { FILE_BYTES_MAX } from '../../src/file/limits.ts';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import { smallFlight } from '../file/smallFlight.ts';
import { DEMO } from './typed.ts';

/** The built file, started as a person at a terminal starts it. */

const ROOT = join(import.meta.dirname, '../..');
const README = readFileSync(join(ROOT, 'README.md'), 'utf8');
/** What the built file says that it was made from, in its second line. */
const BUILD_ID = readFileSync(DESK, 'utf8').split('\n', 2)[1]?.split(' ')[1] ?? '';
const sound = writeTimeline(smallFlight());
const part = writeTimeline(smallFlight().slice(0, 3));

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kneeline-desk-'));
  writeFileSync(join(folder, 'a.jsonl'), sound);
  writeFileSync(join(folder, 'b.jsonl'), part);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function kneeline(args: readonly string[], input?: string | Uint8Array) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [DESK, ...args], {
    cwd: folder,
    input,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return { code: status, out: stdout, err: stderr };
}

const inFolder = (name: string) => readFileSync(join(folder, name), 'utf8');

describe('the command line as built', () => {
  it('stands in a file that runs where nothing is installed', () => {
    const copy = join(folder, 'kneeline.mjs');
    writeFileSync(copy, readFileSync(DESK));
    const { status, stdout } = spawnSync(process.execPath, [copy, '--version'], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect({ status, stdout }).toEqual({ status: 0, stdout: `kneeline ${BUILD_ID}\n` });
  });

  it('checks a file, and one from a pipe', () => {
    expect(kneeline(['check', 'a.jsonl'])).toMatchObject({ code: 0, err: '' });
    const { code, out } = kneeline(['check', '-'], sound);
    expect(code).toBe(0);
    expect(out).toMatch(/^standard input: sound\n/);
  });

  it('tells what cannot be read, each in a sentence, with code 3', () => {
    mkdirSync(join(folder, 'logs'));
    writeFileSync(join(folder, 'huge.jsonl'), '');
    truncateSync(join(folder, 'huge.jsonl'), FILE_BYTES_MAX + 1);
    const { code, out, err } = kneeline(['check', 'gone.jsonl', 'logs', 'huge.jsonl', 'a.jsonl']);
    expect(code).toBe(3);
    expect(err).toContain('gone.jsonl: there is no such file.\n');
    expect(err).toContain('logs: this is a folder; name the files in it.\n');
    expect(err).toContain('huge.jsonl: The file has 65 MiB; a timeline file has at most 64 MiB.');
    expect(out).toContain('a.jsonl: sound');
  });

  it('takes too much from a pipe for what it is', () => {
    const { code, err } = kneeline(['check', '-'], Buffer.alloc(FILE_BYTES_MAX + 1, 'x'));
    expect(code).toBe(3);
    expect(err).toContain('a timeline file has at most 64 MiB');
  });

  it('is told from wrong use by code 2', () => {
    expect(kneeline([])).toMatchObject({ code: 2, out: '' });
  });

  it('ends quietly when nobody reads on', async () => {
    const child = spawn(process.execPath, [DESK, 'merge', 'a.jsonl', '--out', '-'], {
      cwd: folder,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    child.stdout.destroy();
    const ended = new Promise((resolve) => child.on('close', resolve));
    expect(await text(child.stderr)).toBe('');
    expect(await ended).toBe(0);
  });
});

describe('results and tables', () => {
  it('are printed as a page and as JSON that a pipe can read', () => {
    const page = kneeline(['results', '-'], DEMO);
    expect(page).toMatchObject({ code: 0, err: '' });
    expect(page.out.replaceAll('\n', ' ')).toContain(`Kneeline ${BUILD_ID}`);
    const { kneeline: kind, flights } = JSON.parse(kneeline(['results', '--json', '-'], DEMO).out);
    expect(kind).toBe('results');
    expect(flights).toHaveLength(1);
  });

  it('are written into a folder that is made for them, and not twice', () => {
    const into = join('made', 'here');
    const { code, out } = kneeline(['tables', 'a.jsonl', '--into', into]);
    expect(code).toBe(0);
    const written = readdirSync(join(folder, into));
    expect(written).toHaveLength(out.trimEnd().split('\n').length);
    const forms = written.map((name) => name.slice(name.lastIndexOf('.')));
    // No position was recorded, so no track.
    expect(new Set(forms)).toEqual(new Set(['.csv', '.json', '.parquet']));
    const again = kneeline(['tables', 'a.jsonl', '--into', into]);
    expect(again).toMatchObject({ code: 3, out: '' });
    expect(again.err).toContain('exists already; --force replaces it. Nothing was written.');
  });
});

describe('the commands in the README', () => {
  const commands = README.split('\n').filter((line) => line.startsWith('node dist-desk/'));

  it.each(commands)('%s', (command) => {
    const [, , ...args] = command.split(' ');
    const { status, stderr } = spawnSync(
      process.execPath,
      [DESK, ...args.map((word) => (word.startsWith('test/') ? join(ROOT, word) : word))],
      { cwd: folder, encoding: 'utf8' },
    );
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });

  it('are there for every verb', () => {
    const named = commands.map((command) => command.split(' ')[2]);
    expect(new Set(named)).toEqual(new Set(VERBS));
  });
});

describe('merging on the disk', () => {
  it('writes the file, and leaves nothing else behind', () => {
    expect(kneeline(['merge', 'b.jsonl', 'a.jsonl', '--out', 'm.jsonl'])).toMatchObject({
      code: 0,
      err: '',
    });
    expect(inFolder('m.jsonl')).toBe(sound);
    expect(readdirSync(folder).sort()).toEqual(['a.jsonl', 'b.jsonl', 'm.jsonl']);
  });

  it('overwrites nothing that exists, unless it is told to', () => {
    writeFileSync(join(folder, 'm.jsonl'), 'mine');
    const { code, out, err } = kneeline(['merge', 'a.jsonl', '--out', 'm.jsonl']);
    expect({ code, out }).toEqual({ code: 3, out: '' });
    expect(err).toBe('m.jsonl exists already; --force replaces it. Nothing was written.\n');
    expect(inFolder('m.jsonl')).toBe('mine');
    expect(kneeline(['merge', 'a.jsonl', '--out', 'm.jsonl', '--force']).code).toBe(0);
    expect(inFolder('m.jsonl')).toBe(sound);
  });

  it('never replaces a file that it reads, however it is named', () => {
    const target = join(folder, '.', 'b.jsonl');
    const { code, err } = kneeline(['merge', 'a.jsonl', 'b.jsonl', '--force', '--out', target]);
    expect(code).toBe(2);
    expect(err).toContain('is one of the files read; it stays as it is');
    expect(inFolder('b.jsonl')).toBe(part);
  });

  it('says when the place cannot be written, and leaves nothing half done', () => {
    const { code, err } = kneeline(['merge', 'a.jsonl', '--out', join('a.jsonl', 'm.jsonl')]);
    expect(code).toBe(3);
    expect(err).toContain('was not written');
    expect(readdirSync(folder).sort()).toEqual(['a.jsonl', 'b.jsonl']);
    expect(existsSync(join(folder, 'm.jsonl'))).toBe(false);
  });

  it('of the demonstration flight gives its own bytes through a pipe', () => {
    const { code, out } = kneeline(['merge', '-', '--out', '-'], DEMO);
    expect(code).toBe(0);
    expect(out).toBe(DEMO);
  });
});
