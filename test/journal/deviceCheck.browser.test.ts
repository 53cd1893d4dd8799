import { expect, it } from 'vitest';
import { checkDevice, requestPersistence } from '../../src/journal/deviceCheck.ts';
import { intercept } from './intercept.ts';

it('writes once for trial, reads it back and leaves nothing behind', async () => {
  const check = await checkDevice('kneeline-trial-1');
  expect(check.write).toMatchObject({ kind: 'readBack' });
  expect(check.write.kind === 'readBack' && check.write.durationMs).toBeGreaterThan(0);
  const names = (await indexedDB.databases()).map(({ name }) => name);
  expect(names).not.toContain('kneeline-trial-1');
});

it('says how much room there is and whether the browser keeps it', async () => {
  const check = await checkDevice('kneeline-trial-2');
  const { quota } = await navigator.storage.estimate();
  expect(check.quotaBytes).toBe(quota);
  expect(check.freeBytes).toBeLessThanOrEqual(quota ?? 0);
  expect(check.persisted).toBe(await navigator.storage.persisted());
  expect(await requestPersistence()).toBe(await navigator.storage.persisted());
});

it('says so when the write is refused', async () => {
  const undo = intercept(IDBObjectStore.prototype, 'put', (store, run) => {
    const request = run();
    store.transaction.abort();
    return request;
  });
  const check = await checkDevice('kneeline-trial-3');
  undo();
  expect(check.write).toEqual({ kind: 'failed', because: 'refused' });
});
