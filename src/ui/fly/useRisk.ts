import type { FlightState } from '../../record/flightState.ts';
import { useBattery, type Battery } from '../kit/useBattery.ts';
import { useFly } from './flyContext.ts';

/** Below this share the tablet may go dark with the flight still in the air. */
const LOW_BATTERY_FRACTION = 0.2;

/** What puts recorded data at risk for as long as it stands, short and in one line. */
export interface Risk {
  readonly kind: 'battery' | 'clock';
  readonly short: string;
  readonly words: string;
}

/** Battery below a fifth and not on the charger; or in the air without one comparison of this tablet's clock. */
export function useRisk(): Risk | null {
  const { state, status, journal } = useFly();
  const battery = useBattery();
  return status.writer.kind === 'writing' ? riskOf(state, journal.recorder(), battery) : null;
}

export function riskOf(
  { nature, hacks, milestones, closed }: FlightState,
  recorder: string | null,
  battery: Battery | null,
): Risk | null {
  if (battery !== null && !battery.charging && battery.level < LOW_BATTERY_FRACTION) {
    return {
      kind: 'battery',
      short: 'battery',
      words: `Battery ${Math.round(battery.level * 100)}\u00a0%: put it on the charger.`,
    };
  }
  const isFlown = nature === 'flight' && milestones.liftOff !== undefined && closed === null;
  return isFlown && !hacks.some(({ rec }) => rec === recorder)
    ? { kind: 'clock', short: 'clock', words: 'Clock not compared: take a time hack.' }
    : null;
}
