import { act, renderHook } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import type { Journal } from '../../src/journal/journal.ts';
import type { Entry } from '../../src/record/entry.ts';
import { useFlight } from '../../src/ui/useFlight.ts';
import { chainOf, FLIGHT, note, OPENED, SCRIBE } from '../file/smallFlight.ts';

/** A journal whose saved and unsaved entries are moved by hand. */
function journalInHand() {
  const listeners = new Set<() => void>();
  let entries: readonly Entry[] = [];
  let unsaved: readonly Entry[] = [];
  let status = statusNow();
  function statusNow(): ReturnType<Journal['status']> {
    return {
      saved: entries.length,
      pending: [],
      unsaved,
      writer: { kind: 'writing' },
      trouble: null,
      head: null,
    };
  }
  const journal: Journal = {
    flight: FLIGHT,
    recorder: () => SCRIBE,
    append: () => Promise.reject(new Error('moved by hand')),
    entries: () => entries,
    status: () => status,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    merge: () => Promise.resolve({ added: 0, known: 0 }),
    author: () => ({ author: 'S1', role: 'scribe' }),
    setAuthor: () => {},
    close: () => Promise.resolve(),
  };
  const set = (saved: readonly Entry[], waiting: readonly Entry[]): void => {
    entries = saved;
    unsaved = waiting;
    status = statusNow();
    act(() => listeners.forEach((listener) => listener()));
  };
  return { journal, set };
}

describe('useFlight', () => {
  const entries = chainOf([
    OPENED,
    { kind: 'moistureEntered', body: {} },
    { kind: 'moistureExited', body: {} },
  ]);
  const words = (view: ReturnType<typeof useFlight>['view']): readonly string[] =>
    view.standing.map(({ entry }) => entry.kind);

  it('shows a touch before it is saved, and counts it only after', () => {
    const { journal, set } = journalInHand();
    const { result } = renderHook(() => useFlight(journal));
    set(entries.slice(0, 1), entries.slice(1, 2));
    expect(words(result.current.view)).toEqual(['flightOpened', 'moistureEntered']);
    expect(result.current.status.saved).toBe(1);
    const shown = result.current.view;
    set(entries.slice(0, 2), []);
    expect(result.current.view).toBe(shown);
    expect(result.current.status.saved).toBe(2);
  });

  it('forgets what the journal began anew under another recorder', () => {
    const { journal, set } = journalInHand();
    const { result } = renderHook(() => useFlight(journal));
    set(entries.slice(0, 1), entries.slice(1, 2));
    const [again] = chainOf([note('said again')], { after: entries[0] });
    set(entries.slice(0, 1), again === undefined ? [] : [again]);
    expect(words(result.current.view)).toEqual(['flightOpened', 'noted']);
  });
});
