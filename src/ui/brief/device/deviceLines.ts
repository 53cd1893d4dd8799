import * as v from 'valibot';
import type { OfflineCheck } from '../../offline.ts';

/** What Brief asks of the room that keeps the record; main.tsx hands it in. */
export interface DeviceTools {
  readonly check: () => Promise<StorageCheck>;
  readonly keepStorage: () => Promise<boolean>;
  readonly offline: () => Promise<OfflineCheck>;
}

export interface StorageCheck {
  readonly persisted: boolean | null;
  readonly freeBytes: number | null;
  readonly write:
    | { readonly kind: 'readBack'; readonly durationMs: number }
    | { readonly kind: 'failed'; readonly because: 'notReadBack' | 'refused' };
}

/** One line of the device check: filled only when it was earned, and then it says by what. */
export interface DeviceLine {
  readonly id: string;
  readonly name: string;
  readonly held: boolean;
  readonly result: string;
  /** What may go wrong while the line is open. */
  readonly risk: string;
}

const MEGABYTE = 1_000_000;
const ROOM_WANTED = 200 * MEGABYTE;
/** Half a charge for a flight of some hours. Common practice, no source. */
const CHARGE_WANTED = 0.5;

/** Runs every line that this device can answer by itself. */
export async function machineLines(
  tools: DeviceTools,
  now: number,
): Promise<readonly DeviceLine[]> {
  const [storage, offline, awake, battery] = await Promise.all([
    tools.check().catch(() => null),
    tools.offline().catch(() => null),
    tryAwake(),
    readBattery(),
  ]);
  return [
    installedLine(),
    {
      id: 'kept',
      name: 'Storage kept by the system',
      held: storage?.persisted === true,
      result: storage?.persisted === true ? 'granted' : 'not promised',
      risk: 'It may be cleared for space. Touch to ask.',
    },
    writeLine(storage),
    offlineLine(offline),
    {
      id: 'awake',
      name: 'Screen stays awake',
      held: awake,
      result: awake ? 'can be held' : 'refused',
      risk: 'It may sleep. Set auto-lock to never.',
    },
    ...(battery === null ? [] : [batteryLine(battery)]),
    spaceLine(storage),
    clockLine(now),
  ];
}

function installedLine(): DeviceLine {
  const shown = ['fullscreen', 'standalone'].find(
    (mode) => window.matchMedia(`(display-mode: ${mode})`).matches,
  );
  return {
    id: 'installed',
    name: 'Installed, full screen',
    held: shown !== undefined,
    result: shown === undefined ? 'in a browser tab' : 'held',
    risk: 'A swipe may leave it. Add to home screen.',
  };
}

function writeLine(storage: StorageCheck | null): DeviceLine {
  const write = storage?.write;
  return {
    id: 'write',
    name: 'Strict write, read back',
    held: write?.kind === 'readBack',
    result:
      write?.kind === 'readBack'
        ? `${Math.max(1, Math.round(write.durationMs))}\u00a0ms`
        : write?.because === 'notReadBack'
          ? 'came back different'
          : 'refused',
    risk: 'Entries may be lost. Use another tablet.',
  };
}

const OFFLINE_WORDS: Readonly<
  Record<Extract<OfflineCheck, { kind: 'notReady' }>['because'], string>
> = {
  unsupported: 'not possible here',
  notInstalled: 'not fetched yet',
  stillInstalling: 'being fetched',
  noAnswer: 'no answer',
  otherBuild: 'another build is kept',
  filesMissing: 'files missing',
};

function offlineLine(offline: OfflineCheck | null): DeviceLine {
  const ready = offline?.kind === 'ready';
  return {
    id: 'offline',
    name: 'Works with no network',
    held: ready,
    result: ready
      ? `${offline.files} of ${offline.files} files`
      : offline === null
        ? 'could not be checked'
        : OFFLINE_WORDS[offline.because],
    risk: 'May not start in the air. Go online once.',
  };
}

function batteryLine(battery: { level: number; charging: boolean }): DeviceLine {
  return {
    id: 'battery',
    name: 'Battery',
    held: battery.charging || battery.level >= CHARGE_WANTED,
    result: `${Math.round(battery.level * 100)}\u00a0%${battery.charging ? ', charging' : ''}`,
    risk: 'It may not last the flight. Charge it.',
  };
}

function spaceLine(storage: StorageCheck | null): DeviceLine {
  const free = storage?.freeBytes ?? null;
  return {
    id: 'space',
    name: 'Free space',
    held: free !== null && free >= ROOM_WANTED,
    result:
      free === null
        ? 'not told'
        : free >= 1000 * MEGABYTE
          ? `${Math.floor(free / (1000 * MEGABYTE))}\u00a0GB`
          : `${Math.floor(free / MEGABYTE)}\u00a0MB`,
    risk: 'Storage may fill. Remove other data.',
  };
}

/** A clock that lost its battery starts at an old date; before this day the app did not exist. */
const NOT_BEFORE = Date.UTC(2025, 0, 1);
const NOT_AFTER = Date.UTC(2100, 0, 1);

function clockLine(now: number): DeviceLine {
  const plausible = now >= NOT_BEFORE && now < NOT_AFTER;
  return {
    id: 'clock',
    name: 'Clock plausible',
    held: plausible,
    result: new Date(now).toISOString().slice(0, 10),
    risk: 'The date is wrong. Set it before the hack.',
  };
}

async function tryAwake(): Promise<boolean> {
  if (!('wakeLock' in navigator)) {
    return false;
  }
  try {
    const lock = await navigator.wakeLock.request('screen');
    await lock.release();
    return true;
  } catch {
    return false;
  }
}

const batterySchema = v.object({ level: v.number(), charging: v.boolean() });

/** Null where the browser does not tell. */
async function readBattery(): Promise<v.InferOutput<typeof batterySchema> | null> {
  const ask: unknown = Reflect.get(navigator, 'getBattery');
  if (typeof ask !== 'function') {
    return null;
  }
  try {
    const told: unknown = await Reflect.apply(ask, navigator, []);
    const read = v.safeParse(batterySchema, told);
    return read.success ? read.output : null;
  } catch {
    return null;
  }
}
