import { scriptAddress } from '../../scriptAddress.ts';
import type { RecorderQuestion, RecorderReply } from './recorderMessages.ts';
import type { RecorderTask } from './recorderTask.ts';

/** A recorder task that can be dropped in the middle of anything. */
export interface RecorderPort extends RecorderTask {
  /** Ends it with all that it holds; what was asked is never answered. */
  readonly close: () => void;
}

/** A worker of its own for each file: to cancel is to end it. */
export function openRecorderPort(): RecorderPort {
  // The build makes a file of a worker where it reads the words `new Worker(new URL(…))`, so ours goes by that name.
  class Worker extends globalThis.Worker {
    constructor(address: URL, options: WorkerOptions) {
      super(scriptAddress('parser', address.href), options);
    }
  }
  const worker = new Worker(new URL('./recorderWorker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, (reply: RecorderReply) => void>();
  let asked = 0;
  worker.onmessage = ({ data }: MessageEvent<RecorderReply>): void => {
    waiting.get(data.id)?.(data);
  };
  worker.onerror = (): void => {
    for (const [id, answer] of waiting) {
      answer({ id, say: 'failed', words: 'the reader stopped, perhaps for want of memory' });
    }
  };

  function ask<Say extends RecorderReply['say']>(
    question: WithoutId<RecorderQuestion>,
    say: Say,
    onOther: (reply: RecorderReply) => void = () => {},
  ): Promise<Extract<RecorderReply, { readonly say: Say }>> {
    asked += 1;
    const id = asked;
    return new Promise((resolve, reject) => {
      waiting.set(id, (reply) => {
        if (isSaying(reply, say)) {
          waiting.delete(id);
          resolve(reply);
        } else if (reply.say === 'failed') {
          waiting.delete(id);
          reject(new Error(reply.words));
        } else {
          onOther(reply);
        }
      });
      worker.postMessage({ ...question, id });
    });
  }

  return {
    look: async (file) => (await ask({ ask: 'look', file }, 'looked')).head,
    read: async (order, onProgress) => {
      const reply = await ask({ ask: 'read', order }, 'read', (other) => {
        if (other.say === 'progress') onProgress(other.bytes, other.rows);
      });
      return reply.file;
    },
    match: async (scribe) => (await ask({ ask: 'match', scribe }, 'matched')).offset,
    strip: async (fromMs, toMs, parts) =>
      (await ask({ ask: 'strip', fromMs, toMs, parts }, 'strip')).channels,
    close: () => {
      worker.terminate();
      waiting.clear();
    },
  };
}

type WithoutId<Asked> = Asked extends unknown ? Omit<Asked, 'id'> : never;

function isSaying<Say extends RecorderReply['say']>(
  reply: RecorderReply,
  say: Say,
): reply is Extract<RecorderReply, { readonly say: Say }> {
  return reply.say === say;
}
