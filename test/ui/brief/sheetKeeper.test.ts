import { describe, expect, it, vi } from 'vitest';
import type { FlightSheet } from '../../../src/record/sheet.ts';
import { SheetKeeper } from '../../../src/ui/brief/sheet/sheetKeeper.ts';
import { soundSheet } from '../../record/soundSheet.ts';

const titled = (title: string): FlightSheet => ({ ...soundSheet(), title });

describe('a flight sheet in preparation', () => {
  it('ends on disk as it was left, however fast it changed', async () => {
    const kept: string[] = [];
    const keeper = new SheetKeeper(
      { keepSheet: async (sheet) => void kept.push(sheet.title) },
      titled('a'),
    );
    keeper.replace(titled('ab'));
    keeper.replace(titled('abc'));
    keeper.replace(titled('abcd'));
    await vi.waitFor(() => expect(keeper.get().saved).toBe(true));
    expect(kept.at(-1)).toBe('abcd');
  });

  it('says when a write is refused, keeps the change, and tries again', async () => {
    vi.useFakeTimers();
    let refuse = true;
    const kept: string[] = [];
    const keeper = new SheetKeeper(
      {
        keepSheet: async (sheet) => {
          if (refuse) {
            throw new Error('full');
          }
          kept.push(sheet.title);
        },
      },
      titled('a'),
    );
    keeper.replace(titled('b'));
    await vi.advanceTimersByTimeAsync(0);
    expect(keeper.get()).toMatchObject({ saved: false, trouble: true, sheet: { title: 'b' } });
    refuse = false;
    await vi.advanceTimersByTimeAsync(2_000);
    expect(keeper.get()).toMatchObject({ saved: true, trouble: false });
    expect(kept).toEqual(['b']);
    vi.useRealTimers();
  });
});
