import type { RecorderQuestion, RecorderReply } from './recorderMessages.ts';
import { recorderTask } from './recorderTask.ts';

/** Reads, matches and draws beside the page, so that millions of rows never hold up a touch. */
const task = recorderTask();

globalThis.onmessage = (event: MessageEvent<RecorderQuestion>): void => {
  const question = event.data;
  void answerTo(question)
    .catch((fault: unknown): RecorderReply => ({
      id: question.id,
      say: 'failed',
      words: fault instanceof Error ? fault.message : String(fault),
    }))
    .then((reply) => {
      globalThis.postMessage(reply);
    });
};

async function answerTo(question: RecorderQuestion): Promise<RecorderReply> {
  const { id } = question;
  switch (question.ask) {
    case 'look':
      return { id, say: 'looked', head: await task.look(question.file) };
    case 'read': {
      const file = await task.read(question.order, (bytes, rows) => {
        globalThis.postMessage({ id, say: 'progress', bytes, rows } satisfies RecorderReply);
      });
      return { id, say: 'read', file };
    }
    case 'match':
      return { id, say: 'matched', offset: await task.match(question.scribe) };
    case 'strip': {
      const { fromMs, toMs, parts } = question;
      return { id, say: 'strip', channels: await task.strip(fromMs, toMs, parts) };
    }
  }
}
