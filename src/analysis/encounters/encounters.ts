import type { FlightView } from '../../record/flight.ts';
import type { Timed } from '../../record/flightState.ts';
import { WINGS, type FlightSheet, type Wing } from '../../record/sheet.ts';
import type { Answer } from '../answer.ts';
import { pointResults } from '../testPoints.ts';
import { fuelForgone, type FuelForgoneAnswer } from './fuelForgone.ts';
import { wingEncounter, type WingEncounter } from './lags.ts';
import { distinct } from './lossLags.ts';
import { lostArea, lostTime, type LostAreaAnswer, type LostTimeAnswer } from './lostTime.ts';
import { isSuctionOn, settingsOf } from './settings.ts';
import { watchOf } from './watch.ts';
import { combinedDoubtS, seenAt, type Seen } from './wingInMoisture.ts';
import { wingLooks } from './wingLooks.ts';

/** One stay in moisture, and what it did to the flow. */
export interface Encounter {
  /** In the scribe's words; empty where none was given. */
  readonly label: string;
  readonly look: string | null;
  readonly cover: 'partial' | 'full' | null;
  readonly iceSeen: boolean | null;
  readonly entry: Seen;
  /** Null while it is open. */
  readonly exit: Seen | null;
  readonly inMoisture: Answer<
    { readonly durationS: number; readonly durationStandardUncertaintyS: number },
    'stillOpen',
    'exitLessEntry'
  >;
  readonly wings: Readonly<Record<Wing, WingEncounter>>;
  readonly lost: LostTimeAnswer;
  readonly area: LostAreaAnswer;
  readonly fuelForgone: FuelForgoneAnswer;
}

/** Every encounter of the flight in order of entry; none without a flight sheet, which names wings and doubts. */
export function encounters(view: FlightView): readonly Encounter[] {
  const { state } = view;
  const { sheet } = state;
  const watch = watchOf(view);
  if (sheet === null || watch.moisture.length === 0) return [];
  const looks = { L: wingLooks(state, sheet, 'L'), R: wingLooks(state, sheet, 'R') };
  const settings = settingsOf(state, sheet);
  const points = pointResults(view);
  return watch.moisture.map((interval): Encounter => {
    const { opened, closed, label } = interval;
    const of = { view, sheet, watch, interval };
    const [left, right] = pair((wing) =>
      wingEncounter({
        ...of,
        wing,
        looks: looks[wing],
        suctionOn: isSuctionOn(settings, wing, opened.at),
      }),
    );
    const lost = lostTime(interval, [left, right]);
    const area = lostArea(state, interval, lost);
    return {
      label,
      ...sightOf(view, opened),
      entry: seenAt(of, opened),
      exit: closed === null ? null : seenAt(of, closed),
      inMoisture: durationOf(of, opened, closed),
      wings: { L: left, R: right },
      lost,
      area,
      fuelForgone: fuelForgone({ entryAt: opened.at, lost, area, settings, points }),
    };
  });
}

function pair<Of>(make: (wing: Wing) => Of): readonly [left: Of, right: Of] {
  const [left, right] = WINGS;
  return [make(left), make(right)];
}

function sightOf(view: FlightView, { by }: Timed): Pick<Encounter, 'look' | 'cover' | 'iceSeen'> {
  const entered = view.byId(by)?.effective;
  if (entered?.kind !== 'moistureEntered') return { look: null, cover: null, iceSeen: null };
  const { look = null, cover = null, ice = null } = entered.body;
  return { look, cover, iceSeen: ice };
}

function durationOf(
  of: { readonly view: FlightView; readonly sheet: FlightSheet },
  opened: Timed,
  closed: Timed | null,
): Encounter['inMoisture'] {
  if (closed === null) return { kind: 'noAnswer', because: 'stillOpen', entries: [opened.by] };
  return {
    kind: 'answer',
    value: {
      durationS: (closed.at - opened.at) / 1000,
      durationStandardUncertaintyS: combinedDoubtS(of, opened, closed),
    },
    how: { entries: distinct([opened.by, closed.by]), method: 'exitLessEntry', broken: [] },
  };
}
