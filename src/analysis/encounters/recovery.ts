import { kaplanMeier, type SurvivalCurve } from '../../aero/statistics/survival.ts';
import type { FlightView } from '../../record/flight.ts';
import { WINGS, type Wing } from '../../record/sheet.ts';
import type { Answer } from '../answer.ts';
import { byOpening } from './flightOrder.ts';
import { encounters, type Encounter } from './encounters.ts';
import type { WingEncounter } from './lags.ts';
import { distinct, type NoLoss } from './lossLags.ts';
import type { NoRecovery } from './recoveryLags.ts';
import type { LagGate, Watched } from './wingInMoisture.ts';

/** Times of one wing over many encounters; an encounter counts once. */
export interface EncounterTimes {
  /** Each as watched, in order of flight and entry: the raw list stands beside any curve. */
  readonly outcomes: readonly WatchedEncounter[];
  /** Encounters of which this time cannot be asked, by reason. */
  readonly leftOut: readonly { readonly because: NotTimed; readonly encounters: number }[];
  readonly curve: Answer<SurvivalCurve, 'noEncounter' | 'fewEvents', 'kaplanMeier'>;
}

type NotTimed = NoLoss | NoRecovery | LagGate;

export interface WatchedEncounter {
  /** Place of the flight among those given, by time of opening. */
  readonly flight: number;
  readonly label: string;
  readonly durationS: number;
  /** False where watching ended first. */
  readonly observed: boolean;
  readonly ended: Watched['ended'];
}

export interface RecoveryTimes {
  readonly loss: Readonly<Record<Wing, EncounterTimes>>;
  readonly recoverySustained: Readonly<Record<Wing, EncounterTimes>>;
  readonly recoveryToCount: Readonly<Record<Wing, EncounterTimes>>;
}

/** Time to loss and to recovery over every encounter of one flight or several, wing by wing. */
export function recoveryTimes(views: readonly FlightView[]): RecoveryTimes {
  const met = byOpening(views).flatMap((view, flight) =>
    encounters(view).map((encounter) => ({ flight, encounter })),
  );
  const times = (of: Take): Readonly<Record<Wing, EncounterTimes>> => {
    const [left, right] = WINGS;
    return { L: timesOf(met, left, of), R: timesOf(met, right, of) };
  };
  return {
    loss: times(({ loss: { first, watched } }) => ({ answer: first, watched })),
    recoverySustained: times(({ recovery: { sustained, sustainedWatch } }) => ({
      answer: sustained,
      watched: sustainedWatch,
    })),
    recoveryToCount: times(({ recovery: { toCount, toCountWatch } }) => ({
      answer: toCount,
      watched: toCountWatch,
    })),
  };
}

type Take = (wing: WingEncounter) => {
  readonly answer: Answer<unknown, NoLoss | NoRecovery, string, LagGate>;
  readonly watched: Watched | null;
};

function timesOf(
  met: readonly { readonly flight: number; readonly encounter: Encounter }[],
  wing: Wing,
  take: Take,
): EncounterTimes {
  const outcomes: WatchedEncounter[] = [];
  const leftOut = new Map<NotTimed, number>();
  const entries = [];
  for (const { flight, encounter } of met) {
    const { answer, watched } = take(encounter.wings[wing]);
    entries.push(...(answer.kind === 'answer' ? answer.how.entries : answer.entries));
    // A struck lag is no time: neither its event nor its length is sure.
    const because = answer.kind === 'answer' ? answer.how.broken[0] : answer.because;
    if (because !== undefined && (watched === null || answer.kind === 'answer')) {
      leftOut.set(because, (leftOut.get(because) ?? 0) + 1);
    } else if (watched !== null) {
      const { watchedS, ended } = watched;
      const observed = ended === 'event';
      outcomes.push({ flight, label: encounter.label, durationS: watchedS, observed, ended });
    }
  }
  return {
    outcomes,
    leftOut: [...leftOut].map(([because, count]) => ({ because, encounters: count })),
    curve: curveOf(outcomes, distinct(entries)),
  };
}

function curveOf(
  outcomes: readonly WatchedEncounter[],
  entries: ReturnType<typeof distinct>,
): EncounterTimes['curve'] {
  if (outcomes.length === 0) return { kind: 'noAnswer', because: 'noEncounter', entries };
  const curve = kaplanMeier(
    outcomes.map(({ durationS, observed }) => ({ duration: durationS, observed })),
  );
  if (!curve.enoughEvents) return { kind: 'noAnswer', because: 'fewEvents', entries };
  return { kind: 'answer', value: curve, how: { entries, method: 'kaplanMeier', broken: [] } };
}
