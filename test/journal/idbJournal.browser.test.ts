import { openShelf } from '../../src/journal/idbJournal.ts';
import { browserPorts } from '../../src/journal/ports.ts';
import { randomId } from '../../src/journal/stamp.ts';
import { journalContract } from './journalContract.ts';

journalContract('in the database of a browser', () => {
  const databaseName = `kneeline-${randomId()}`;
  return (clock) =>
    openShelf({ clock, device: 'tablet 1', ports: { ...browserPorts(), databaseName } });
});
