/** A place in millimetres from the top left corner of the screen. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Where everything of Fly stands. A place is `null` where the class has no room for it. */
export interface Places {
  readonly top: Place;
  readonly opens: Place;
  readonly remind: Place;
  readonly phases: Place;
  readonly theme: Place | null;
  readonly tiles: Place;
  readonly undo: Place;
  readonly back: Place;
  readonly live: Place;
  readonly wing: Place | null;
  readonly states: Place | null;
  readonly entries: Place;
  /** Where a pad of keys or tiles stands while it is open. */
  readonly pad: Place;
  /** Beside an open pad: what is being entered. */
  readonly echo: Place;
  readonly query: Place;
  readonly queryKeys: Place;
  /** Where every event and the log stand: all the room below the open intervals. */
  readonly full: Place;
  /** Where a pad of cells with controls beside it stands. */
  readonly cells: Place;
  /** Beside a pad of cells: what they are set to, and Enter. */
  readonly controls: Place;
  /** The detail panel, and every other panel of chips. */
  readonly panel: Place;
}
