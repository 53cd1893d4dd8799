import type { Measure } from './measure.ts';
import { WINGS, type FlightSheet, type Panel, type Probe, type Wing } from './sheet.ts';
import { doubledIds, doubt, positiveMeasure, withinSpan, type SheetDoubt } from './sheetDoubt.ts';
import { dimensionOf, inBase, measureWords, numberWords } from './sheetMeasure.ts';
import { panelAreaOnPlan, planAreaM2, wingPlanM } from './wingPlan.ts';

const WING_WORDS: Readonly<Record<Wing, string>> = { L: 'left', R: 'right' };
/** The wing map takes two rows of six a wing. */
const PANELS_A_WING = 12;
/** Areas are measured on a skin: a sum that is off by more than this share is a slip of the pen. Common practice, no source. */
const AREA_SLACK = 0.02;
/** Reference areas count the wing through the body or leave it out, so the sketch may differ by so much. Common practice, no source. */
const PLAN_SLACK = 0.15;

export function* wingDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  yield* planDoubts(sheet);
  yield* panelDoubts(sheet);
  yield* areaSumDoubts(sheet);
  yield* probeDoubts(sheet);
}

function* planDoubts({ aircraft }: FlightSheet): Generator<SheetDoubt> {
  const { planform, wingArea } = aircraft;
  if (planform === undefined) return;
  const lengths = [
    ['aircraft.planform.semiSpan', 'Half span of the wing', planform.semiSpan],
    ['aircraft.planform.rootChord', 'Root chord', planform.rootChord],
    ['aircraft.planform.tipChord', 'Tip chord', planform.tipChord],
  ] as const;
  for (const [path, name, length] of lengths) {
    yield* positiveMeasure(path, name, length, 'length');
  }
  yield* withinSpan(
    'aircraft.planform.leadingEdgeSweepDeg',
    'Sweep of the leading edge, degrees',
    planform.leadingEdgeSweepDeg,
    [-45, 70],
  );
  if (planform.tipChord.value > planform.rootChord.value && planform.rootChord.value > 0) {
    yield doubt(
      'aircraft.planform.tipChord',
      `Tip chord ${measureWords(planform.tipChord)} is longer than root chord ${measureWords(planform.rootChord)}.`,
    );
  }
  const plan = wingPlanM(planform);
  const unitM2 = inBase({ value: 1, unit: wingArea.unit });
  if (plan === null || unitM2 === null || !(wingArea.value > 0)) return;
  const sketched = planAreaM2(plan) / unitM2;
  if (Math.abs(sketched - wingArea.value) > PLAN_SLACK * wingArea.value) {
    yield doubt(
      'aircraft.planform',
      `Span and chords make a wing of ${inUnit(sketched, wingArea)}, the aircraft says ${measureWords(wingArea)}.`,
    );
  }
}

function* panelDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  if (sheet.panels.length === 0) {
    yield doubt('panels', 'No panels yet: the wing map stays empty.');
  }
  yield* doubledIds('panels', 'Panel', sheet.panels);
  for (const [index, panel] of sheet.panels.entries()) {
    yield* positiveMeasure(`panels.${index}.area`, `Panel ${panel.id}, area`, panel.area, 'area');
    const other: Wing = panel.wing === 'L' ? 'R' : 'L';
    if (panel.id.startsWith(other)) {
      yield doubt(
        `panels.${index}.wing`,
        `Panel ${panel.id} stands on the ${WING_WORDS[panel.wing]} wing.`,
      );
    }
    yield* spanDoubts(panel, index);
    yield* chordDoubts(panel, index);
    yield* onPlanDoubts(sheet, panel, index);
    if (panel.laminarToChordFraction !== undefined && !isShare(panel.laminarToChordFraction)) {
      yield doubt(
        `panels.${index}.laminarToChordFraction`,
        `Panel ${panel.id}: laminar to ${percent(panel.laminarToChordFraction)} of the chord, but a chord ends at 100 %.`,
      );
    }
  }
  for (const wing of WINGS) {
    const ofWing = sheet.panels.flatMap((panel, index) =>
      panel.wing === wing ? [{ panel, index }] : [],
    );
    if (ofWing.length > PANELS_A_WING) {
      yield doubt(
        'panels',
        `The ${WING_WORDS[wing]} wing has ${ofWing.length} panels, the wing map takes ${PANELS_A_WING}.`,
      );
    }
    yield* overlapDoubts(ofWing);
  }
}

function* spanDoubts(panel: Panel, index: number): Generator<SheetDoubt> {
  const { spanFromFraction: from, spanToFraction: to } = panel;
  if (from !== undefined && !isShare(from)) {
    yield doubt(
      `panels.${index}.spanFromFraction`,
      `Panel ${panel.id}: begins at ${percent(from)} of the span, but a span runs from 0 to 100 %.`,
    );
  }
  if (to !== undefined && !isShare(to)) {
    yield doubt(
      `panels.${index}.spanToFraction`,
      `Panel ${panel.id}: ends at ${percent(to)} of the span, but a span runs from 0 to 100 %.`,
    );
  }
  if (from !== undefined && to !== undefined && from >= to) {
    yield doubt(
      `panels.${index}.spanToFraction`,
      `Panel ${panel.id}: ends at ${percent(to)} of the span, but it begins at ${percent(from)}.`,
    );
  }
}

function* chordDoubts(panel: Panel, index: number): Generator<SheetDoubt> {
  const { chordFromFraction: from, chordToFraction: to } = panel;
  for (const [path, words, share] of [
    [`panels.${index}.chordFromFraction`, 'begins', from],
    [`panels.${index}.chordToFraction`, 'ends', to],
  ] as const) {
    if (share !== undefined && !isShare(share)) {
      yield doubt(
        path,
        `Panel ${panel.id}: ${words} at ${percent(share)} of the chord, but a chord runs from 0 to 100 %.`,
      );
    }
  }
  if (from !== undefined && to !== undefined && from >= to) {
    yield doubt(
      `panels.${index}.chordToFraction`,
      `Panel ${panel.id}: ends at ${percent(to)} of the chord, but it begins at ${percent(from)}.`,
    );
  }
}

function* onPlanDoubts(sheet: FlightSheet, panel: Panel, index: number): Generator<SheetDoubt> {
  const sketched = panelAreaOnPlan(sheet, panel);
  if (sketched === null || !(panel.area.value > 0)) return;
  if (Math.abs(sketched.value - panel.area.value) > AREA_SLACK * panel.area.value) {
    yield doubt(
      `panels.${index}.area`,
      `Panel ${panel.id}: ${measureWords(panel.area)} given, its limits on the wing make ${measureWords(sketched)}.`,
    );
  }
}

function* overlapDoubts(
  ofWing: readonly { readonly panel: Panel; readonly index: number }[],
): Generator<SheetDoubt> {
  const placed = ofWing
    .flatMap(({ panel, index }) =>
      panel.spanFromFraction === undefined || panel.spanToFraction === undefined
        ? []
        : [{ id: panel.id, index, from: panel.spanFromFraction, to: panel.spanToFraction }],
    )
    .toSorted((a, b) => a.from - b.from);
  for (const [place, panel] of placed.entries()) {
    const inboard = placed[place - 1];
    if (inboard !== undefined && panel.from < inboard.to - 0.0005) {
      yield doubt(
        `panels.${panel.index}.spanFromFraction`,
        `Panels ${inboard.id} and ${panel.id} overlap from ${percent(panel.from)} to ${percent(Math.min(inboard.to, panel.to))} of the span.`,
      );
    }
  }
}

function* areaSumDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const wingArea = sheet.aircraft.wingArea;
  const sums = WINGS.map((wing) =>
    sumOf(
      sheet.panels.filter((panel) => panel.wing === wing),
      wingArea,
    ),
  );
  const [left, right] = sums;
  if (left === undefined || right === undefined || left === null || right === null) {
    return;
  }
  if (left > 0 && right > 0 && Math.abs(left - right) > AREA_SLACK * Math.max(left, right)) {
    yield doubt(
      'panels',
      `Left wing panels add up to ${inUnit(left, wingArea)}, right wing panels to ${inUnit(right, wingArea)}.`,
    );
  }
  if (wingArea.value > 0 && left + right > wingArea.value) {
    yield doubt(
      'panels',
      `The panels add up to ${inUnit(left + right, wingArea)}, the aircraft says ${measureWords(wingArea)}.`,
    );
  }
}

function* probeDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  if (sheet.probes.length === 0) {
    yield doubt('probes', 'No probes yet: laminar area can only be called by panel.');
  }
  yield* doubledIds('probes', 'Probe', sheet.probes);
  const panels = new Map(sheet.panels.map((panel) => [panel.id, panel]));
  for (const [index, probe] of sheet.probes.entries()) {
    const panel = panels.get(probe.panel);
    if (panel === undefined) {
      yield doubt(
        `probes.${index}.panel`,
        `Probe ${probe.id}: panel ${probe.panel} is not on this flight sheet.`,
      );
    } else if (panel.wing !== probe.wing) {
      yield doubt(
        `probes.${index}.wing`,
        `Probe ${probe.id} is on the ${WING_WORDS[probe.wing]} wing, its panel ${panel.id} on the ${WING_WORDS[panel.wing]} one.`,
      );
    }
    if (probe.form === 'trailingEdgeTotal') {
      yield* positiveMeasure(`probes.${index}.area`, `Probe ${probe.id}, area`, probe.area, 'area');
    }
  }
  for (const [index, panel] of sheet.panels.entries()) {
    yield* probesOfPanel(sheet.probes, panel, index);
  }
  if (sheet.laminarBelow !== undefined && dimensionOf(sheet.laminarBelow.unit) !== 'pressure') {
    yield doubt('laminarBelow', `Laminar below: ${sheet.laminarBelow.unit} is not a pressure.`);
  }
}

function* probesOfPanel(
  probes: readonly Probe[],
  panel: Panel,
  index: number,
): Generator<SheetDoubt> {
  const behind = probes.filter(
    (probe) => probe.panel === panel.id && probe.form === 'trailingEdgeTotal',
  );
  if (behind.length === 0) {
    if (probes.length > 0) {
      yield doubt(`panels.${index}.id`, `Panel ${panel.id} has no probe behind it.`);
    }
    return;
  }
  const sum = sumOf(behind, panel.area);
  if (sum === null || sum === 0 || panel.area.value <= 0) {
    return;
  }
  if (Math.abs(sum - panel.area.value) > AREA_SLACK * panel.area.value) {
    yield doubt(
      `panels.${index}.area`,
      `Probes of panel ${panel.id} stand for ${inUnit(sum, panel.area)}, the panel has ${measureWords(panel.area)}.`,
    );
  }
}

/** Sum of areas in the unit of `like`; null when a unit among them is no area. */
function sumOf(rows: readonly { readonly area: Measure }[], like: Measure): number | null {
  const one = inBase({ value: 1, unit: like.unit });
  const areas = rows.map((row) =>
    dimensionOf(row.area.unit) === 'area' ? inBase(row.area) : null,
  );
  return one === null || dimensionOf(like.unit) !== 'area'
    ? null
    : areas.reduce<number | null>(
        (sum, area) => (sum === null || area === null ? null : sum + area / one),
        0,
      );
}

function inUnit(value: number, like: Measure): string {
  return measureWords({ value: Math.round(value * 10) / 10, unit: like.unit });
}

function isShare(fraction: number): boolean {
  return fraction >= 0 && fraction <= 1;
}

function percent(fraction: number): string {
  return `${numberWords(Math.round(fraction * 1000) / 10)} %`;
}
