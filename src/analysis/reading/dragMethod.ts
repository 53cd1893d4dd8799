import { mapOfEngines } from '../../aero/engines.ts';
import { thrustTable, type ThrustMap } from '../../aero/thrustMap.ts';
import {
  KILOGRAMS_PER_POUND,
  NEWTONS_PER_POUND_FORCE,
  SECONDS_PER_HOUR,
} from '../../aero/units.ts';
import type { Measure } from '../../record/measure.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import type { EngineTable } from '../../record/sheetAircraft.ts';
import { measureDifferenceSi, measureSi } from '../calibrate.ts';

/**
 * What lets a change of fuel flow be called a change of drag. One method serves a whole flight: the table where the flight
 * sheet has a sound one, else the line, else a stated slope of consumption, else the slope that the baseline itself shows.
 */
export type DragMethod =
  | {
      readonly kind: 'map';
      readonly by: 'engineTable' | 'engineMap';
      /** Of the whole aircraft, at the card on a standard day. */
      readonly map: ThrustMap;
      /** Of the map as a whole: it lifts every flow alike. */
      readonly flowUncertaintyKgPerS: number;
    }
  | {
      readonly kind: 'slope';
      readonly by: 'statedSlope';
      readonly slope: number;
      readonly standardUncertainty: number;
    }
  | {
      readonly kind: 'polar';
      readonly by: 'slopeOfBaseline';
      readonly zeroLiftDrag: number;
      readonly liftFactor: number;
      readonly liftShareUncertainty: number;
      readonly wingAreaM2: number;
    };

export function dragMethodOf(sheet: FlightSheet): DragMethod | null {
  return tableOf(sheet) ?? lineOf(sheet) ?? slopeOf(sheet) ?? polarOf(sheet);
}

/** One table for all engines together, or one for each engine of the aircraft; anything less is no table. */
function tableOf({ engineTables = [], aircraft }: FlightSheet): DragMethod | null {
  const whole = engineTables.find(({ engine }) => engine === undefined);
  const chosen =
    whole === undefined
      ? Array.from({ length: aircraft.engineCount }, (_, index) =>
          engineTables.find(({ engine }) => engine === index + 1),
        ).filter((table) => table !== undefined)
      : [whole];
  if (whole === undefined && chosen.length < aircraft.engineCount) return null;
  const maps = chosen.map(thrustMapOf).filter((map) => map !== null);
  if (maps.length < chosen.length) return null;
  const map = mapOfEngines(maps);
  if (map.kind === 'unavailable') return null;
  // Tables of one engine deck err alike, so their doubts add as they stand.
  const flowUncertaintyKgPerS = chosen.reduce(
    (total, { flowStandardUncertainty }) =>
      total + Math.abs(flowKgPerS(flowStandardUncertainty) ?? 0),
    0,
  );
  return { kind: 'map', by: 'engineTable', map: map.value, flowUncertaintyKgPerS };
}

function thrustMapOf({ rows }: EngineTable): ThrustMap | null {
  const inSi = rows.flatMap(({ thrust, flow }) => {
    const thrustN = measureDifferenceSi(thrust, 'force');
    const fuelFlowKgPerS = flowKgPerS(flow);
    return thrustN === undefined || fuelFlowKgPerS === undefined
      ? []
      : [{ thrustN, fuelFlowKgPerS }];
  });
  if (inSi.length < rows.length) return null;
  const table = thrustTable(inSi);
  return table.kind === 'ready' ? table.value : null;
}

function lineOf({ engineMap }: FlightSheet): DragMethod | null {
  if (engineMap === undefined) return null;
  const idleKgPerS = flowKgPerS(engineMap.idleFlow);
  const slopeKgPerSPerN = flowPerThrust(engineMap.flowPerThrust);
  if (idleKgPerS === undefined || idleKgPerS < 0) return null;
  if (slopeKgPerSPerN === undefined || !(slopeKgPerSPerN > 0)) return null;
  return {
    kind: 'map',
    by: 'engineMap',
    map: { kind: 'line', idleKgPerS, slopeKgPerSPerN },
    flowUncertaintyKgPerS: Math.abs(flowKgPerS(engineMap.idleStandardUncertainty) ?? 0),
  };
}

/** At or below -1 less thrust would burn no less fuel: a slip of the pen. */
function slopeOf({ tsfcSlope }: FlightSheet): DragMethod | null {
  if (tsfcSlope === undefined || !(tsfcSlope.slope > -1)) return null;
  const { slope, standardUncertainty } = tsfcSlope;
  return {
    kind: 'slope',
    by: 'statedSlope',
    slope,
    standardUncertainty: Math.abs(standardUncertainty),
  };
}

function polarOf({ aircraft }: FlightSheet): DragMethod | null {
  const { polar, wingArea } = aircraft;
  const wingAreaM2 = measureSi(wingArea, 'area');
  if (polar === undefined || wingAreaM2 === undefined || !(wingAreaM2 > 0)) return null;
  const { zeroLiftDrag, liftFactor } = polar;
  if (!(zeroLiftDrag >= 0) || !(liftFactor > 0)) return null;
  const liftShareUncertainty = Math.abs(polar.liftShareStandardUncertainty ?? 0);
  return {
    kind: 'polar',
    by: 'slopeOfBaseline',
    zeroLiftDrag,
    liftFactor,
    liftShareUncertainty,
    wingAreaM2,
  };
}

function flowPerThrust({ value, unit }: Measure): number | undefined {
  if (unit === 'kg/h/N') return value / SECONDS_PER_HOUR;
  if (unit !== 'lb/h/lbf') return undefined;
  return (value * KILOGRAMS_PER_POUND) / SECONDS_PER_HOUR / NEWTONS_PER_POUND_FORCE;
}

function flowKgPerS(measure: Measure | undefined): number | undefined {
  return measure === undefined ? undefined : measureDifferenceSi(measure, 'massFlow');
}
