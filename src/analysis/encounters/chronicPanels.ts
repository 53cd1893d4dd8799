import type { FlightView } from '../../record/flight.ts';
import type { FlightSheet, Probe, Wing } from '../../record/sheet.ts';
import type { Answer } from '../answer.ts';
import { measureSi } from '../calibrate.ts';
import {
  isSameAircraft,
  probeFlights,
  type NotEligible,
  type ProbeFlight,
} from './chronicProbes.ts';
import { distinct } from './lossLags.ts';
import { expectedLabour, type LabourElsewhere, type PanelLabour } from './panelLabour.ts';
import { byOpening } from './flightOrder.ts';

/** Which panels cost laminar flow flight after flight, and which of them is worth an hour of work first. */
export interface ChronicPanels {
  /** In the order of the newest flight sheet. */
  readonly probes: readonly ChronicProbe[];
  /** Most turbulent area an hour of work first; then those without hours, by area; then those never turbulent. */
  readonly panels: readonly ChronicPanel[];
  readonly labourElsewhere: readonly LabourElsewhere[];
}

export interface ChronicProbe {
  readonly probe: string;
  readonly panel: string;
  readonly areaM2: number;
  readonly record: Answer<
    {
      readonly turbulentFlights: number;
      /** n: clear air, nominal suction, cover seen to go, probe serviceable and called. */
      readonly eligibleFlights: number;
      readonly turbulentFraction: number;
    },
    'noEligibleFlight',
    'turbulentOverEligible'
  >;
  readonly leftOut: readonly { readonly because: NotEligible; readonly flights: number }[];
}

export interface ChronicPanel {
  readonly panel: string;
  readonly wing: Wing;
  /** Sum of area x turbulent share over its probes with eligible flights. */
  readonly turbulentArea: Answer<
    { readonly turbulentAreaM2: number; readonly probes: number; readonly fewestFlights: number },
    'noProbe' | 'noEligibleFlight',
    'areaTimesRate'
  >;
  readonly labour: PanelLabour;
  readonly rank: Answer<
    { readonly areaM2PerH: number },
    'noProbe' | 'noEligibleFlight' | 'noLabourStated' | 'neverTurbulent',
    'areaTimesRatePerHour'
  >;
}

/** Over flights of one aircraft, the one of the newest flight; nothing without a flight sheet. */
export function chronicPanels(views: readonly FlightView[]): ChronicPanels {
  const flights = byOpening(views);
  const sheet = flights.findLast((view) => view.state.sheet !== null)?.state.sheet ?? null;
  if (sheet === null) return { probes: [], panels: [], labourElsewhere: [] };
  const told = flights.map((view) => toldBy(view, sheet));
  const probes = sheet.probes
    .filter(({ form }) => form === 'trailingEdgeTotal')
    .map((probe) => chronicProbe(probe, told));
  const ofAircraft = flights.filter(
    ({ state }) => state.sheet !== null && isSameAircraft(state.sheet, sheet),
  );
  const { byPanel, elsewhere } = expectedLabour(ofAircraft, sheet);
  const panels = sheet.panels.map(({ id, wing }): ChronicPanel => {
    const own = probes.filter(({ panel }) => panel === id);
    const labour = byPanel.get(id) ?? {
      kind: 'noAnswer',
      because: 'noLabourStated',
      entries: [],
    };
    const turbulentArea = turbulentAreaOf(own);
    return { panel: id, wing, turbulentArea, labour, rank: rankOf(turbulentArea, labour) };
  });
  return {
    probes,
    // A stable sort: panels alike stay in the order of the flight sheet.
    panels: panels.toSorted((a, b) => perHour(b) - perHour(a) || turbulentM2(b) - turbulentM2(a)),
    labourElsewhere: elsewhere,
  };
}

type Told = (probe: string) => ProbeFlight;

function toldBy(view: FlightView, sheet: FlightSheet): Told {
  const own = view.state.sheet;
  const always =
    (verdict: NotEligible): Told =>
    () => ({ verdict, entries: [] });
  if (own === null) return always('noFlightSheet');
  if (!isSameAircraft(own, sheet)) return always('otherAircraft');
  const flights = probeFlights(view);
  return (probe) => flights.get(probe) ?? { verdict: 'noSuchProbe', entries: [] };
}

function chronicProbe({ id, panel, area }: Probe, told: readonly Told[]): ChronicProbe {
  const flights = told.map((tell) => tell(id));
  const turbulent = flights.filter(({ verdict }) => verdict === 'turbulent').length;
  const eligible = turbulent + flights.filter(({ verdict }) => verdict === 'notTurbulent').length;
  const leftOut = new Map<NotEligible, number>();
  for (const { verdict } of flights) {
    if (verdict === 'turbulent' || verdict === 'notTurbulent') continue;
    leftOut.set(verdict, (leftOut.get(verdict) ?? 0) + 1);
  }
  const entries = distinct(flights.flatMap((flight) => flight.entries));
  return {
    probe: id,
    panel,
    areaM2: Math.max(0, measureSi(area, 'area') ?? 0),
    record:
      eligible === 0
        ? { kind: 'noAnswer', because: 'noEligibleFlight', entries }
        : {
            kind: 'answer',
            value: {
              turbulentFlights: turbulent,
              eligibleFlights: eligible,
              turbulentFraction: turbulent / eligible,
            },
            how: { entries, method: 'turbulentOverEligible', broken: [] },
          },
    leftOut: [...leftOut].map(([because, count]) => ({ because, flights: count })),
  };
}

function turbulentAreaOf(own: readonly ChronicProbe[]): ChronicPanel['turbulentArea'] {
  if (own.length === 0) return { kind: 'noAnswer', because: 'noProbe', entries: [] };
  const counted = own.flatMap(({ areaM2, record }) =>
    record.kind === 'answer' ? [{ areaM2, ...record.value, entries: record.how.entries }] : [],
  );
  if (counted.length === 0) {
    return { kind: 'noAnswer', because: 'noEligibleFlight', entries: [] };
  }
  return {
    kind: 'answer',
    value: {
      turbulentAreaM2: counted.reduce(
        (total, one) => total + one.areaM2 * one.turbulentFraction,
        0,
      ),
      probes: counted.length,
      fewestFlights: Math.min(...counted.map(({ eligibleFlights }) => eligibleFlights)),
    },
    how: {
      entries: distinct(counted.flatMap(({ entries }) => entries)),
      method: 'areaTimesRate',
      broken: [],
    },
  };
}

function rankOf(area: ChronicPanel['turbulentArea'], labour: PanelLabour): ChronicPanel['rank'] {
  if (area.kind === 'noAnswer') return area;
  const { entries } = area.how;
  if (area.value.turbulentAreaM2 === 0) {
    return { kind: 'noAnswer', because: 'neverTurbulent', entries };
  }
  if (labour.kind === 'noAnswer' || !(labour.value.labourH > 0)) {
    return { kind: 'noAnswer', because: 'noLabourStated', entries };
  }
  return {
    kind: 'answer',
    value: { areaM2PerH: area.value.turbulentAreaM2 / labour.value.labourH },
    how: {
      entries: distinct([...entries, ...labour.how.entries]),
      method: 'areaTimesRatePerHour',
      broken: [],
    },
  };
}

function perHour({ rank }: ChronicPanel): number {
  return rank.kind === 'answer' ? rank.value.areaM2PerH : 0;
}

function turbulentM2({ turbulentArea }: ChronicPanel): number {
  return turbulentArea.kind === 'answer' ? turbulentArea.value.turbulentAreaM2 : 0;
}
