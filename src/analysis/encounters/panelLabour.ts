import type { EntryId } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import type { Answer } from '../answer.ts';
import { distinct } from './lossLags.ts';

/** Hours that one panel takes a time, by what was stated for it after these flights. */
export type PanelLabour = Answer<
  { readonly labourH: number; readonly flights: number },
  'noLabourStated',
  'meanOfFlights'
>;

/** Work on names that the flight sheet does not know as panels: told, and given to no panel. */
export interface LabourElsewhere {
  readonly name: string;
  readonly labourH: number;
  readonly entries: readonly EntryId[];
}

export interface ExpectedLabour {
  readonly byPanel: ReadonlyMap<string, PanelLabour>;
  readonly elsewhere: readonly LabourElsewhere[];
}

/** Hours done stand in the place of hours expected; work on several panels is shared evenly (a convention). */
export function expectedLabour(
  views: readonly FlightView[],
  { panels }: FlightSheet,
): ExpectedLabour {
  const known = new Set(panels.map(({ id }) => id));
  const byFlight = views.map(labourOfFlight);
  const names = [...new Set(byFlight.flatMap((flight) => [...flight.keys()]))];
  const told = (name: string): readonly Hours[] =>
    byFlight.flatMap((flight) => flight.get(name) ?? []);
  return {
    byPanel: new Map(panels.map(({ id }) => [id, meanOf(told(id))])),
    elsewhere: names
      .filter((name) => !known.has(name))
      .map((name) => ({
        name,
        labourH: told(name).reduce((total, { labourH }) => total + labourH, 0),
        entries: distinct(told(name).flatMap(({ entries }) => entries)),
      })),
  };
}

interface Hours {
  readonly labourH: number;
  readonly entries: readonly EntryId[];
}

interface Job extends Hours {
  readonly panels: readonly string[];
}

function labourOfFlight(view: FlightView): ReadonlyMap<string, Hours> {
  const hours = new Map<string, Hours>();
  for (const { panels, labourH, entries } of jobsOf(view)) {
    for (const panel of panels) {
      const before = hours.get(panel);
      hours.set(panel, {
        labourH: (before?.labourH ?? 0) + labourH / panels.length,
        entries: [...(before?.entries ?? []), ...entries],
      });
    }
  }
  return hours;
}

function jobsOf(view: FlightView): readonly Job[] {
  const squawks = new Map<string, Job>();
  const done = new Map<string, Job>();
  for (const { effective, standing, entry } of view.standing) {
    if (standing !== 'stands') continue;
    if (effective.kind === 'squawkRaised' && effective.body.labourH !== undefined) {
      const { squawk, panels, labourH } = effective.body;
      squawks.set(squawk, { panels: distinctNames(panels), labourH, entries: [entry.id] });
    }
    if (effective.kind === 'maintenanceDone' && effective.body.labourH !== undefined) {
      const { squawk, panels, labourH } = effective.body;
      const key = squawk ?? entry.id;
      const before = done.get(key);
      done.set(key, {
        panels: distinctNames([...(before?.panels ?? []), ...panels]),
        labourH: (before?.labourH ?? 0) + labourH,
        entries: [...(before?.entries ?? []), entry.id],
      });
    }
  }
  return [...new Map([...squawks, ...done]).values()].filter(({ panels }) => panels.length > 0);
}

function distinctNames(panels: readonly string[]): readonly string[] {
  return [...new Set(panels)];
}

function meanOf(told: readonly Hours[]): PanelLabour {
  if (told.length === 0) return { kind: 'noAnswer', because: 'noLabourStated', entries: [] };
  return {
    kind: 'answer',
    value: {
      labourH: told.reduce((total, { labourH }) => total + labourH, 0) / told.length,
      flights: told.length,
    },
    how: {
      entries: distinct(told.flatMap(({ entries }) => entries)),
      method: 'meanOfFlights',
      broken: [],
    },
  };
}
