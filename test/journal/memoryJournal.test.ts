import { journalContract } from './journalContract.ts';
import { memoryShelf, nothingKept } from './memoryJournal.ts';

journalContract('in memory', () => {
  const kept = nothingKept();
  return async (clock) => memoryShelf({ clock, device: 'tablet 1', kept });
});
