import type { EpochMs } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';
import type { Interval, SuctionChange, Timed } from '../../../record/flightState.ts';
import { items } from '../../../record/trail.ts';
import type { TimeBase } from '../timeBase.ts';
import { lengthWords } from '../timeWords.ts';
import type { LaneId } from './lanes.ts';
import type { Span } from './model.ts';

/** The shown time of anything that an entry dates. */
export type ShownTime = (timed: Timed) => EpochMs;

export function shownTimeOf(view: FlightView, base: TimeBase): ShownTime {
  return (timed) => {
    const by = view.byId(timed.by);
    return by === undefined ? timed.at : base.shown(timed.at, by.entry.rec);
  };
}

/** Ground, climb, cruise and descent from what the aircraft did; from the chosen tiles where nothing of it was marked. */
export function phaseSpans(view: FlightView, shown: ShownTime, until: EpochMs): readonly Span[] {
  const { milestones } = view.state;
  const turns: { readonly words: string; readonly from: Timed | undefined }[] = [
    { words: 'Taxi', from: milestones.blocksOff },
    { words: 'Climb', from: milestones.takeOffRoll ?? milestones.liftOff },
    { words: 'Cruise', from: milestones.levelOff },
    { words: 'Descent', from: milestones.topOfDescent },
    { words: 'Ground', from: milestones.touchdown },
  ];
  const known = turns.flatMap(({ words, from }) => (from === undefined ? [] : [{ words, from }]));
  return known.map(({ words, from }, index) => {
    const next = known[index + 1]?.from;
    const end = next === undefined ? (milestones.blocksOn ?? null) : next;
    return {
      lane: 'phase',
      from: shown(from),
      to: end === null ? until : shown(end),
      look: 'outline',
      words,
      opensWith: from.by,
      closesWith: end === null ? null : end.by,
    };
  });
}

const LANE_OF_INTERVAL: Readonly<Record<string, LaneId>> = {
  moisture: 'moisture',
  sampler: 'sampler',
  turbulence: 'notes',
};

/** Moisture, samples, turbulence and the crew's own intervals. */
export function intervalSpans(view: FlightView, shown: ShownTime): readonly Span[] {
  const spans: Span[] = [];
  for (const interval of items(view.state.intervals)) {
    const lane = interval.kind.startsWith('own:') ? 'notes' : LANE_OF_INTERVAL[interval.kind];
    if (lane !== undefined) {
      const from = shown(interval.opened);
      const to = interval.closed === null ? null : shown(interval.closed);
      spans.push({
        lane,
        from,
        to,
        look: 'solid',
        words: intervalWords(interval, from, to),
        opensWith: interval.opened.by,
        closesWith: interval.closed?.by ?? null,
      });
    }
  }
  return spans;
}

function intervalWords(interval: Interval, from: EpochMs, to: EpochMs | null): string {
  const name = interval.label === '' ? '' : interval.label;
  const length = to === null ? 'open' : lengthWords(to - from);
  return name === '' ? length : `${name}${to === null ? ' ' : ', '}${length}`;
}

/** One bar for each setting of the suction; which wings, and at what. */
export function suctionSpans(view: FlightView, shown: ShownTime): readonly Span[] {
  const spans: Span[] = [];
  const on = { L: false, R: false };
  let setting = '';
  let open: Span | null = null;
  for (const change of items(view.state.suctionChanges)) {
    for (const wing of change.wings) {
      on[wing] = change.what !== 'off';
    }
    setting = settingAfter(change, setting);
    const from = shown(change);
    if (open !== null) {
      spans.push({ ...open, to: from, closesWith: change.by });
    }
    const words = wingWords(on);
    open =
      words === ''
        ? null
        : {
            lane: 'suction',
            from,
            to: null,
            look: 'solid',
            words: setting === '' ? words : `${words}, ${setting}`,
            opensWith: change.by,
            closesWith: null,
          };
  }
  return open === null ? spans : [...spans, { ...open, words: `${open.words}, open` }];
}

function settingAfter(change: SuctionChange, before: string): string {
  const said = [change.setting, change.region].filter((words) => words !== null).join(', ');
  return said === '' ? before : said;
}

function wingWords(on: { readonly L: boolean; readonly R: boolean }): string {
  if (on.L && on.R) {
    return 'L and R';
  }
  return on.L ? 'L' : on.R ? 'R' : '';
}
