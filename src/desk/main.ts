import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { commandOf, type Command } from './commandLine.ts';
import type { ExitCode, FileToWrite } from './outcome.ts';
import { run } from './run.ts';
import { SOURCE_BYTES_MAX, type Source, type SourceFault } from './sources.ts';

/** The one file of the command line that touches the process and the disk. */

declare const __BUILD_ID__: string;

const STANDARD_INPUT = 0;

function source(name: string): Source {
  try {
    return { name: name === '-' ? 'standard input' : name, content: bytesOf(name) };
  } catch (error) {
    return { name, content: faultOf(error) };
  }
}

function bytesOf(name: string): Source['content'] {
  if (name === '-') return allOf(STANDARD_INPUT);
  const found = statSync(name);
  if (found.isDirectory()) return { fault: 'folder' };
  if (found.size > SOURCE_BYTES_MAX) return { fault: 'tooLarge', bytes: found.size };
  if (found.isFile()) return readFileSync(name);
  // A pipe or a device has no size to judge it by.
  const file = openSync(name, 'r');
  try {
    return allOf(file);
  } finally {
    closeSync(file);
  }
}

/** Reads to the end, or to where it is too much. */
function allOf(file: number): Source['content'] {
  const parts: Buffer[] = [];
  for (let bytes = 0; ;) {
    const part = Buffer.alloc(65_536);
    const read = readSome(file, part);
    if (read === 0) return Buffer.concat(parts);
    bytes += read;
    if (bytes > SOURCE_BYTES_MAX) return { fault: 'tooLarge', bytes };
    parts.push(part.subarray(0, read));
  }
}

function readSome(file: number, into: Buffer): number {
  for (;;) {
    try {
      return readSync(file, into);
    } catch (error) {
      // A terminal or a slow pipe may have nothing yet; some systems end a pipe with EOF.
      if (codeOf(error) === 'EOF') return 0;
      if (codeOf(error) !== 'EAGAIN') throw error;
      waitALittle();
    }
  }
}

function waitALittle(): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
}

function faultOf(error: unknown): SourceFault {
  const code = codeOf(error);
  if (code === 'ENOENT' || code === 'ENOTDIR') return { fault: 'missing' };
  if (code === 'EISDIR') return { fault: 'folder' };
  if (code === 'EACCES' || code === 'EPERM') return { fault: 'notAllowed' };
  return { fault: 'failed', said: code };
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : String(error);
}

/** Writes beside, reads back, and only then gives the file its name. Null when that went well, else why not. */
function write({ path, content }: FileToWrite): string | null {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeThrough(beside, content);
    if (!readFileSync(beside).equals(Buffer.from(content)))
      throw new Error('it reads back otherwise');
    renameSync(beside, path);
    return null;
  } catch (error) {
    if (existsSync(beside)) rmSync(beside);
    return `${path} was not written (${codeOf(error)}).`;
  }
}

function writeThrough(path: string, content: string | Uint8Array): void {
  const file = openSync(path, 'wx');
  try {
    writeFileSync(file, content);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Why a file may not be written there, or null. A file that is being read is never replaced, whatever was said. */
function refusal(
  command: Command,
  { path }: FileToWrite,
): { because: string; code: ExitCode } | null {
  if (!existsSync(path)) return null;
  const there = statSync(path);
  if (there.isDirectory()) return { because: `${path} is a folder.`, code: 3 };
  const inputs = 'files' in command ? command.files : [];
  const isInput = inputs.some((name) => {
    const input = name === '-' ? undefined : statSync(name, { throwIfNoEntry: false });
    return input !== undefined && input.ino === there.ino && input.dev === there.dev;
  });
  if (isInput) {
    return {
      because: `${path} is one of the files read; it stays as it is. Choose another name.`,
      code: 2,
    };
  }
  return 'force' in command && command.force
    ? null
    : { because: `${path} exists already; --force replaces it.`, code: 3 };
}

function main(): ExitCode {
  const command = commandOf(process.argv.slice(2), __BUILD_ID__);
  const sources = 'files' in command ? command.files.map(source) : [];
  const outcome = run(command, sources, __BUILD_ID__);
  process.stderr.write(outcome.err);
  for (const file of outcome.files) {
    const refused = refusal(command, file);
    if (refused !== null) {
      process.stderr.write(`${refused.because} Nothing was written.\n`);
      return refused.code;
    }
  }
  for (const file of outcome.files) {
    const failed = write(file);
    if (failed !== null) {
      process.stderr.write(`${failed}\n`);
      return 3;
    }
  }
  process.stdout.write(outcome.out);
  return outcome.code;
}

// Whoever reads through a pipe may stop reading: that is no fault of ours, and nothing is left to say.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error) => {
    if (codeOf(error) !== 'EPIPE') throw error;
  });
}
try {
  process.exitCode = main();
} catch (error) {
  // A mistake of ours must not end with the code that says something was found in a file.
  process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`);
  process.exitCode = 3;
}
