import type { Clock, Journal, Shelf } from '../journal/journal.ts';
import type { EpochMs, FlightId } from '../record/brand.ts';
import type { Entry } from '../record/entry.ts';
import type { DeviceTools } from './brief/device/deviceLines.ts';
import type { SettingsStore } from './kit/settings.ts';

/** What the screens need of the world; main.tsx hands in the real one and a test its own. */
export interface AppPorts {
  readonly shelf: Shelf;
  readonly clock: Clock;
  readonly settings: SettingsStore;
  readonly tools: DeviceTools;
  readonly build: string;
  /** Asks the tablet's own receiver where it is; Fly asks only where the flight sheet and the crew allow it. */
  readonly locate: () => Promise<Located>;
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

/** What the receiver said: a fix, no fix this time, refused by the crew or the browser, or no receiver at all. */
export type Located =
  | {
      readonly kind: 'fix';
      readonly latitudeDeg: number;
      readonly longitudeDeg: number;
      readonly altitudeM: number | null;
      /** Radius of the horizontal doubt at 95 %, metres. */
      readonly accuracyM: number;
    }
  | { readonly kind: 'noFix' }
  | { readonly kind: 'refused' }
  | { readonly kind: 'none' };

export interface Replay {
  readonly journal: Journal;
  /** Shows what was touched up to then; it never takes back. */
  readonly reveal: (until: EpochMs) => void;
}

export interface ClockStep {
  readonly what: 'clockStepped' | 'sleptOrStepped';
  readonly stepMs: number;
}
