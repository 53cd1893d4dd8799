import type { FlightState } from '../../record/flightState.ts';
import type { PanelState } from '../../record/kinds.ts';
import type { FlightSheet, Wing } from '../../record/sheet.ts';

export interface ProbeFace {
  readonly id: string;
  readonly state: PanelState;
}

export interface PanelFace {
  readonly id: string;
  readonly wing: Wing;
  readonly state: PanelState;
  readonly probes: readonly ProbeFace[];
}

/** The panels of a wing as seen from above, nose up: the left wing from tip to root, the right one from root to tip. */
export function panelStates(
  sheet: FlightSheet | null,
  state: FlightState,
  wing: Wing,
): readonly PanelFace[] {
  const panels = (sheet?.panels ?? [])
    .filter((panel) => panel.wing === wing)
    .toSorted((a, b) => a.number - b.number);
  const faces = panels.map((panel) => ({
    id: panel.id,
    wing,
    state: state.panels[panel.id]?.state ?? ('notAssessed' as const),
    probes: (sheet?.probes ?? [])
      .filter((probe) => probe.panel === panel.id && probe.form === 'trailingEdgeTotal')
      .map((probe) => ({
        id: probe.id,
        state: state.probes[probe.id]?.state ?? ('notAssessed' as const),
      })),
  }));
  return wing === 'L' ? faces.toReversed() : faces;
}

export const STATE_WORDS: Readonly<Record<PanelState, string>> = {
  laminar: 'LAM',
  intermittent: 'INT',
  turbulent: 'TRB',
  notAssessed: '?',
};

/** The three states that a person calls; "not assessed" is what stands until somebody does. */
export const CALLED_STATES = ['laminar', 'intermittent', 'turbulent'] as const;

export function mostPanelsAWing(sheet: FlightSheet | null): number {
  const panels = sheet?.panels ?? [];
  return Math.max(
    0,
    ...(['L', 'R'] as const).map((wing) => panels.filter((panel) => panel.wing === wing).length),
  );
}

/** Panels are targets on the map itself up to so many a wing; beyond, each half opens the wing as a pad. */
export const MOST_ON_MAP = 4;
