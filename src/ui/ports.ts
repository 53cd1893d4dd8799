import type { Clock, Journal, Shelf } from '../journal/journal.ts';
import type { EpochMs, FlightId } from '../record/brand.ts';
import type { Entry } from '../record/entry.ts';
import type { DeviceTools } from './brief/deviceLines.ts';
import type { SettingsStore } from './kit/settings.ts';

/** What the screens need of the world; main.tsx hands in the real one and a test its own. */
export interface AppPorts {
  readonly shelf: Shelf;
  readonly clock: Clock;
  readonly settings: SettingsStore;
  readonly tools: DeviceTools;
  readonly build: string;
  /** Reads the demo flight that is shipped with the app. Rejects when its file cannot be read. */
  readonly demo: () => Promise<readonly Entry[]>;
  /** Lets a recorded flight happen again on a journal that takes nothing. */
  readonly replay: (flight: FlightId, entries: readonly Entry[]) => Replay;
  readonly watchSteps: (given: {
    readonly isVisible: () => boolean;
    readonly isAwake: () => boolean;
    readonly onStep: (step: ClockStep) => void;
  }) => { readonly check: () => void; readonly stop: () => void };
}

export interface Replay {
  readonly journal: Journal;
  /** Shows what was touched up to then; it never takes back. */
  readonly reveal: (until: EpochMs) => void;
}

export interface ClockStep {
  readonly what: 'clockStepped' | 'sleptOrStepped';
  readonly stepMs: number;
}
