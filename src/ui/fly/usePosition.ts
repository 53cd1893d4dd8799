import { useEffect, useLayoutEffect, useRef } from 'react';
import type { Body } from '../../record/entry.ts';
import type { Located } from '../ports.ts';
import type { Fly } from './flyContext.ts';

/** At most one position in so long, over a reload too. */
const EVERY_MS = 60_000;

/**
 * Keeps where the tablet's own receiver says it is, beside the entries: only while the flight sheet allows it and the
 * switch on this tablet is on. A refusal turns the switch off and is told once.
 */
export function usePosition(fly: Fly, locate: (() => Promise<Located>) | undefined): void {
  const latest = useRef(fly);
  useLayoutEffect(() => {
    latest.current = fly;
  });
  const isOn = locate !== undefined && fly.sheet?.positionAllowed === true && fly.settings.position;
  useEffect(() => {
    if (!isOn) {
      return undefined;
    }
    let over = false;
    const ask = async (): Promise<void> => {
      if (latest.current.clock.now() - lastKeptAt(latest.current) < EVERY_MS / 2) {
        return;
      }
      const found = await locate();
      if (!over) {
        keep(latest.current, found);
      }
    };
    void ask();
    const timer = setInterval(() => void ask(), EVERY_MS);
    return () => {
      over = true;
      clearInterval(timer);
    };
  }, [isOn, locate]);
}

function keep(fly: Fly, found: Located): void {
  switch (found.kind) {
    case 'fix':
      void fly.append({
        kind: 'positionRead',
        body: bodyOf(found),
        stamp: fly.clock.stampNow(),
      });
      return;
    case 'refused':
    case 'none':
      fly.setSettings({ position: false });
      fly.move({
        do: 'notice',
        words: found.kind === 'refused' ? 'Position refused: switched off' : 'No receiver here',
        at: fly.clock.now(),
      });
      return;
    case 'noFix':
      // Behind metal a receiver may hear nothing for an hour: no entry, no word, asked again in a minute.
      return;
  }
}

function bodyOf(fix: Extract<Located, { kind: 'fix' }>): Body<'positionRead'> {
  return {
    latitudeDeg: rounded(fix.latitudeDeg, 1e6),
    longitudeDeg: rounded(fix.longitudeDeg, 1e6),
    ...(fix.altitudeM !== null && { altitudeM: rounded(fix.altitudeM, 10) }),
    accuracyM: rounded(fix.accuracyM, 10),
  };
}

function rounded(value: number, perUnit: number): number {
  return Math.round(value * perUnit) / perUnit;
}

function lastKeptAt(fly: Fly): number {
  const rec = fly.journal.recorder();
  const kept = fly.journal
    .entries()
    .findLast((entry) => entry.kind === 'positionRead' && entry.rec === rec);
  return kept?.wall ?? -Infinity;
}
