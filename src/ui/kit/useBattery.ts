import { useEffect, useState } from 'react';

/** What the browser tells about the battery; most tell nothing. */
export interface Battery {
  /** 0 to 1. */
  readonly level: number;
  readonly charging: boolean;
}

const CHANGES = ['levelchange', 'chargingchange'] as const;

/** The battery as it stands, anew when it changes; null where the browser does not tell. */
export function useBattery(): Battery | null {
  const [battery, setBattery] = useState<Battery | null>(null);
  useEffect(() => {
    let stop = (): void => undefined;
    let over = false;
    void askBattery().then((manager) => {
      if (manager === null || over) return;
      const read = (): void => setBattery({ level: manager.level, charging: manager.charging });
      read();
      for (const name of CHANGES) manager.addEventListener(name, read);
      stop = () => {
        for (const name of CHANGES) manager.removeEventListener(name, read);
      };
    });
    return () => {
      over = true;
      stop();
    };
  }, []);
  return battery;
}

type BatteryManager = EventTarget & Battery;

async function askBattery(): Promise<BatteryManager | null> {
  const ask: unknown = Reflect.get(navigator, 'getBattery');
  if (typeof ask !== 'function') return null;
  try {
    const manager: unknown = await Reflect.apply(ask, navigator, []);
    return isBattery(manager) ? manager : null;
  } catch {
    return null; // refused, as in a private window
  }
}

function isBattery(manager: unknown): manager is BatteryManager {
  return (
    manager instanceof EventTarget &&
    typeof Reflect.get(manager, 'level') === 'number' &&
    typeof Reflect.get(manager, 'charging') === 'boolean'
  );
}
