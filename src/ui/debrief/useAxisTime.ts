import { useCallback, useMemo, useState } from 'react';
import type { FlightView } from '../../record/flight.ts';
import {
  AXIS_CHOICES,
  axisTimeOf,
  axisZerosOf,
  type AxisChoice,
  type AxisTime,
  type AxisZeros,
} from './axisTime.ts';
import type { TimeBase } from './timeBase.ts';

const KEY = 'kneeline-axis';

export interface AxisControl {
  readonly time: AxisTime;
  readonly zeros: AxisZeros;
  readonly choose: (choice: AxisChoice) => void;
}

/** The axis that was chosen last on this device, as far as this flight has what it counts from. */
export function useAxisTime(view: FlightView, base: TimeBase): AxisControl {
  const [choice, setChoice] = useState(keptChoice);
  const zeros = useMemo(() => axisZerosOf(view, base), [view, base]);
  const time = useMemo(() => axisTimeOf(choice, zeros), [choice, zeros]);
  const choose = useCallback((next: AxisChoice): void => {
    setChoice(next);
    try {
      localStorage.setItem(KEY, next);
    } catch {
      // A storage that is full or blocked costs a choice made again, nothing else.
    }
  }, []);
  return useMemo(() => ({ time, zeros, choose }), [time, zeros, choose]);
}

function keptChoice(): AxisChoice {
  try {
    const kept = localStorage.getItem(KEY);
    return AXIS_CHOICES.find((choice) => choice === kept) ?? 'utc';
  } catch {
    return 'utc';
  }
}
