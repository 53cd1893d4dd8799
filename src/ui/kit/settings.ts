import { useSyncExternalStore } from 'react';

export const THEMES = ['day', 'sun', 'dark', 'night', 'night-red'] as const;
export type Theme = (typeof THEMES)[number];

export const THEME_WORDS: Readonly<Record<Theme, string>> = {
  day: 'Day',
  sun: 'Sun',
  dark: 'Dark',
  night: 'Night',
  'night-red': 'Night red',
};

export const TEXT_SIZES = [1, 1.25, 1.5] as const;
export type TextSize = (typeof TEXT_SIZES)[number];

/** "125 %": a size or a switch as its key says it. */
export function sizeWords(size: number): string {
  return `${Math.round(size * 100)}\u00a0%`;
}

/** The one after, round and round: what a key with more than two states goes to. */
export function nextOf<Item>(all: readonly [Item, ...Item[]], now: Item): Item {
  return all[(all.indexOf(now) + 1) % all.length] ?? all[0];
}

/** What this tablet remembers about itself, not about a flight: it never enters the record. */
export interface DeviceSettings {
  readonly theme: Theme;
  /** CSS pixels in a millimetre, from the bank-card outline on Brief; null until that was done. */
  readonly pxPerMm: number | null;
  /** Larger than the class of the screen asks for: all text on the ground, and on Fly what its places can hold. */
  readonly textSize: TextSize;
  /** The hand that touches: the columns of Fly are mirrored for the left one. */
  readonly hand: 'right' | 'left';
  /** A tick when a touch is saved and two low tones for a caution: off unless asked for, and never the only cue. */
  readonly sound: boolean;
  /** A pulse of the device when a touch is saved, where it can. */
  readonly pulse: boolean;
  /** Whether the receiver of this tablet may be asked where the flight sheet allows it. */
  readonly position: boolean;
  /** What this tablet is called in the record. */
  readonly device: string;
}

/** Where settings are kept; a test hands in its own. */
export interface SettingsStore {
  readonly get: () => DeviceSettings;
  readonly set: (change: Partial<DeviceSettings>) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

/** face.js reads the first three before the first paint. */
const KEYS = {
  theme: 'kneeline-theme',
  pxPerMm: 'kneeline-mm',
  textSize: 'kneeline-size',
  hand: 'kneeline-hand',
  sound: 'kneeline-sound',
  pulse: 'kneeline-pulse',
  position: 'kneeline-position',
  device: 'kneeline-device',
} as const satisfies Record<keyof DeviceSettings, string>;

type Keep = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/**
 * Settings in the browser's small storage: it answers before the first paint, which IndexedDB does not, so the theme
 * of the last flight is there from the first frame.
 */
export function openSettings(storage: Keep): SettingsStore {
  let now = readAll(storage);
  const listeners = new Set<() => void>();
  return {
    get: () => now,
    set: (change) => {
      now = { ...now, ...change };
      keep(storage, KEYS.theme, now.theme);
      keep(storage, KEYS.pxPerMm, now.pxPerMm === null ? null : String(now.pxPerMm));
      keep(storage, KEYS.textSize, String(now.textSize));
      keep(storage, KEYS.hand, now.hand);
      keep(storage, KEYS.sound, onOff(now.sound));
      keep(storage, KEYS.pulse, onOff(now.pulse));
      keep(storage, KEYS.position, onOff(now.position));
      keep(storage, KEYS.device, now.device);
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

function readAll(storage: Keep): DeviceSettings {
  const theme = read(storage, KEYS.theme);
  const pxPerMm = Number(read(storage, KEYS.pxPerMm) ?? Number.NaN);
  const textSize = Number(read(storage, KEYS.textSize) ?? 1);
  return {
    theme: THEMES.find((known) => known === theme) ?? 'day',
    pxPerMm: pxPerMm >= 3 && pxPerMm <= 12 ? pxPerMm : null,
    textSize: TEXT_SIZES.find((known) => known === textSize) ?? 1,
    hand: read(storage, KEYS.hand) === 'left' ? 'left' : 'right',
    sound: read(storage, KEYS.sound) === 'on',
    pulse: read(storage, KEYS.pulse) === 'on',
    position: read(storage, KEYS.position) === 'on',
    device: read(storage, KEYS.device) ?? 'scribe tablet',
  };
}

function onOff(value: boolean): string | null {
  return value ? 'on' : null;
}

function read(storage: Keep, key: string): string | null {
  try {
    return storage.getItem(key);
  } catch {
    return null;
  }
}

function keep(storage: Keep, key: string, value: string | null): void {
  try {
    if (value === null) {
      storage.removeItem(key);
    } else {
      storage.setItem(key, value);
    }
  } catch {
    // A full or blocked storage costs the memory of a theme, never an entry.
  }
}
