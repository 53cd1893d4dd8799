import { fitClock, offsetAt, type ClockModel } from '../aero/clocks.ts';
import { epochMs, type EpochMs, type RecorderId } from '../record/brand.ts';
import { TABLET_CLOCK, type FlightState, type TimeHack } from '../record/flightState.ts';

/** What the time hacks say about one clock. Offsets are what it showed less what the master showed. */
export interface ClockFit {
  readonly clock: string;
  /** Which tablet, for a tablet's clock; `null` for every other. */
  readonly rec: RecorderId | null;
  /** Clock that it is compared with; `null` without a hack. */
  readonly masterClock: string | null;
  readonly offsetsS: readonly number[];
  /** Offset and its standard uncertainty midway between the hacks; `null` without a hack. */
  readonly middle: null | {
    readonly at: EpochMs;
    readonly offsetS: number;
    readonly standardUncertaintyS: number;
  };
  /** Seconds gained an hour; `null` with fewer than two hacks. */
  readonly rate: null | {
    readonly sPerH: number;
    readonly standardUncertaintySPerH: number;
    readonly resolved: boolean;
  };
  readonly use: 'none' | 'offset' | 'offsetAndRate';
  /** Hacks that fit badly: the clock may have been set there. */
  readonly suspectedStepsAt: readonly EpochMs[];
  /** Offset of the flight's timeline, on which entries of this tablet stand; `null` for other clocks and without a hack. */
  readonly timeline: TimelineOffset | null;
}

export interface TimelineOffset {
  /** Hacks are reckoned in seconds from here, so that a fit does not lose milliseconds to the size of an epoch. */
  readonly originAt: EpochMs;
  readonly model: ClockModel;
}

/** Every tablet that took a hack, then every other clock of the flight sheet or of a hack but the master. */
export function clockFits(state: FlightState): readonly ClockFit[] {
  const master = state.hacks[0]?.masterClock ?? null;
  const hacks = state.hacks.filter((hack) => hack.masterClock === master);
  const recorders = [...new Set(hacks.map((hack) => hack.rec))];
  const tablets = recorders.map((rec) => {
    const own = hacks.filter((hack) => hack.rec === rec);
    const fit = fitOf(state, TABLET_CLOCK, rec, own);
    const offsets = own.map((hack) => ({ hack, shown: hack.at }));
    return { ...fit, timeline: timelineOffset(state, offsets) };
  });
  const named = [
    ...(state.sheet?.clocks ?? []).map((clock) => clock.id),
    ...hacks.flatMap((hack) => hack.shown.map((row) => row.clock)),
  ];
  const others = [...new Set(named)].filter(
    (clock) => clock !== master && (clock !== TABLET_CLOCK || tablets.length === 0),
  );
  return [...tablets, ...others.map((clock) => fitOf(state, clock, null, hacks))];
}

/**
 * The instant on the aircraft time base. `at` is a time of the flight's timeline (`Timed.at`) of an entry by `rec`; without
 * a hack by that tablet it stays as it is. For display: the record itself is never moved.
 */
export function masterTimeOf(fits: readonly ClockFit[], rec: RecorderId, at: EpochMs): EpochMs {
  const timeline = fits.find((fit) => fit.rec === rec)?.timeline ?? null;
  if (timeline === null) {
    return at;
  }
  const { offsetS } = offsetAt(timeline.model, (at - timeline.originAt) / 1000);
  return epochMs(Math.round(at - offsetS * 1000));
}

interface Comparison {
  readonly hack: TimeHack;
  readonly shown: EpochMs;
}

function fitOf(
  state: FlightState,
  clock: string,
  rec: RecorderId | null,
  hacks: readonly TimeHack[],
): ClockFit {
  const compared = hacks.flatMap((hack) =>
    hack.shown
      .filter((row) => row.clock === clock)
      .map(({ shown }): Comparison => ({ hack, shown })),
  );
  const offset = timelineOffset(state, compared, clock);
  const fit = {
    clock,
    rec,
    offsetsS: compared.map(({ hack, shown }) => (shown - hack.master) / 1000),
    timeline: null,
  };
  if (offset === null) {
    return {
      ...fit,
      masterClock: null,
      middle: null,
      rate: null,
      use: 'none',
      suspectedStepsAt: [],
    };
  }
  const { model } = offset;
  const rate = model.rate.kind === 'ready' ? model.rate.value : null;
  return {
    ...fit,
    masterClock: hacks[0]?.masterClock ?? null,
    middle: {
      at: instant(offset, model.middleS),
      offsetS: model.offsetAtMiddleS,
      standardUncertaintyS: model.offsetAtMiddleUncertaintyS,
    },
    rate: rate && {
      sPerH: rate.value * 3600,
      standardUncertaintySPerH: rate.standardUncertainty * 3600,
      resolved: rate.resolved,
    },
    use: rate?.resolved === true ? 'offsetAndRate' : 'offset',
    suspectedStepsAt: model.suspectedStepsAtS.map((s) => instant(offset, s)),
  };
}

/** A hack is as doubtful as the hand that took it and the step of the clock that was read. */
function timelineOffset(
  state: FlightState,
  compared: readonly Comparison[],
  clock = TABLET_CLOCK,
): TimelineOffset | null {
  const [first] = compared;
  if (first === undefined) {
    return null;
  }
  const originAt = first.hack.master;
  const resolutionS = state.sheet?.clocks.find(({ id }) => id === clock)?.resolutionS ?? 0;
  const handS = state.sheet?.timeDoubts.touchS ?? 0;
  // Two readings at one instant say nothing about a rate; the later one is the correction.
  const byInstant = new Map(compared.map((one) => [one.hack.master, one]));
  const model = fitClock(
    [...byInstant.values()].map(({ hack, shown }) => ({
      tabletS: (hack.master - originAt) / 1000,
      offsetS: (shown - hack.master) / 1000,
      standardUncertaintyS: Math.hypot(Math.abs(hack.doubtS ?? handS), resolutionS / Math.sqrt(12)),
    })),
  );
  return model.kind === 'clock' ? { originAt, model } : null;
}

function instant(offset: TimelineOffset, sinceS: number): EpochMs {
  return epochMs(Math.round(offset.originAt + sinceS * 1000));
}
