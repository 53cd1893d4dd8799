import type { EntryOf } from '../entry.ts';
import {
  TABLET_CLOCK,
  type CoverState,
  type Milestones,
  type TimeHack,
  type Timed,
} from '../flightState.ts';
import { wingOfRole } from '../roles.ts';
import type { FlightSheet } from '../sheet.ts';
import { dimensionOf } from '../sheetMeasure.ts';
import { extended, firstOf, items, appended } from '../trail.ts';
import { doubted, type Fold, withMemory, withState } from './fold.ts';
import { sheetInForce } from './calibrations.ts';
import { sheetIndex } from './sheetIndex.ts';
import { wingsNamed } from './suction.ts';
import { askedForPanels } from './wing.ts';

/** The first opening in time gives the flight its name; another one, from a merge, changes nothing. */
export function flightOpened(fold: Fold, entry: EntryOf<'flightOpened'>, timed: Timed): Fold {
  if (fold.state.openedAt !== null) {
    return fold;
  }
  const { nature, title, date, sheet } = entry.body;
  const scribe = { author: entry.author, role: entry.role };
  const next = withState(fold, { flight: entry.flight, nature, title, date, scribe });
  return withSheet(withState(next, { openedAt: timed.at }), sheet);
}

/** From here on entries are read with this sheet; covers of panels that are new to it are unknown. */
export function withSheet(fold: Fold, sheet: FlightSheet): Fold {
  const unknown = sheet.panels.map((panel): [string, CoverState] => [panel.id, 'unknown']);
  const covers = { ...Object.fromEntries(unknown), ...fold.state.covers };
  const inForce = sheetInForce(fold, sheet);
  const next = withState(fold, { ...inForce, sheetAsWritten: sheet, covers });
  return withMemory(next, { sheet: sheetIndex(inForce.sheet) });
}

/** What begins a flight is timed by its first entry, what ends it by its latest: a second approach comes to a second touchdown. */
const KEPT_FIRST: readonly (keyof Milestones)[] = [
  'blocksOff',
  'takeOffRoll',
  'liftOff',
  'gearUp',
  'levelOff',
];

export function milestone(fold: Fold, name: keyof Milestones, timed: Timed): Fold {
  const { milestones } = fold.state;
  return milestones[name] !== undefined && KEPT_FIRST.includes(name)
    ? fold
    : withState(fold, { milestones: { ...milestones, [name]: timed } });
}

/** Loading ends with the take-off; a weight in a unit of something else is none. */
export function preflightDone(fold: Fold, entry: EntryOf<'preflightDone'>, timed: Timed): Fold {
  const { rampWeight: weight } = entry.body;
  const { takeOffRoll, liftOff } = fold.state.milestones;
  const loaded =
    weight !== undefined &&
    dimensionOf(weight.unit) === 'mass' &&
    (takeOffRoll ?? liftOff) === undefined
      ? withState(fold, { rampWeight: { ...timed, weight } })
      : fold;
  return allCoversFitted(loaded, entry);
}

/** All covers fitted is all that a count can say; of some, nobody knows which. */
function allCoversFitted(fold: Fold, entry: EntryOf<'preflightDone'>): Fold {
  const { coversFitted, coversOf } = entry.body;
  if (coversFitted === undefined || coversFitted === 0 || coversFitted !== coversOf) {
    return fold;
  }
  const fitted = Object.keys(fold.state.covers).map((panel): [string, CoverState] => [
    panel,
    'fitted',
  ]);
  return withState(fold, { covers: Object.fromEntries(fitted) });
}

/** A release command is not a clear panel: what nobody has seen go is unknown from then on. */
export function coversReleased(fold: Fold, entry: EntryOf<'coversReleased'>, timed: Timed): Fold {
  const { wing, clear = [], hung = [] } = entry.body;
  const covers: Record<string, CoverState> = { ...fold.state.covers };
  for (const side of wingsNamed(wing)) {
    for (const panel of fold.memory.sheet.wings[side].panels) {
      if (covers[panel] === 'fitted') {
        covers[panel] = 'unknown';
      }
    }
  }
  clear.forEach((panel) => {
    covers[panel] = 'clear';
  });
  hung.forEach((panel) => {
    covers[panel] = 'hung';
  });
  const asked =
    fold.state.milestones.gearUp === undefined
      ? doubted(fold, timed, 'coversBeforeGearUp', wing)
      : fold;
  return withState(askedForPanels(asked, [...clear, ...hung], timed), { covers });
}

export function conditionReached(fold: Fold, timed: Timed): Fold {
  const covered = Object.entries(fold.state.covers)
    .filter(([, cover]) => cover === 'fitted' || cover === 'hung')
    .map(([panel]) => panel);
  const asked =
    covered.length > 0 ? doubted(fold, timed, 'conditionBeforeCovers', covered.join(' ')) : fold;
  return withState(asked, { condition: { reached: timed, lastReachedAt: timed.at } });
}

/** The pen of the flight's own log; an engineer's tablet passes a pen of its own. */
export function scribeChanged(fold: Fold, entry: EntryOf<'scribeChanged'>): Fold {
  if (wingOfRole(entry.body.role ?? entry.role) !== null || wingOfRole(entry.role) !== null) {
    return fold;
  }
  const role = entry.body.role ?? fold.state.scribe?.role ?? '';
  return withState(fold, { scribe: { author: entry.body.to, role } });
}

/**
 * @param shownByTablet the touch on the tablet's own clock, steps taken out; `timed.at` may have been moved onto another tablet
 */
export function timeHackTaken(
  fold: Fold,
  entry: EntryOf<'timeHackTaken'>,
  timed: Timed,
  shownByTablet: Timed['at'],
): Fold {
  const { hack, masterClock, master, shown } = entry.body;
  const taken: TimeHack = {
    ...timed,
    rec: entry.rec,
    hack,
    masterClock,
    master,
    shown: [
      { clock: TABLET_CLOCK, shown: shownByTablet },
      ...shown.filter((row) => row.clock !== TABLET_CLOCK),
    ],
  };
  return withState(fold, { hacks: [...fold.state.hacks, taken] });
}

export function markMade(fold: Fold, timed: Timed): Fold {
  return withState(fold, { openMarks: appended(fold.state.openMarks, timed) });
}

/** A note about a mark gives it its meaning. */
export function noted(fold: Fold, entry: EntryOf<'noted'>): Fold {
  if (entry.body.target === undefined) {
    return fold;
  }
  const marks = [...items(fold.state.openMarks)];
  const place = marks.findIndex((mark) => mark.by === entry.body.target);
  return place < 0
    ? fold
    : withState(fold, {
        openMarks: extended(firstOf(fold.state.openMarks, place), marks.slice(place + 1)),
      });
}
