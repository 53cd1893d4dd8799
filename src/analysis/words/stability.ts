import type { StabilityItem } from '../../aero/stability.ts';

const ITEMS: Readonly<Record<StabilityItem, string>> = {
  machRange: 'Mach wandered',
  altitudeRange: 'height wandered',
  temperatureRange: 'temperature wandered',
  fuelFlowRange: 'fuel flow wandered',
  climb: 'climb',
  acceleration: 'acceleration',
  correction: 'energy correction',
};

/** What was not steady over the window before a reading. */
export function stabilityItemWords(item: StabilityItem): string {
  return ITEMS[item];
}
