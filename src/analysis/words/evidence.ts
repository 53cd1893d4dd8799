import { feetFromMetres, feetPerMinuteFromMetresPerSecond } from '../../aero/conversions.ts';
import { numberWords } from '../../record/readingWords.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import type { AirLook } from '../encounters/airDepartures.ts';
import type { Evidence } from '../encounters/evidence.ts';

const CANDIDATES: Readonly<Record<Evidence['candidate'], string>> = {
  moisture: 'moisture',
  suctionChange: 'suction moved',
  offCondition: 'off condition',
  wedge: 'wedge of neighbours',
  chronic: 'the same probe on earlier flights',
  root: 'root first',
  unexplained: 'unexplained',
};

export function candidateWords(candidate: Evidence['candidate']): string {
  return CANDIDATES[candidate];
}

/** What speaks for one candidate, in the trade's words. Evidence, never a verdict; `null` where nothing does. */
export function evidenceWords(evidence: Evidence, sheet: FlightSheet | null): string | null {
  const name = candidateWords(evidence.candidate);
  switch (evidence.candidate) {
    case 'moisture': {
      if (evidence.facts === null) return null;
      const { label, sinceEntryS, sinceExitS } = evidence.facts;
      const which = label === '' ? name : `${name} ${label}`;
      return sinceExitS === null
        ? `${which}, ${seconds(sinceEntryS)} after entry`
        : `${which}, ${seconds(sinceExitS)} after exit`;
    }
    case 'suctionChange': {
      if (evidence.facts === null) return null;
      const { beforeS, setting, byCommand } = evidence.facts;
      const moved = beforeS === null ? [] : [`${seconds(beforeS)} before`];
      const to = setting === null ? [] : [`to ${setting}`];
      return [name, ...to, ...moved, ...(byCommand ? ['called by command'] : [])].join(', ');
    }
    case 'offCondition':
      return evidence.facts === null
        ? null
        : `${name}: ${evidence.facts.looks.map((look) => airWords(look, sheet)).join(', ')}`;
    case 'wedge': {
      if (evidence.facts === null) return null;
      const { stretch, neverLaminar } = evidence.facts;
      return `${name}: ${stretch.join(' ')}, of which ${neverLaminar.join(' ')} never laminar since suction on`;
    }
    case 'chronic':
      return evidence.facts === null
        ? null
        : `${name}: ${evidence.facts.probes
            .map(
              (one) =>
                `${one.probe} turbulent in ${one.turbulentFlights} of ${one.eligibleFlights}`,
            )
            .join(', ')}`;
    case 'root': {
      if (evidence.facts === null) return null;
      const { stretch, always } = evidence.facts;
      return `${name}: ${stretch.join(' ')}${always ? ', never laminar since suction on' : ''}`;
    }
    case 'unexplained':
      return evidence.facts === null ? null : name;
  }
}

function airWords({ field, departure, tolerance }: AirLook, sheet: FlightSheet | null): string {
  const isFeet = sheet?.heightUnit === 'ft';
  const told = (words: string, unit: string, factor: number, places: number): string =>
    `${words} ${signed(factor * departure, places)} (limit ${numberWords(factor * tolerance, places)})${unit}`;
  switch (field) {
    case 'mach':
      return told('Mach', '', 1, 3);
    case 'machRate':
      return told('Mach drift', ' a minute', 60, 4);
    case 'pressureAltitude':
      return isFeet ? told('height', ' ft', feetFromMetres(1), 0) : told('height', ' m', 1, 0);
    case 'altitudeRate':
      return isFeet
        ? told('climb', ' ft/min', feetPerMinuteFromMetresPerSecond(1), 0)
        : told('climb', ' m/s', 1, 2);
    default:
      return field;
  }
}

function signed(value: number, places: number): string {
  return value > 0 ? `+${numberWords(value, places)}` : numberWords(value, places);
}

function seconds(durationS: number): string {
  return `${numberWords(durationS, 0)}\u00a0s`;
}
