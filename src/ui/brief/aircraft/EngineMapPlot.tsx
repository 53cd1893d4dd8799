import { poundsForceFromNewtons } from '../../../aero/conversions.ts';
import { flowIn, flowUnitOf } from '../../../analysis/sheetUnits.ts';
import { engineMapCurves } from '../../../analysis/engineMapCurves.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { Graph } from '../Graph.tsx';

const NEWTONS_PER_KILONEWTON = 1000;

/** The map as it was given, before anything is worked out with it: a kink or a wrong unit shows at one look. */
export function EngineMapPlot({ sheet }: { sheet: FlightSheet }) {
  const curves = engineMapCurves(sheet);
  if (curves.length === 0) {
    return null;
  }
  const unit = flowUnitOf(sheet);
  const metric = sheet.massUnit === 'kg';
  const thrust = (newtons: number) =>
    metric ? newtons / NEWTONS_PER_KILONEWTON : poundsForceFromNewtons(newtons);
  return (
    <Graph
      label="Engine map"
      across={`thrust, ${metric ? 'kN' : 'lbf'}`}
      up={`flow, ${unit}`}
      fromZero
      lines={curves.map((curve) => ({
        name: curve.name,
        points: curve.points.map((point) => ({
          x: thrust(point.thrustN),
          y: flowIn(unit, point.fuelFlowKgPerS),
          half: flowIn(unit, curve.doubtKgPerS) * 1.96,
        })),
      }))}
      dots={curves.flatMap((curve) =>
        curve.isTable
          ? curve.points.map((point) => ({
              x: thrust(point.thrustN),
              y: flowIn(unit, point.fuelFlowKgPerS),
              isLeft: false,
            }))
          : [],
      )}
    />
  );
}
