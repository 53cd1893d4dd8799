import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epochMs } from '../../../src/record/brand.ts';
import { viewOf } from '../../../src/record/flight.ts';
import {
  AXIS_CHOICES,
  axisTimeOf,
  axisZerosOf,
  type AxisChoice,
} from '../../../src/ui/debrief/axisTime.ts';
import { timeBaseOf } from '../../../src/ui/debrief/timeBase.ts';
import { ticks } from '../../../src/ui/debrief/timeline/timeScale.ts';
import { scriptA } from '../../flights/flightA.ts';
import { flightOfScript } from '../../flights/scriptToEntries.ts';

const TAKE_OFF = epochMs(Date.UTC(2032, 5, 2, 22, 6, 4));
const HACK = epochMs(Date.UTC(2032, 5, 2, 21, 15, 0));
const ZEROS = { takeOff: TAKE_OFF, hack: { at: HACK, number: 1 } };
const axis = (choice: AxisChoice) => axisTimeOf(choice, ZEROS);
const at = (hours: number, minutes: number, seconds: number) =>
  epochMs(Date.UTC(2032, 5, 2, hours, minutes, seconds));

describe('a time on each axis', () => {
  // 2 June is day 31 + 29 + 31 + 30 + 31 + 2 = 154 of the leap year 2032.
  it.each([
    ['utc', '22:29:28', '22:29Z', '22 29 28 Zulu'],
    ['dayOfYear', '154:22:29:28', '154:22:29Z', 'day 154, 22 29 28 Zulu'],
    // 22:06:04 to 22:29:28 is 23 min 24 s.
    ['fromTakeOff', '+23:24', '+23', '23 minutes 24 seconds after take-off'],
    // 21:15:00 to 22:29:28 is 74 min 28 s: 4,468 s.
    ['sinceHack', '+4468', '+4468', '4468 seconds after time hack 1'],
  ] as const)('%s', (choice, words, tick, spoken) => {
    expect(axis(choice).words(at(22, 29, 28))).toBe(words);
    expect(axis(choice).tickWords(at(22, 29, 28))).toBe(tick);
    expect(axis(choice).spoken(at(22, 29, 28))).toBe(spoken);
  });

  it('says what came before its zero as before it', () => {
    expect(axis('fromTakeOff').words(at(22, 5, 59))).toBe('\u22120:05');
    expect(axis('fromTakeOff').spoken(at(22, 5, 59))).toBe('5 seconds before take-off');
    expect(axis('sinceHack').words(at(21, 14, 59))).toBe('\u22121');
    expect(axis('sinceHack').spoken(at(21, 14, 59))).toBe('1 second before time hack 1');
  });

  it('carries the day over midnight with the second that is shown', () => {
    expect(axis('dayOfYear').words(epochMs(Date.UTC(2032, 5, 3) - 400))).toBe('155:00:00:00');
  });

  it('stays UTC where nobody marked a take-off and no hack was taken', () => {
    const none = { takeOff: null, hack: null };
    expect(AXIS_CHOICES.map((choice) => axisTimeOf(choice, none).choice)).toEqual([
      'utc',
      'dayOfYear',
      'utc',
      'utc',
    ]);
  });

  it('tells any two times apart that are a second apart, and never puts them out of order', () => {
    const valueOf = (choice: AxisChoice, words: string): number => {
      const [, sign, digits] = /^([+\u2212]?)([\d:]+)$/.exec(words) ?? [];
      const radix = { utc: 60, dayOfYear: 60, fromTakeOff: 60, sinceHack: 10 }[choice];
      const total = (digits ?? '').split(':').reduce((sum, part) => sum * radix + Number(part), 0);
      return sign === '\u2212' ? -total : total;
    };
    const anyAt = fc
      .integer({ min: -3_600_000, max: 6_000_000 })
      .map((ms) => epochMs(TAKE_OFF + ms));
    fc.assert(
      fc.property(fc.constantFrom(...AXIS_CHOICES), anyAt, (choice, one) => {
        const { words } = axis(choice);
        const next = epochMs(one + 1000);
        expect(valueOf(choice, words(next)) - valueOf(choice, words(one))).toBe(1);
      }),
    );
  });

  it('stands its ticks on whole steps from its zero, labels apart', () => {
    const anyWindow = fc.record({
      fromMs: fc.integer({ min: -7_200_000, max: 20_000_000 }),
      lengthMs: fc.integer({ min: 60_000, max: 86_400_000 }),
      widthPx: fc.integer({ min: 200, max: 1_600 }),
    });
    fc.assert(
      fc.property(
        fc.constantFrom('fromTakeOff' as const, 'sinceHack' as const),
        anyWindow,
        (choice, { fromMs, lengthMs, widthPx }) => {
          const own = axis(choice);
          const from = epochMs(TAKE_OFF + fromMs);
          const window = { from, to: epochMs(from + lengthMs) };
          const found = ticks({ window, widthPx }, own.labelPx, own);
          for (const tick of found.ticks) {
            expect(Math.abs((tick.at - own.zero) % found.stepMs)).toBe(0);
            expect(tick.at).toBeGreaterThanOrEqual(window.from);
            expect(tick.at).toBeLessThanOrEqual(window.to);
          }
          const labelled = found.ticks.filter((tick) => tick.labelled).map((tick) => tick.at);
          const px = labelled.map((each) => ((each - from) * widthPx) / lengthMs);
          px.slice(1).forEach((x, index) => {
            expect(x - (px[index] ?? 0)).toBeGreaterThanOrEqual(own.labelPx - 1e-6);
          });
        },
      ),
    );
  });
});

describe('the zeros of flight A', () => {
  it('are its lift-off and the master clock at the first hack, both on the aircraft time base', () => {
    const view = viewOf(flightOfScript(scriptA).entries);
    const { takeOff, hack } = axisZerosOf(view, timeBaseOf(view.state));
    expect(hack?.number).toBe(1);
    const first = view.standing.find(({ entry }) => entry.kind === 'timeHackTaken');
    expect(first?.entry).toMatchObject({ body: { hack: 1, master: hack?.at } });
    expect(takeOff).not.toBeNull();
    // The hack was taken before the aircraft left.
    expect((takeOff ?? 0) - (hack?.at ?? 0)).toBeGreaterThan(0);
  });
});
