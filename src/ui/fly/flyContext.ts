import { createContext, use, type Dispatch } from 'react';
import type { Clock, Journal, JournalStatus } from '../../journal/journal.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { Draft, Entry, Stamp } from '../../record/entry.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightState } from '../../record/flightState.ts';
import type { FlightSheet, Wing } from '../../record/sheet.ts';
import type { DeviceSettings } from '../kit/settings.ts';
import type { Scene } from './act.ts';
import type { Change } from './field.ts';
import type { FlyLayout } from './layout.ts';
import type { FlyMove, FlyUi } from './flyState.ts';

/** What every part of Fly may read and do. */
export interface Fly {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly view: FlightView;
  readonly state: FlightState;
  readonly sheet: FlightSheet | null;
  /** What the one who holds this tablet's pen does on board, and the wing that follows from it. */
  readonly role: string;
  readonly wing: Wing | null;
  readonly status: JournalStatus;
  readonly layout: FlyLayout;
  readonly settings: DeviceSettings;
  readonly setSettings: (change: Partial<DeviceSettings>) => void;
  readonly ui: FlyUi;
  readonly move: Dispatch<FlyMove>;
  readonly sceneAt: (at: EpochMs) => Scene;
  /** Puts an entry on the way to disk; `null` when this window may not write. */
  readonly append: (draft: Draft) => Promise<Entry | null>;
  readonly amend: (
    target: EntryId,
    changes: readonly Change[],
    stamp: Stamp,
  ) => Promise<Entry | null>;
  /** Two low tones, where sound was asked for. */
  readonly caution: () => void;
  readonly leave: FlyWays;
  /** Whether the screen is kept awake right now. */
  readonly awake: () => boolean;
}

/** The ways off Fly. */
export interface FlyWays {
  readonly toBrief: () => void;
  readonly toDebrief: () => void;
  readonly toManual: () => void;
  readonly onEnded: () => void;
}

export const FlyContext = createContext<Fly | null>(null);

export function useFly(): Fly {
  const fly = use(FlyContext);
  if (fly === null) {
    throw new Error('a part of Fly must stand inside Fly');
  }
  return fly;
}
