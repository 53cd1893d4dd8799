import type { FlightView } from '../../record/flight.ts';
import { laminarByTime } from '../coverage/laminarByTime.ts';
import { byOpening } from '../encounters/flightOrder.ts';
import { labourOf, perHour } from './labour.ts';
import { jobsOf } from './labourLog.ts';
import type { LabourStep } from './labourResults.ts';
import { suctionSpans } from './spans.ts';

/**
 * Work after each flight beside what the next flight of the same aircraft showed: one flight late by construction. Work
 * written before lift-off stands in the record of the flight that it was done for.
 */
export function labourAcross(views: readonly FlightView[]): readonly LabourStep[] {
  const byAircraft = new Map<string, FlightView[]>();
  for (const view of byOpening(views)) {
    const mark = view.state.sheet?.aircraft.mark ?? '';
    byAircraft.set(mark, [...(byAircraft.get(mark) ?? []), view]);
  }
  return [...byAircraft.values()].flatMap(stepsOf);
}

function stepsOf(flights: readonly FlightView[]): readonly LabourStep[] {
  // All records are asked together: work done after the next landing still takes the place of its squawk's hours.
  const jobs = jobsOf(flights);
  return flights.map((view, place): LabourStep => {
    const next = flights[place + 1];
    const from = flownAt(view);
    const to = next === undefined ? Infinity : flownAt(next);
    const work = labourOf(jobs.filter(({ at }) => at >= from && at < to));
    const { liftOff, touchdown } = view.state.milestones;
    return {
      ...nameOf(view),
      work,
      perAirborneHour: perHour(work, liftOff, touchdown, 'liftOffToTouchdown'),
      next:
        next === undefined
          ? null
          : {
              ...nameOf(next),
              clearAir: laminarByTime(next).clearAir,
              netSaving: netSavingOf(next),
            },
    };
  });
}

type NextFlight = NonNullable<LabourStep['next']>;

function nameOf({ state }: FlightView): Pick<LabourStep, 'flight' | 'title'> {
  return { flight: state.flight ?? '', title: state.title };
}

/** From here on work is for the next flight. */
function flownAt({ state }: FlightView): number {
  return state.milestones.liftOff?.at ?? state.openedAt ?? 0;
}

function netSavingOf(view: FlightView): NextFlight['netSaving'] {
  const spans = suctionSpans(view);
  const entries = [
    ...new Set(
      spans.flatMap(({ saving }) =>
        saving.kind === 'answer' ? saving.how.entries : saving.entries,
      ),
    ),
  ];
  if (spans.length === 0) return { kind: 'noAnswer', because: 'noSuctionSpan', entries };
  let [netKg, turbulentKg] = [0, 0];
  for (const { saving } of spans) {
    if (saving.kind === 'noAnswer' || 'because' in saving.value.net) {
      return { kind: 'noAnswer', because: 'noNetSaving', entries };
    }
    netKg += saving.value.net.kg;
    turbulentKg += saving.value.turbulent.kg;
  }
  return {
    kind: 'answer',
    value: { kg: netKg, fraction: netKg / turbulentKg },
    how: { entries, method: 'sumOfSpans', broken: [] },
  };
}
