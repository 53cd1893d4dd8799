import { openShelf } from '../../src/journal/idbJournal.ts';
import type { Shelf } from '../../src/journal/journal.ts';
import { testLocks, testMemory, testPorts, type TestPorts } from './testPorts.ts';
import { testTime, type TestTime } from './testTime.ts';

export interface OneTablet {
  readonly time: TestTime;
  readonly ports: TestPorts;
  readonly locks: ReturnType<typeof testLocks> | null;
  /** Another window of the same browser, or the same one after a restart. */
  readonly open: () => Promise<{ readonly shelf: Shelf; readonly ports: TestPorts }>;
}

/** A tablet with a stand-in for its database, whose windows share what windows of one browser share. */
export function oneTablet({ withLocks = true }: { readonly withLocks?: boolean } = {}): OneTablet {
  const time = testTime();
  const locks = withLocks ? testLocks() : null;
  const memory = testMemory();
  const ports = testPorts({ schedule: time.schedule, locks, memory });
  return {
    time,
    ports,
    locks,
    open: async () => {
      const own = testPorts({
        schedule: time.schedule,
        databaseName: ports.databaseName,
        memory,
        locks,
      });
      const shelf = await openShelf({ clock: time.clock, device: 'tablet 1', ports: own });
      return { shelf, ports: own };
    },
  };
}
