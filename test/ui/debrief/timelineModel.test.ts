import { describe, expect, it } from 'vitest';
import { liveHistory } from '../../../src/analysis/liveEstimate.ts';
import { pointResults } from '../../../src/analysis/testPoints.ts';
import { epochMs } from '../../../src/record/brand.ts';
import { viewOf } from '../../../src/record/flight.ts';
import { axisTimeOf } from '../../../src/ui/debrief/axisTime.ts';
import { isStruck } from '../../../src/ui/debrief/standing.ts';
import { EVERY_ROW, filtered, rowsOf, sorted } from '../../../src/ui/debrief/table/rows.ts';
import { timeBaseOf } from '../../../src/ui/debrief/timeBase.ts';
import { buildModel } from '../../../src/ui/debrief/timeline/buildModel.ts';
import { markAt, placeOf } from '../../../src/ui/debrief/timeline/hitTest.ts';
import { chartLayout } from '../../../src/ui/debrief/timeline/laneLayout.ts';
import { stepFrom } from '../../../src/ui/debrief/timeline/markSteps.ts';
import { readerText, spansByEntry } from '../../../src/ui/debrief/timeline/readerText.ts';
import { scriptA } from '../../flights/flightA.ts';
import { flightOfScript } from '../../flights/scriptToEntries.ts';

const { entries, idOf } = flightOfScript(scriptA);
const view = viewOf(entries);
const base = timeBaseOf(view.state);
const model = buildModel({
  view,
  base,
  estimates: liveHistory(view, epochMs(0)),
  results: pointResults(view),
});
const layout = chartLayout(model.lanes, { widthPx: 912, heightPx: 500, namesPx: 112 });
const scale = { window: model.airborneSpan, widthPx: 800 };
const chart = { model, layout, scale };
const at = (text: string): number => Date.parse(text);
const UTC = axisTimeOf('utc', { takeOff: null, hack: null });
const idOfLine = (n: number) => {
  const id = idOf.get(n);
  if (id === undefined) {
    throw new RangeError(`the script has no line ${n}`);
  }
  return id;
};
const within = (shown: number | null | undefined, utc: string): void => {
  // One offset serves both hacks (0.6 s and 1.1 s), so a time may be half of their difference off.
  expect(Math.abs((shown ?? Number.NaN) - at(utc))).toBeLessThanOrEqual(300);
};

describe('the timeline of flight A', () => {
  it('has its lanes in their fixed order, one for each panel', () => {
    expect(model.lanes.map(({ id }) => id)).toEqual([
      'phase',
      'covers',
      'moisture',
      'suction',
      'sampler',
      ...['L1', 'L2', 'L3', 'L4', 'L5', 'L6', 'R1', 'R2', 'R3', 'R4', 'R5', 'R6'].map(
        (panel) => `panel:${panel}`,
      ),
      'fuel',
      'reduction',
      'notes',
    ]);
  });

  it('has one mark and one row for each entry that stands, and none for a withdrawn one', () => {
    const standing = view.standing.filter((one) => !isStruck(one));
    const rows = rowsOf(view, base);
    expect(model.marks).toHaveLength(standing.length);
    expect(rows.map(({ id }) => id)).toEqual(model.marks.map(({ entry }) => entry));
    expect(rows.some(({ id }) => id === idOfLine(60))).toBe(false);
  });

  it('stands each encounter where the script has it', () => {
    const moisture = model.spans.filter(({ lane }) => lane === 'moisture');
    expect(moisture.map(({ words }) => words.split(',')[0])).toEqual(['M1', 'M2', 'M3']);
    within(moisture[0]?.from, '2032-06-02T23:10:42Z');
    within(moisture[0]?.to, '2032-06-02T23:16:20Z');
    within(moisture[1]?.from, '2032-06-03T00:03:30Z');
  });

  it('whiskers the late moisture entry by its doubt of 20 s', () => {
    const late = model.marks.find(({ entry }) => entry === idOfLine(101));
    expect(late?.late).toBe(true);
    expect(late?.whiskerS).toBe(20);
    expect(model.marks.find(({ entry }) => entry === idOfLine(59))?.whiskerS).toBeNull();
  });

  it('keeps the flight in view though a laboratory answered five days later', () => {
    expect(model.flightSpan.to).toBeLessThan(at('2032-06-03T06:00:00Z'));
    expect(model.extent.to).toBeGreaterThan(at('2032-06-08T15:00:00Z'));
    expect(model.airborneSpan.from).toBeGreaterThan(at('2032-06-02T21:40:00Z'));
  });

  it('never joins the reduction over a struck reading, and names the gate in the gap', () => {
    const struckAt = model.reduction.struck.map((one) => one.at);
    expect(struckAt.length).toBeGreaterThan(0);
    for (const stretch of model.reduction.stretches) {
      const [first, last] = [stretch[0]?.at ?? 0, stretch.at(-1)?.at ?? 0];
      expect(struckAt.filter((one) => one > first && one < last)).toEqual([]);
    }
    expect(model.reduction.struck.map(({ words }) => words)).toContain('moisture');
    expect(model.reduction.target).toBeCloseTo(29, 9);
    expect(model.reduction.low).toBeLessThanOrEqual(0);
  });

  it('draws a struck reading hollow in the fuel lane', () => {
    const hollow = (n: number) => model.marks.find(({ entry }) => entry === idOfLine(n))?.hollow;
    expect(hollow(66)).toBe(true); // inside M1
    expect(hollow(39)).toBe(false);
  });
});

describe('a touch on the chart', () => {
  it('finds every mark that stands alone at its own place', () => {
    const places = model.marks.map((mark) => ({ mark, place: placeOf(mark, chart) }));
    const alone = places.filter(
      ({ place }) =>
        place !== null &&
        places.filter(
          (other) =>
            other.place !== null &&
            Math.hypot(other.place.xPx - place.xPx, other.place.yPx - place.yPx) < 4,
        ).length === 1,
    );
    expect(alone.length).toBeGreaterThan(60);
    for (const { mark, place } of alone) {
      expect(place === null ? null : markAt(place, 26, chart)).toBe(mark.entry);
    }
  });

  it('takes a bar for the entry that opened it', () => {
    const wide = { ...chart, scale: { window: model.airborneSpan, widthPx: 20_000 } };
    const bar = model.spans.find(({ lane }) => lane === 'moisture');
    const box = layout.boxes.find(({ lane }) => lane.id === 'moisture');
    const middle = ((bar?.from ?? 0) + (bar?.to ?? 0)) / 2;
    const share =
      (middle - model.airborneSpan.from) / (model.airborneSpan.to - model.airborneSpan.from);
    const touch = { xPx: 112 + share * 20_000, yPx: (box?.topPx ?? 0) + 8 };
    expect(markAt(touch, 4, wide)).toBe(idOfLine(59));
  });
});

describe('the keyboard on the chart', () => {
  it('walks along time, changes lanes and jumps to the ends', () => {
    const here = model.marks.findIndex(({ entry }) => entry === idOfLine(59));
    const from = idOfLine(59);
    expect(stepFrom(model, from, 'later')).toBe(model.marks[here + 1]);
    expect(stepFrom(model, from, 'earlier')).toBe(model.marks[here - 1]);
    expect(stepFrom(model, from, 'laneDown')?.lane).toBe('suction');
    expect(stepFrom(model, from, 'laneUp')?.lane).toBe('covers');
    expect(stepFrom(model, from, 'laterInLane')?.entry).toBe(idOfLine(68));
    expect(stepFrom(model, from, 'first')).toBe(model.marks[0]);
    expect(stepFrom(model, from, 'last')).toBe(model.marks.at(-1));
  });

  it('says of a late entry when, which lane, how long, and its doubt', () => {
    const mark = model.marks.find(({ entry }) => entry === idOfLine(101));
    const standing = view.byId(idOfLine(101));
    const spans = spansByEntry(model).get(idOfLine(101)) ?? [];
    const words =
      mark === undefined || standing === undefined
        ? ''
        : readerText(mark, standing, view, spans, UTC);
    expect(words).toMatch(/^00 03 30 Zulu, Moisture, .*M2/);
    expect(words).toContain('closed, 4 minutes 15 seconds');
    expect(words).toMatch(/late plus or minus 20 seconds$/);
  });
});

describe('the rows of the table', () => {
  const rows = rowsOf(view, base);

  it('filter by lane and by words', () => {
    const moisture = filtered(rows, { ...EVERY_ROW, lane: 'moisture' });
    // M1 to M3 in and out: the withdrawn exit of M1 is not among them.
    expect(moisture).toHaveLength(6);
    expect(filtered(rows, { ...EVERY_ROW, words: 'height hold' })).toHaveLength(1);
  });

  it('sort by doubt without losing the order of time among equals', () => {
    const byDoubt = sorted(rows, { column: 'doubt', ascending: false });
    expect(byDoubt[0]?.id).toBe(idOfLine(101));
    const twos = byDoubt.filter(({ doubtS }) => doubtS === 2).map((row) => row.at);
    expect(twos).toEqual(twos.toSorted((a, b) => a - b));
  });
});

describe('the time base', () => {
  it('turns a typed time into the tablet’s own and back', () => {
    const rec = entries[0]?.rec ?? null;
    const shown = epochMs(at('2032-06-02T23:30:00Z'));
    const raw = base.raw(shown, rec);
    expect(raw).not.toBe(shown);
    expect(rec === null ? null : base.shown(raw, rec)).toBe(shown);
  });
});
