import {
  recorderOffset,
  type NoOffset,
  type RecorderOffset,
} from '../../../analysis/recorder/clockOffset.ts';
import { envelopes, type Envelope } from '../../../analysis/recorder/envelope.ts';
import type { ScribeSide } from '../../../analysis/recorder/scribeSide.ts';
import {
  evenTrace,
  type EvenTrace,
  type RecorderChannel,
} from '../../../analysis/recorder/trace.ts';
import {
  recorderHead,
  type NoHead,
  type RecorderHead,
} from '../../../file/recorder/recorderHead.ts';
import { recorderReader, type RecorderTroubles } from '../../../file/recorder/recorderReader.ts';
import type { EntryId } from '../../../record/brand.ts';
import { fileHash } from '../../../record/fileHash.ts';
import { planOf, type RecorderMapping } from './mapping.ts';

/** What was read of one file. The rows stay with whoever read them. */
export interface RecorderFile {
  readonly sha256: EntryId;
  readonly bytes: number;
  readonly rows: number;
  readonly fromMs: number;
  readonly toMs: number;
  readonly troubles: RecorderTroubles;
  /** Null where no row was kept, or where the times span more than a week. */
  readonly even: EvenTrace | null;
  /** Room that the rows take up while the file is open. */
  readonly memoryBytes: number;
}

export interface ReadOrder {
  readonly file: Blob;
  readonly head: RecorderHead;
  readonly mapping: RecorderMapping;
  readonly startMs: number;
}

/** Everything that is done with a recorder's file, one file at a time. It runs in a worker; a test runs it as it is. */
export interface RecorderTask {
  readonly look: (file: Blob) => Promise<RecorderHead | NoHead>;
  readonly read: (
    order: ReadOrder,
    onProgress: (bytes: number, rows: number) => void,
  ) => Promise<RecorderFile>;
  readonly match: (scribe: ScribeSide) => Promise<RecorderOffset | NoOffset>;
  /** Each mapped channel over a time of the recorder's clock. */
  readonly strip: (fromMs: number, toMs: number, parts: number) => Promise<readonly Envelope[]>;
}

const LOOK_BYTES = 256 * 1024;
const PROGRESS_EVERY_BYTES = 4 * 1024 * 1024;

export function recorderTask(): RecorderTask {
  let even: EvenTrace | null = null;
  let drawn: readonly ReturnType<typeof envelopes>[] = [];
  return {
    look: async (file) => {
      const reader = (await plainBytes(file.stream(), file)).getReader();
      const decoder = new TextDecoder();
      let text = '';
      while (text.length < LOOK_BYTES) {
        const { done, value } = await reader.read();
        if (done) break;
        text += decoder.decode(value, { stream: true });
      }
      await reader.cancel();
      return recorderHead(text);
    },
    read: async ({ file, head, mapping, startMs }, onProgress) => {
      const hash = fileHash();
      const rows = recorderReader(head, planOf(mapping, startMs));
      let bytes = 0;
      let told = 0;
      const counted = new TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>({
        transform: (piece, next) => {
          hash.update(piece);
          bytes += piece.length;
          if (bytes - told >= PROGRESS_EVERY_BYTES) {
            told = bytes;
            onProgress(bytes, rows.rows());
          }
          next.enqueue(piece);
        },
      });
      const plain = await plainBytes(file.stream().pipeThrough(counted), file);
      for (const reader = plain.getReader(); ;) {
        const { done, value } = await reader.read();
        if (done) break;
        rows.push(value);
      }
      const { timesMs, columns, troubles } = rows.end();
      const channels = mapping.channels.map(({ use, engine, column }, index): RecorderChannel => ({
        name: head.headers[column] ?? '',
        use,
        engine,
        values: columns[index] ?? new Float32Array(0),
      }));
      even = evenTrace({ timesMs, channels });
      drawn = channels.map(({ values }) => envelopes(timesMs, values));
      return {
        sha256: hash.digest(),
        bytes,
        rows: timesMs.length,
        fromMs: timesMs[0] ?? Number.NaN,
        toMs: timesMs.at(-1) ?? Number.NaN,
        troubles,
        even,
        memoryBytes:
          timesMs.byteLength + columns.reduce((sum, column) => sum + column.byteLength, 0),
      };
    },
    match: (scribe) =>
      Promise.resolve(
        even === null
          ? { kind: 'noOffset', because: 'nothingToMatch', candidatesS: [] }
          : recorderOffset(even, scribe),
      ),
    strip: (fromMs, toMs, parts) =>
      Promise.resolve(drawn.map((envelope) => envelope(fromMs, toMs, parts))),
  };
}

/** Unpacked where the file is gzip by its first two bytes (RFC 1952), whatever it is called. */
async function plainBytes(
  stream: ReadableStream<Uint8Array<ArrayBuffer>>,
  file: Blob,
): Promise<ReadableStream<Uint8Array<ArrayBuffer>>> {
  const [first, second] = new Uint8Array(await file.slice(0, 2).arrayBuffer());
  return first === 0x1f && second === 0x8b
    ? stream.pipeThrough(new DecompressionStream('gzip'))
    : stream;
}
