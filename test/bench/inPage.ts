import uPlot from 'uplot';
import { openShelf } from '../../src/journal/idbJournal.ts';
import { browserClock } from '../../src/journal/stamp.ts';
import { epochMs, flightId } from '../../src/record/brand.ts';
import type { Entry } from '../../src/record/entry.ts';
import { startFlight } from '../../src/record/flight.ts';
import { axisTimeOf } from '../../src/ui/debrief/axisTime.ts';
import { buildModel } from '../../src/ui/debrief/timeline/buildModel.ts';
import { chartLayout } from '../../src/ui/debrief/timeline/laneLayout.ts';
import { paintTimeline } from '../../src/ui/debrief/timeline/paint.ts';
import { readRoles } from '../../src/ui/debrief/timeline/roles.ts';
import { timeBaseOf } from '../../src/ui/debrief/timeBase.ts';
import { manyEntries } from './manyEntries.ts';

/** Two ways to do the same, taken turn by turn so that a busy machine slows both alike; milliseconds each time. */
export interface Beside {
  readonly ours: readonly number[];
  readonly yardstick: readonly number[];
}

const WARM_UP = 30;

/** What the bench runs inside a page of the app's origin. */
export interface BenchInPage {
  /** Appends to a flight of this tablet, beside a bare strict transaction that adds the same bytes to two stores. */
  readonly appends: (flight: string, count: number) => Promise<Beside>;
  /** Redraws Debrief's chart at as many windows, beside a bare uPlot of as many points. */
  readonly redraws: (marks: number, windows: number) => Promise<Beside>;
}

async function appends(flight: string, count: number): Promise<Beside> {
  const clock = browserClock();
  const shelf = await openShelf({ clock, device: 'bench' });
  const journal = await shelf.journalOf(flightId(flight));
  const lines = journal.entries().map(({ line }) => line);
  const bare = await bareStores(lines);
  const ours: number[] = [];
  const yardstick: number[] = [];
  for (let turn = 0; turn < count + WARM_UP; turn += 1) {
    const from = performance.now();
    const entry = await journal.append({
      kind: 'noted',
      body: { words: `haze ahead, ${turn} of the day` },
      stamp: clock.stampNow(),
    });
    const between = performance.now();
    await bare.add(entry);
    const until = performance.now();
    if (turn >= WARM_UP) {
      ours.push(between - from);
      yardstick.push(until - between);
    }
  }
  await journal.close();
  bare.close();
  return { ours, yardstick };
}

/** The same two stores in a database beside, with as much in them, and nothing of ours on the way. */
async function bareStores(lines: readonly string[]) {
  const name = `bare-${crypto.randomUUID()}`;
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    const opening = indexedDB.open(name);
    opening.addEventListener('upgradeneeded', () => {
      opening.result.createObjectStore('lines');
      opening.result.createObjectStore('heads', { keyPath: 'rec' }).createIndex('flight', 'flight');
    });
    opening.addEventListener('success', () => resolve(opening.result));
    opening.addEventListener('error', () => reject(new Error('the database must open')));
  });
  const write = (work: (tx: IDBTransaction) => void) =>
    new Promise<void>((resolve, reject) => {
      const tx = database.transaction(['lines', 'heads'], 'readwrite', { durability: 'strict' });
      tx.addEventListener('complete', () => resolve());
      tx.addEventListener('abort', () => reject(new Error('the transaction must complete')));
      work(tx);
      tx.commit();
    });
  await write((tx) => {
    lines.forEach((line, index) => tx.objectStore('lines').add({ line }, ['before', index]));
  });
  return {
    add: ({ line, rec, seq, id, ord, flight: of }: Entry) =>
      write((tx) => {
        tx.objectStore('lines').add({ line }, [rec, seq]);
        tx.objectStore('heads').put({ rec, flight: of, seq, id, ord });
      }),
    close: () => {
      database.close();
      indexedDB.deleteDatabase(name);
    },
  };
}

const WIDTH_PX = 1200;
const HEIGHT_PX = 400;
const NAMES_PX = 112;

async function redraws(marks: number, windows: number): Promise<Beside> {
  const view = startFlight().add(manyEntries(marks));
  const base = timeBaseOf(view.state);
  const model = buildModel({ view, base, estimates: [], results: [] });
  const layout = chartLayout(model.lanes, {
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
    namesPx: NAMES_PX,
  });
  const canvas = document.createElement('canvas');
  canvas.width = WIDTH_PX;
  canvas.height = layout.heightPx;
  document.body.append(canvas);
  const zeros = { takeOff: model.airborneSpan.from, hack: null };
  const axis = axisTimeOf('utc', zeros);
  const under = axisTimeOf('fromTakeOff', zeros);
  const ctx = canvas.getContext('2d');
  if (ctx === null) throw new Error('there must be a canvas');
  const roles = readRoles(canvas);
  const plot = barePlot(model.marks.map(({ at }) => at / 1000));
  const ours: number[] = [];
  const yardstick: number[] = [];
  for (let turn = 0; turn < windows; turn += 1) {
    const window = windowOf(model.extent, turn / windows);
    const scale = { window, widthPx: WIDTH_PX - NAMES_PX };
    const from = performance.now();
    const chart = { model, layout, scale, axis, under, selected: null, isFocused: false };
    paintTimeline({ ctx, roles, ...chart }, 1);
    drawn(ctx);
    const between = performance.now();
    await plot.show(window.from / 1000, window.to / 1000);
    drawn(plot.ctx);
    ours.push(between - from);
    yardstick.push(performance.now() - between);
  }
  return { ours, yardstick };
}

/** Zooms from the whole flight down to a fiftieth of it, about its middle. */
function windowOf(extent: { readonly from: number; readonly to: number }, share: number) {
  const durationMs = (extent.to - extent.from) * Math.pow(1 / 50, share);
  const middle = (extent.from + extent.to) / 2;
  return {
    from: epochMs(Math.round(middle - durationMs / 2)),
    to: epochMs(Math.round(middle + durationMs / 2)),
  };
}

/** Reading one pixel back ends what a canvas only noted down. */
function drawn(ctx: CanvasRenderingContext2D): void {
  ctx.getImageData(0, 0, 1, 1);
}

function barePlot(times: readonly number[]) {
  const values = times.map((_, index) => 400 + (index % 40));
  const plot = new uPlot(
    { width: WIDTH_PX, height: HEIGHT_PX, series: [{}, { stroke: 'black' }] },
    [[...times], values],
    document.body,
  );
  return {
    ctx: plot.ctx,
    show: async (min: number, max: number) => {
      plot.setScale('x', { min, max });
      // uPlot draws in a microtask of its own, queued before this one.
      await Promise.resolve();
    },
  };
}

const benchInPage: BenchInPage = { appends, redraws };
Object.assign(globalThis, { benchInPage });
