import { epochMs, type EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { StandingEntry } from '../../record/flightState.ts';
import { items } from '../../record/trail.ts';
import { displayUncertaintySi } from '../calibrate.ts';
import { clockFits, masterTimeOf, type ClockFit } from '../clocks.ts';
import { contextOf, isFuelReading } from '../reading/context.ts';
import { totalFlow } from '../reduceReading.ts';
import type { MarkKind } from './recordedSteps.ts';

/** What the scribe wrote down that a recorder shows too, on the aircraft time base. */
export interface ScribeSide {
  readonly readings: readonly ScribeFlow[];
  readonly marks: readonly ScribeMark[];
  /** Of the time base itself midway between the hacks; 0 without one. */
  readonly timeBaseUncertaintyS: number;
}

export interface ScribeFlow {
  readonly at: EpochMs;
  /** One standard uncertainty of the time, and of the sum of the gauges. */
  readonly doubtS: number;
  readonly kgPerS: number;
  readonly standardUncertaintyKgPerS: number;
}

export interface ScribeMark {
  readonly kind: MarkKind;
  readonly at: EpochMs;
  readonly doubtS: number;
}

const USUAL_TOUCH_S = 2;
const USUAL_READING_S = 5;
/** A wheel leaves the ground and the height beside it follows within so much (a choice). */
const GROUND_EFFECT_S = 5;

export function scribeSide(view: FlightView): ScribeSide {
  const fits = clockFits(view.state);
  return {
    readings: readingsOf(view, fits),
    marks: view.standing.flatMap((standing) => markOf(view, fits, standing)),
    timeBaseUncertaintyS: Math.max(
      0,
      ...fits.flatMap(({ rec, middle }) =>
        rec === null || middle === null ? [] : [middle.standardUncertaintyS],
      ),
    ),
  };
}

function readingsOf(view: FlightView, fits: readonly ClockFit[]): readonly ScribeFlow[] {
  const context = contextOf(view);
  if (context === null) return [];
  const doubtS = view.state.sheet?.timeDoubts.readingS ?? USUAL_READING_S;
  return [...items(view.state.glances)].flatMap((glance): readonly ScribeFlow[] => {
    if (!isFuelReading(context, glance)) return [];
    const flow = totalFlow(context.terms, glance);
    if (flow.kind === 'missing') return [];
    const doubts = flow.engines.flatMap(({ parts }) => [
      displayUncertaintySi(parts),
      parts.residualSi,
    ]);
    return [
      {
        at: masterTimeOf(fits, glance.rec, glance.at),
        doubtS,
        kgPerS: flow.kgPerS,
        standardUncertaintyKgPerS: Math.hypot(...doubts),
      },
    ];
  });
}

function markOf(
  view: FlightView,
  fits: readonly ClockFit[],
  { standing, effective, at }: StandingEntry,
): readonly ScribeMark[] {
  const kind = standing === 'stands' ? kindOf(effective.kind) : null;
  if (kind === null || effective.kind === 'unrecognised') return [];
  const touchS = view.state.sheet?.timeDoubts.touchS ?? USUAL_TOUCH_S;
  const stated = Math.abs(effective.body.doubtS ?? touchS);
  const onGround = kind === 'liftOff' || kind === 'touchdown';
  return [
    {
      kind,
      at: epochMs(masterTimeOf(fits, effective.rec, at)),
      doubtS: Math.hypot(stated, onGround ? GROUND_EFFECT_S : 0),
    },
  ];
}

function kindOf(kind: StandingEntry['effective']['kind']): MarkKind | null {
  switch (kind) {
    case 'engineStarted':
      return 'engineStart';
    case 'engineShutDown':
      return 'engineStop';
    case 'suctionUnitSwitched':
    case 'suctionTurnedOn':
    case 'suctionChanged':
    case 'suctionTurnedOff':
      return 'suctionFlow';
    case 'liftedOff':
      return 'liftOff';
    case 'touchedDown':
      return 'touchdown';
    default:
      return null;
  }
}
