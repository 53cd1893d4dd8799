import type { NoOffset, RecorderOffset } from '../../../analysis/recorder/clockOffset.ts';
import type { Envelope } from '../../../analysis/recorder/envelope.ts';
import type { ScribeSide } from '../../../analysis/recorder/scribeSide.ts';
import type { NoHead, RecorderHead } from '../../../file/recorder/recorderHead.ts';
import type { ReadOrder, RecorderFile } from './recorderTask.ts';

/** What the page asks of the worker, and what comes back; `id` ties the two. */
export type RecorderQuestion = { readonly id: number } & (
  | { readonly ask: 'look'; readonly file: Blob }
  | { readonly ask: 'read'; readonly order: ReadOrder }
  | { readonly ask: 'match'; readonly scribe: ScribeSide }
  | {
      readonly ask: 'strip';
      readonly fromMs: number;
      readonly toMs: number;
      readonly parts: number;
    }
);

export type RecorderReply = { readonly id: number } & (
  | { readonly say: 'looked'; readonly head: RecorderHead | NoHead }
  | { readonly say: 'progress'; readonly bytes: number; readonly rows: number }
  | { readonly say: 'read'; readonly file: RecorderFile }
  | { readonly say: 'matched'; readonly offset: RecorderOffset | NoOffset }
  | { readonly say: 'strip'; readonly channels: readonly Envelope[] }
  | { readonly say: 'failed'; readonly words: string }
);
