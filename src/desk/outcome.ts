/** 0 all is well; 1 something was found or refused; 2 wrong use; 3 something cannot be read or written. */
export type ExitCode = 0 | 1 | 2 | 3;

/** A file that a verb wants written, whole. */
export interface FileToWrite {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** What a verb says and wants. It touches nothing itself: main.ts prints, writes and ends. */
export interface Outcome {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
  readonly files: readonly FileToWrite[];
}

/** The worst of several; a file that cannot be read outweighs one that was read and found wanting. */
export function worst(codes: readonly ExitCode[]): ExitCode {
  return codes.reduce<ExitCode>((most, code) => (code > most ? code : most), 0);
}

/** Lines of text with an end each; nothing for none. */
export function asText(lines: readonly string[]): string {
  return lines.map((line) => `${line}\n`).join('');
}
