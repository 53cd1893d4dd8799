import { browserPorts, type JournalPorts } from '../../src/journal/ports.ts';
import { randomId } from '../../src/journal/stamp.ts';
import { testMemory } from './testPorts.ts';

/** The browser's own ports for one tablet of several in this browser: names of locks and the memory kept apart. */
export function browserTablet(): JournalPorts {
  const databaseName = `kneeline-${randomId()}`;
  return {
    ...browserPorts(),
    databaseName,
    memory: testMemory(),
    locks: {
      request: (name, options, granted) =>
        navigator.locks.request(`${databaseName}/${name}`, options, granted),
    },
  };
}
