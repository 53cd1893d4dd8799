import { useSyncExternalStore } from 'react';

/** What this tablet remembers about itself, not about a flight: it never enters the record. */
export interface DeviceSettings {
  readonly theme: Theme;
  /** CSS pixels in a millimetre, from the bank-card outline on Brief; null until that was done. */
  readonly pxPerMm: number | null;
  /** The hand that touches: the columns of Fly are mirrored for the left one. */
  readonly hand: 'right' | 'left';
  /** What this tablet is called in the record. */
  readonly device: string;
}

export const THEMES = ['day', 'sun', 'dark', 'night'] as const;
export type Theme = (typeof THEMES)[number];

export const THEME_WORDS: Readonly<Record<Theme, string>> = {
  day: 'Day',
  sun: 'Sun',
  dark: 'Dark',
  night: 'Night',
};

const KEY = 'kneeline-device';
const FIRST: DeviceSettings = {
  theme: 'day',
  pxPerMm: null,
  hand: 'right',
  device: 'scribe tablet',
};

/** Where settings are kept; a test hands in its own. */
export interface SettingsStore {
  readonly get: () => DeviceSettings;
  readonly set: (change: Partial<DeviceSettings>) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

/**
 * Settings in the browser's small storage: it answers before the first paint, which IndexedDB does not, so the theme
 * of the last flight is there from the first frame.
 */
export function openSettings(storage: Pick<Storage, 'getItem' | 'setItem'>): SettingsStore {
  let now = readSettings(storage);
  const listeners = new Set<() => void>();
  return {
    get: () => now,
    set: (change) => {
      now = { ...now, ...change };
      try {
        storage.setItem(KEY, JSON.stringify(now));
      } catch {
        // A full or blocked storage costs the memory of a theme, never an entry.
      }
      for (const listener of listeners) {
        listener();
      }
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

export function useSettings(store: SettingsStore): DeviceSettings {
  return useSyncExternalStore(store.subscribe, store.get);
}

function readSettings(storage: Pick<Storage, 'getItem'>): DeviceSettings {
  try {
    const kept: unknown = JSON.parse(storage.getItem(KEY) ?? '{}');
    return typeof kept === 'object' && kept !== null ? fromKept(kept) : FIRST;
  } catch {
    return FIRST;
  }
}

function fromKept(kept: object): DeviceSettings {
  const read = (name: keyof DeviceSettings): unknown =>
    name in kept ? Reflect.get(kept, name) : undefined;
  const theme = THEMES.find((known) => known === read('theme')) ?? FIRST.theme;
  const pxPerMm = read('pxPerMm');
  const device = read('device');
  return {
    theme,
    pxPerMm: typeof pxPerMm === 'number' && pxPerMm >= 2 && pxPerMm <= 30 ? pxPerMm : null,
    hand: read('hand') === 'left' ? 'left' : 'right',
    device: typeof device === 'string' && device !== '' ? device : FIRST.device,
  };
}
