import type { EntryId } from '../../record/brand.ts';
import type { Answer } from '../answer.ts';
import type { LaminarTimeAnswer } from '../coverage/laminarResults.ts';
import type { Job } from './labourLog.ts';
import type { FuelFigure } from './spanResults.ts';

export interface PanelHours {
  /** As they were written together: work on two panels at once is not shared out here. */
  readonly panels: readonly string[];
  readonly labourH: number;
  readonly entries: readonly EntryId[];
}

export interface Labour {
  readonly labourH: number;
  /** Of them, hours that only a squawk states: asked for, not booked. */
  readonly asRaisedH: number;
  /** Most hours first. */
  readonly byPanel: readonly PanelHours[];
  readonly byTask: readonly Job[];
}

export type LabourGate =
  /** Some work has no hours: what is given is the least. */
  | 'hoursMissing'
  /** Work that names no squawk touches panels of a squawk whose own hours count: perhaps the same work. */
  | 'maybeTwice';

export type LabourAnswer = Answer<
  Labour,
  'nothingWritten' | 'noHoursGiven',
  'workDoneElseAsRaised',
  LabourGate
>;

export interface LabourPerHour {
  readonly flownH: number;
  readonly labourPerFlownHour: number;
}

export type NotFlown = 'nothingWritten' | 'noHoursGiven' | 'startNotWritten' | 'endNotWritten';

export interface FlightLabour {
  readonly work: LabourAnswer;
  /** Lift-off to touchdown. */
  readonly perAirborneHour: Answer<LabourPerHour, NotFlown, 'liftOffToTouchdown', LabourGate>;
  /** Blocks off to blocks on. */
  readonly perBlockHour: Answer<LabourPerHour, NotFlown, 'blocksOffToOn', LabourGate>;
}

/** Work between one flight and the next beside what the next flight showed. */
export interface LabourStep {
  readonly flight: string;
  readonly title: string;
  /** Hours since that flight landed and before the next one lifted off. */
  readonly work: LabourAnswer;
  readonly perAirborneHour: FlightLabour['perAirborneHour'];
  /** Null for the newest flight: what its work was worth the next one will show. */
  readonly next: {
    readonly flight: string;
    readonly title: string;
    readonly clearAir: LaminarTimeAnswer;
    /** Over all spans of suction of that flight. */
    readonly netSaving: Answer<
      Pick<FuelFigure, 'kg' | 'fraction'>,
      'noSuctionSpan' | 'noNetSaving',
      'sumOfSpans'
    >;
  } | null;
}
