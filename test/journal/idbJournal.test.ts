import 'fake-indexeddb/auto';
import { openShelf } from '../../src/journal/idbJournal.ts';
import { journalContract } from './journalContract.ts';
import { testPorts } from './testPorts.ts';
import { testTime } from './testTime.ts';

journalContract('in a stand-in for the database', () => {
  const ports = testPorts({ schedule: testTime().schedule });
  return (clock) => openShelf({ clock, device: 'tablet 1', ports });
});
