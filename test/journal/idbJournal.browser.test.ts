import { openShelf } from '../../src/journal/idbJournal.ts';
import { browserTablet } from './browserTablet.ts';
import { journalContract } from './journalContract.ts';

journalContract('in the database of a browser', () => {
  const ports = browserTablet();
  return (clock) => openShelf({ clock, device: 'tablet 1', ports });
});
