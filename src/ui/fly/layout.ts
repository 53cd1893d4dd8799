import type { Place, Places } from './places.ts';
import { eight, eightWide, tall, thirteen, wide } from './layoutClasses.ts';

export type ScreenClass = 'eight' | 'eightWide' | 'tall' | 'wide' | 'thirteen';

export interface FlyLayout {
  readonly screenClass: ScreenClass;
  /** 1 suits 60 cm, 1.25 the 75 cm of a mounted 13 inch tablet; more where larger text is set and fits. */
  readonly textSize: number;
  readonly places: Places;
  readonly phaseColumns: number;
  readonly backKeys: 3 | 4;
  /** Places that give way while a pad is open, and while a panel is open. */
  readonly underPad: readonly (keyof Places)[];
  readonly underCells: readonly (keyof Places)[];
  readonly underPanel: readonly (keyof Places)[];
  /** Pad and panel share one place here, so that an open pad hides the panel. */
  readonly panelUnderPad: boolean;
  /** The screen is smaller than any class: everything is drawn smaller than fingers need. */
  readonly tooSmall: boolean;
  readonly pxPerMm: number;
}

export const EDGE_MM = 8;
export const GAP_MM = 4;
export const BOTTOM_MM = 12;

type Class = Omit<FlyLayout, 'tooSmall' | 'pxPerMm' | 'places' | 'panelUnderPad'> & {
  /** Largest text that the places of this class hold. */
  readonly largestText: number;
  readonly at: (widthMm: number, heightMm: number) => Places;
};

/** Largest first: the first class whose least size fits is taken, and stretched to the screen. */
const CLASSES: readonly (Class & {
  readonly leastWidthMm: number;
  readonly leastHeightMm: number;
})[] = [
  {
    leastWidthMm: 255,
    leastHeightMm: 190,
    screenClass: 'thirteen',
    largestText: 1.25,
    textSize: 1.25,
    at: thirteen,
    phaseColumns: 4,
    backKeys: 4,
    underPad: ['phases', 'theme', 'tiles', 'wing', 'states'],
    underCells: ['phases', 'theme', 'tiles', 'wing', 'states'],
    underPanel: ['wing'],
  },
  {
    leastWidthMm: 206,
    leastHeightMm: 151,
    screenClass: 'wide',
    largestText: 1.1,
    textSize: 1,
    at: wide,
    phaseColumns: 4,
    backKeys: 4,
    underPad: ['phases', 'theme', 'tiles', 'wing', 'states'],
    underCells: ['phases', 'theme', 'tiles', 'wing', 'states'],
    underPanel: ['wing', 'states'],
  },
  {
    leastWidthMm: 138,
    leastHeightMm: 222,
    screenClass: 'tall',
    largestText: 1.08,
    textSize: 1,
    at: tall,
    phaseColumns: 1,
    backKeys: 4,
    underPad: ['phases', 'tiles', 'wing', 'states'],
    underCells: ['remind', 'phases', 'tiles', 'wing', 'states'],
    underPanel: ['wing', 'states'],
  },
  {
    leastWidthMm: 170,
    leastHeightMm: 115,
    screenClass: 'eightWide',
    largestText: 1,
    textSize: 1,
    at: eightWide,
    phaseColumns: 2,
    backKeys: 3,
    underPad: ['tiles', 'undo', 'back', 'live', 'remind', 'phases'],
    underCells: ['tiles', 'undo', 'back', 'live', 'remind', 'phases'],
    underPanel: ['live', 'remind', 'phases'],
  },
  {
    leastWidthMm: 108,
    leastHeightMm: 174,
    screenClass: 'eight',
    largestText: 1,
    textSize: 1,
    at: eight,
    phaseColumns: 4,
    backKeys: 3,
    underPad: ['live', 'remind', 'phases', 'tiles'],
    underCells: ['live', 'remind', 'phases', 'tiles'],
    underPanel: ['live', 'remind', 'phases'],
  },
];

/**
 * The layout of Fly on a screen of this size; `hand` is the one that touches. Larger text is taken as far as the class
 * holds it: a target of Fly never gives up size or gap for it, and nothing may scroll.
 */
export function flyLayout(
  screen: { readonly widthMm: number; readonly heightMm: number; readonly pxPerMm: number },
  hand: 'right' | 'left',
  textSize = 1,
): FlyLayout {
  const fitting = CLASSES.find(
    (each) => screen.widthMm >= each.leastWidthMm && screen.heightMm >= each.leastHeightMm,
  );
  if (fitting !== undefined) {
    return laidOut(fitting, screen.widthMm, screen.heightMm, hand, {
      textSize: Math.min(Math.max(textSize, fitting.textSize), fitting.largestText),
      tooSmall: false,
      pxPerMm: screen.pxPerMm,
    });
  }
  const name = screen.widthMm > screen.heightMm ? 'eightWide' : 'eight';
  const least = CLASSES.find((each) => each.screenClass === name) ?? CLASSES[0];
  if (least === undefined) {
    throw new RangeError('there must be a class of screens');
  }
  const shrink = Math.min(
    screen.widthMm / least.leastWidthMm,
    screen.heightMm / least.leastHeightMm,
  );
  return laidOut(least, screen.widthMm / shrink, screen.heightMm / shrink, hand, {
    textSize: least.textSize,
    tooSmall: true,
    pxPerMm: screen.pxPerMm * shrink,
  });
}

function laidOut(
  chosen: Class,
  widthMm: number,
  heightMm: number,
  hand: 'right' | 'left',
  screen: { readonly textSize: number; readonly tooSmall: boolean; readonly pxPerMm: number },
): FlyLayout {
  const { at, screenClass, phaseColumns, backKeys, underPad, underCells, underPanel } = chosen;
  const places = at(widthMm, heightMm);
  const { full: pad, panel } = places;
  const apart =
    pad.x + pad.w <= panel.x ||
    panel.x + panel.w <= pad.x ||
    pad.y + pad.h <= panel.y ||
    panel.y + panel.h <= pad.y;
  return {
    screenClass,
    phaseColumns,
    backKeys,
    underPad,
    underCells,
    underPanel,
    panelUnderPad: !apart,
    places: hand === 'left' ? mirrored(places, widthMm) : places,
    ...screen,
  };
}

function mirrored(places: Places, widthMm: number): Places {
  const turn = (place: Place): Place => ({ ...place, x: widthMm - place.x - place.w });
  const turnIf = (place: Place | null): Place | null => (place === null ? null : turn(place));
  return {
    top: turn(places.top),
    opens: turn(places.opens),
    remind: turn(places.remind),
    phases: turn(places.phases),
    theme: turnIf(places.theme),
    tiles: turn(places.tiles),
    undo: turn(places.undo),
    back: turn(places.back),
    live: turn(places.live),
    wing: turnIf(places.wing),
    states: turnIf(places.states),
    entries: turn(places.entries),
    pad: turn(places.pad),
    echo: turn(places.echo),
    query: turn(places.query),
    queryKeys: turn(places.queryKeys),
    full: turn(places.full),
    cells: turn(places.cells),
    controls: turn(places.controls),
    panel: turn(places.panel),
  };
}
