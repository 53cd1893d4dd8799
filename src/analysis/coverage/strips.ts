import { airState } from '../../aero/atmosphere.ts';
import {
  HIGHEST_TURBULENT_REYNOLDS,
  laminarCompressibility,
  laminarPlateCoefficient,
  LOWEST_TURBULENT_REYNOLDS,
  turbulentCompressibility,
  turbulentPlateCoefficient,
  virtualOriginCoefficient,
} from '../../aero/friction.ts';
import { ready, unavailable, type Outcome } from '../../aero/outcome.ts';
import { chordReynolds } from '../../aero/reynolds.ts';
import type { EntryId } from '../../record/brand.ts';
import type { FlightState } from '../../record/flightState.ts';
import type { FlightSheet, Panel } from '../../record/sheet.ts';
import { measureSi } from '../calibrate.ts';
import type { RunMean } from '../reading/runMean.ts';
import { areaM2Of, areaTimeOver, heldPanel } from './heldArea.ts';
import type { Stretch } from './stretches.ts';

/** One treated panel over the time of a run. */
export interface SeenPanel {
  readonly panel: Panel;
  readonly areaM2: number;
  /** Of what was seen of it; null where nothing was. */
  readonly laminarFraction: number | null;
  readonly by: readonly EntryId[];
}

export function panelsSeen(
  state: FlightState,
  sheet: FlightSheet,
  stretch: Stretch,
): readonly SeenPanel[] {
  return sheet.panels.map((panel) => {
    const { laminarM2S, observedM2S, by } = areaTimeOver(heldPanel(state, sheet, panel), [stretch]);
    return {
      panel,
      areaM2: areaM2Of(panel.area),
      laminarFraction: observedM2S > 0 ? laminarM2S / observedM2S : null,
      by,
    };
  });
}

/** Shares of the treated strips' own friction that go, weighted by panel area over what was seen. */
export interface FrictionSaved {
  readonly upperBound: number;
  /** Null where a panel does not say how far back it is laminar. */
  readonly strips: number | null;
}

/** Friction of plates of each panel's chord at the air of the run. */
export function frictionSaved(
  seen: readonly SeenPanel[],
  run: RunMean,
): Outcome<FrictionSaved, 'noChord' | 'reynoldsOutsideFormula'> {
  let wholeM2 = 0;
  let bound = 0;
  let strips: number | null = 0;
  for (const { panel, areaM2, laminarFraction } of seen) {
    if (laminarFraction === null) continue;
    const chordM = panel.meanChord === undefined ? undefined : measureSi(panel.meanChord, 'length');
    if (chordM === undefined || !(chordM > 0)) return unavailable('noChord');
    const reynolds = reynoldsOf(run, chordM);
    if (reynolds === null) return unavailable('reynoldsOutsideFormula');
    wholeM2 += areaM2;
    bound += areaM2 * laminarFraction * (1 - plateRatio(reynolds, run.mach));
    const strip = stripSaved(panel, reynolds);
    strips = strip === null || strips === null ? null : strips + areaM2 * laminarFraction * strip;
  }
  return ready({
    upperBound: bound / wholeM2,
    strips: strips === null ? null : strips / wholeM2,
  });
}

/** Share of a turbulent strip's friction that goes when it is laminar as far as the panel; null where nobody says how far. */
function stripSaved({ laminarToChordFraction: to }: Panel, reynolds: number): number | null {
  if (to === undefined || !(to >= 0 && to <= 1)) return null;
  const mixed = virtualOriginCoefficient({ reynolds, transitionFraction: to });
  if (mixed.kind === 'unavailable') return null;
  return 1 - mixed.value / turbulentPlateCoefficient(reynolds);
}

function plateRatio(reynolds: number, mach: number): number {
  return (
    (laminarPlateCoefficient(reynolds) * laminarCompressibility(mach)) /
    (turbulentPlateCoefficient(reynolds) * turbulentCompressibility(mach))
  );
}

/** Null outside what the turbulent line was fitted to. */
function reynoldsOf({ readings, mach, temperatureK }: RunMean, chordM: number): number | null {
  const altitudeM =
    readings.reduce((total, { air }) => total + air.pressureAltitude.value, 0) / readings.length;
  const air = airState({ pressureAltitudeM: altitudeM, staticTemperatureK: temperatureK });
  if (air.kind === 'unavailable') return null;
  const { pressurePa } = air;
  const reynolds = chordReynolds({ mach, pressurePa, temperatureK, chordM });
  const isInside = reynolds >= LOWEST_TURBULENT_REYNOLDS && reynolds <= HIGHEST_TURBULENT_REYNOLDS;
  return isInside ? reynolds : null;
}
