import type { KnownKind } from '../../src/record/kinds.ts';
import type { FlightPhase } from '../../src/record/sheet.ts';
import type { Scribe } from './scribe.ts';

/** Page time before an event in which its tile is looked for. */
const REACH_MS = 4200;
const MOST_PAGES = 20;

/** Where the usual pages have the tile of an act, and whether that tile must show something open to mean it. */
const TILES: Readonly<Record<string, readonly [tile: string, open: boolean | null]>> = {
  'rec-on': ['recorder', false],
  'rec-off': ['recorder', true],
  'photo-on': ['photo', false],
  'photo-off': ['photo', true],
  'engine-start': ['engine', null],
  'engine-stop': ['shutdown', null],
  'blocks-off': ['blocks', false],
  'blocks-on': ['blocks', true],
  roll: ['roll', null],
  liftoff: ['liftOff', null],
  'gear-up': ['gear', false],
  'gear-down': ['gear', true],
  'covers-left': ['coversLeft', null],
  'covers-right': ['coversRight', null],
  level: ['level', null],
  'unit-on': ['unit', false],
  'unit-off': ['unit', true],
  'cond-on': ['condition', false],
  'point-start': ['point', false],
  'point-end': ['point', true],
  'suction-on': ['suction', false],
  'suction-change': ['suction', true],
  'cloud-in': ['cloud', false],
  'cloud-out': ['cloud', true],
  'sampler-open': ['sample', false],
  'sampler-close': ['sample', true],
  'turn-start': ['turn', false],
  gain: ['gain', null],
  loss: ['loss', null],
  descend: ['descent', null],
  touchdown: ['touchdown', null],
  hack: ['hack', null],
  note: ['note', null],
};

/** The page of tiles on which a scribe would look for a kind; kinds that are not here are found from any page. */
const PAGES: Readonly<Partial<Record<KnownKind, FlightPhase>>> = {
  recorderSwitched: 'ground',
  photoPanelSwitched: 'ground',
  engineStarted: 'ground',
  blocksOff: 'ground',
  takeOffRolled: 'ground',
  liftedOff: 'ground',
  gearMoved: 'climb',
  coversReleased: 'climb',
  levelledOff: 'climb',
  conditionReached: 'cruise',
  testPointStarted: 'cruise',
  testPointEnded: 'cruise',
  fuelRead: 'cruise',
  suctionTurnedOn: 'cruise',
  suctionChanged: 'cruise',
  laminarGained: 'cruise',
  laminarLost: 'cruise',
  moistureEntered: 'cruise',
  moistureExited: 'cruise',
  samplerOpened: 'cruise',
  samplerClosed: 'cruise',
  descentBegun: 'descent',
  touchedDown: 'descent',
  blocksOn: 'descent',
  engineShutDown: 'descent',
  timeHackTaken: 'descent',
};

/** Finds tiles and events on Fly and touches them at their time. */
export class FlyEvents {
  private page: FlightPhase = 'ground';
  private readonly scribe: Scribe;

  constructor(scribe: Scribe) {
    this.scribe = scribe;
  }

  /** Comes to the screen a little before an event, puts away what was left open, and turns to its page of tiles. */
  async reach(kind: KnownKind, atMs: number): Promise<void> {
    const { scribe } = this;
    // Before time passes: a panel that is left open goes home by itself, and whatever stands under it is touched then.
    if (scribe.hasTime(atMs, 2) && (await scribe.isThere('panel-done'))) {
      await scribe.tap('panel-done');
    }
    scribe.waitUntil(atMs - REACH_MS);
    const page = PAGES[kind];
    if (page !== undefined && page !== this.page) {
      const before = await scribe.tablet.saved();
      await scribe.tap(`phase-${page}`);
      await scribe.tablet.savedBeyond(before);
      this.page = page;
    }
  }

  /** One touch, one event: on its tile where that tile means it now, else on the pad of every event. */
  async touch(act: string, atMs: number): Promise<void> {
    const { scribe } = this;
    const [tile, mustBeOpen] = TILES[act] ?? [];
    const face = (await scribe.tablet.targets()).find((each) => each.act === `tile-${tile}`);
    const isOpen = /\d:\d\d$/.test(face?.words ?? '');
    const before = await scribe.tablet.saved();
    if (face !== undefined && (mustBeOpen === null || mustBeOpen === isOpen)) {
      await scribe.tapAt(face.act, atMs);
    } else {
      await this.turnTo(`act-${act}`);
      await scribe.tapAt(`act-${act}`, atMs);
    }
    await scribe.tablet.savedBeyond(before);
  }

  /** Opens a pad by its tile, wherever that is. */
  async openPad(tile: string): Promise<void> {
    const act = `tile-${tile}`;
    if (!(await this.scribe.isThere(act))) {
      await this.turnTo(act);
    }
    await this.scribe.tap(act);
  }

  private async turnTo(act: string): Promise<void> {
    await this.scribe.tap('tile-more');
    for (let page = 0; page < MOST_PAGES; page += 1) {
      if (await this.scribe.isThere(act)) {
        return;
      }
      await this.scribe.tap('more-next');
    }
    throw new Error(`the pad of every event has no ${act}`);
  }
}
