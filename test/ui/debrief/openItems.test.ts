import { describe, expect, it } from 'vitest';
import { pointResults } from '../../../src/analysis/testPoints.ts';
import { viewOf } from '../../../src/record/flight.ts';
import { openItemsOf } from '../../../src/ui/debrief/sign/openItems.ts';
import { chainOf, mark, note, OPENED } from '../../file/smallFlight.ts';

const opened = chainOf([OPENED]);
const [first] = opened;

describe('what is still open before a signature', () => {
  it('begins with marks, intervals, forks and amendments that disagree', () => {
    const entries = chainOf(
      [
        { kind: 'fuelRead', body: { unconfirmed: 'slippedOff' } },
        { kind: 'moistureEntered', body: { encounter: 'M1' } },
        note('haze'),
        mark,
      ],
      { after: first },
    );
    const target = entries[2]?.id;
    if (target === undefined) throw new Error('the note must be there');
    const amend = (to: string) =>
      ({
        kind: 'entryAmended',
        body: {
          target,
          replaces: [],
          changes: [{ field: 'words', old: 'haze', new: to }],
          code: 'other',
          reason: 'heard otherwise',
        },
      }) as const;
    // Two hands amended the same line, each as if alone, from one image of the tablet: a fork and a conflict.
    const last = entries.at(-1);
    const one = chainOf([amend('cirrus')], { after: last });
    const other = chainOf([amend('clear')], { after: last, startMs: Date.UTC(2031, 4, 6, 13) });
    const view = viewOf([...opened, ...entries, ...one, ...other]);
    const families = openItemsOf(view, pointResults(view)).map(({ family }) => family);
    expect([...new Set(families)]).toEqual(['mark', 'interval', 'fork', 'conflict', 'unconfirmed']);
  });
});
