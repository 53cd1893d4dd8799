import type { Measure } from './measure.ts';
import type { FlightSheet, Panel } from './sheet.ts';
import type { WingPlan } from './sheetAircraft.ts';
import { inBase } from './sheetMeasure.ts';

/** Span, root and tip of half a wing, metres. */
interface PlanM {
  readonly semiSpanM: number;
  readonly rootChordM: number;
  readonly tipChordM: number;
}

/** @returns null where a length is not given yet or stands in a unit of something else */
export function wingPlanM(plan: WingPlan | undefined): PlanM | null {
  if (plan === undefined) return null;
  const [semiSpanM, rootChordM, tipChordM] = [plan.semiSpan, plan.rootChord, plan.tipChord].map(
    inBase,
  );
  return isLength(semiSpanM) && isLength(rootChordM) && isLength(tipChordM)
    ? { semiSpanM, rootChordM, tipChordM }
    : null;
}

function isLength(metres: number | null | undefined): metres is number {
  return metres !== null && metres !== undefined && metres > 0;
}

/** Both halves of the wing as sketched, in square metres. */
export function planAreaM2({ semiSpanM, rootChordM, tipChordM }: PlanM): number {
  return semiSpanM * (rootChordM + tipChordM);
}

/**
 * Area of a panel between its limits of span and chord on a wing that is straight from root to tip; in the unit of the
 * panel's own area, to three figures after the point.
 *
 * @returns null where the sketch or a limit is missing, or a limit lies outside the wing
 */
export function panelAreaOnPlan(sheet: FlightSheet, panel: Panel): Measure | null {
  const plan = wingPlanM(sheet.aircraft.planform);
  const span = limitsOf(panel.spanFromFraction, panel.spanToFraction);
  const chord = limitsOf(panel.chordFromFraction, panel.chordToFraction);
  const { unit } = panel.area;
  const unitM2 = inBase({ value: 1, unit });
  if (plan === null || span === null || chord === null || unitM2 === null) return null;
  const middle = (span.from + span.to) / 2;
  const chordM = plan.rootChordM + (plan.tipChordM - plan.rootChordM) * middle;
  const areaM2 = plan.semiSpanM * (span.to - span.from) * chordM * (chord.to - chord.from);
  return { value: Math.round((areaM2 / unitM2) * 1000) / 1000, unit };
}

function limitsOf(
  from: number | undefined,
  to: number | undefined,
): { readonly from: number; readonly to: number } | null {
  return from !== undefined && to !== undefined && from >= 0 && to <= 1 && from < to
    ? { from, to }
    : null;
}

/** The sheet with every panel's area worked out from the sketch, where that can be done. */
export function withPlanAreas(sheet: FlightSheet): FlightSheet {
  return {
    ...sheet,
    panels: sheet.panels.map((panel) => ({
      ...panel,
      area: panelAreaOnPlan(sheet, panel) ?? panel.area,
    })),
  };
}
