import * as friction from '../../../src/aero/friction.ts';
import {
  coverageDragReduction,
  laminarAreaFraction,
  type FlowState,
} from '../../../src/aero/laminarArea.ts';
import { judgeProbe } from '../../../src/aero/probes.ts';
import { valueOf, type Answers, type RowReader } from '../referenceRow.ts';
import { conditionOf } from './airspeed.ts';

function stateOf(letter: unknown): FlowState {
  if (letter === 'L') return 'laminar';
  return letter === 'I' ? 'intermittent' : 'turbulent';
}

function panels(row: RowReader): readonly { areaM2: number; state: FlowState }[] {
  const states = [row.value('states')].flat();
  return row.siList('areas').map((areaM2, index) => ({ areaM2, state: stateOf(states[index]) }));
}

function mixed(row: RowReader): { reynolds: number; transitionFraction: number } {
  return { reynolds: row.raw('Re'), transitionFraction: row.raw('xt_over_c') };
}

const layer = (row: RowReader): { distanceM: number; reynolds: number } => ({
  distanceM: row.si('x'),
  reynolds: row.raw('Re'),
});

export const frictionAnswers: Answers = {
  'ITTC 1957 friction line': (row) => friction.ittc1957Coefficient(row.raw('Re')),
  'ITTC 1957 friction line, worked example': (row) => friction.ittc1957Coefficient(row.raw('Re')),
  'laminar plate coefficient 1.328/sqrt(Re)': (row) =>
    friction.laminarPlateCoefficient(row.raw('Re')),
  'turbulent plate coefficient, Prandtl-Schlichting': (row) =>
    friction.turbulentPlateCoefficient(row.raw('Re')),
  'laminar coefficient with (1+0.1305M^2)^-0.12': (row) =>
    friction.laminarPlateCoefficient(row.raw('Re')) * friction.laminarCompressibility(row.raw('M')),
  'laminar over turbulent coefficient, incompressible': (row) =>
    friction.laminarPlateCoefficient(row.raw('Re')) /
    friction.turbulentPlateCoefficient(row.raw('Re')),
  'mixed plate coefficient, virtual-origin method': (row) =>
    valueOf(friction.virtualOriginCoefficient(mixed(row))),
  'mixed plate coefficient, A/Re method': (row) =>
    valueOf(friction.transitionConstantCoefficient(mixed(row))),
  'area-weighted laminar fraction, intermittent panel counted one half': (row) =>
    valueOf(laminarAreaFraction(panels(row))),
  'upper-bound airframe drag reduction from that fraction': (row) =>
    coverageDragReduction({
      laminarFraction: row.raw('fA'),
      coefficientRatio: row.raw('cf_ratio'),
      treatedShare: row.raw('treated_surface_share_of_total_drag'),
    }),
  'laminar layer thickness 5.2 x / sqrt(Re) at 17 ft': (row) =>
    row.out(friction.laminarLayerThicknessM(layer(row))),
  'turbulent layer thickness 0.37 x / Re^0.2 at 17 ft': (row) =>
    row.out(friction.turbulentLayerThicknessM(layer(row))),
};

function probeFractions(row: RowReader): { ofDynamic: number; ofImpact: number } {
  const verdict = judgeProbe({
    deficitPa: row.si('dp'),
    stream: conditionOf(row),
    gaugeErrorPa: 0,
    laminarBelow: { kind: 'pressure', limitPa: row.si('dp'), deadBandPa: 0 },
  });
  if (verdict.kind === 'unavailable') throw new TypeError(verdict.because);
  const { fractionOfDynamic = Number.NaN, fractionOfImpact = Number.NaN } = verdict;
  return { ofDynamic: fractionOfDynamic, ofImpact: fractionOfImpact };
}

export const probeAnswers: Answers = {
  '2 inches of water (conventional) as a fraction of impact pressure': (row) =>
    probeFractions(row).ofImpact,
  '2 inches of water (conventional) as a fraction of dynamic pressure': (row) =>
    probeFractions(row).ofDynamic,
  'dynamic pressure in inches of water (conventional)': (row) =>
    row.out(conditionOf(row).dynamicPressurePa),
};
