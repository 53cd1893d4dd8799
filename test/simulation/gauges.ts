import type { Reading } from '../../src/record/entry.ts';
import type { Chance } from './chance.ts';
import { AIR_GAUGES, KG_PER_UNIT, type Drawn, type FlowGauge } from './draw.ts';
import type { Seen } from './faults.ts';

/** Share of the scatter of a rate that is gust, the rest the display's own. */
const GUST_SHARE = 0.7;

/** One look at the panel: truth less the correction, plus what the calibration left, scatter, and the display's step. */
export function look(
  chance: Chance,
  { unit, gauges, unitGauge, engineShares, altitudeErrorFt, temperatureErrorK }: Drawn,
  {
    flowKgPerS,
    unitKgPerS,
    seen: { moment, shown },
  }: { readonly flowKgPerS: number; readonly unitKgPerS: number; readonly seen: Seen },
): readonly Reading[] {
  const flowUnit = unit === 'lb' ? 'lb/h' : 'kg/h';
  const flow = (instrument: string, gauge: FlowGauge, kgPerS: number): Reading => ({
    instrument,
    value: stepped(
      (kgPerS * 3600) / KG_PER_UNIT[unit] -
        gauge.correction +
        gauge.error +
        chance.normal(gauge.scatter),
      gauge.step,
    ),
    unit: flowUnit,
  });
  const { mach, altitudeFt, temperatureC, machPerMin, climbFtPerMin } = AIR_GAUGES;
  const gusty = (scatter: number): number =>
    chance.normal(GUST_SHARE * scatter) + chance.normal(Math.sqrt(1 - GUST_SHARE ** 2) * scatter);
  return [
    ...gauges.map((gauge, index) =>
      flow(`FF${index + 1}`, gauge, flowKgPerS * (engineShares[index] ?? 0)),
    ),
    flow('SU', unitGauge, unitKgPerS),
    {
      instrument: 'MACH',
      value: stepped(shown.mach + chance.normal(mach.scatter), mach.step),
      unit: '1',
    },
    {
      instrument: 'ALT',
      value: stepped(
        moment.pressureAltitudeM / 0.3048 + altitudeErrorFt + chance.normal(altitudeFt.scatter),
        altitudeFt.step,
      ),
      unit: 'ft',
    },
    {
      instrument: 'SAT',
      value: stepped(
        moment.temperatureK - 273.15 + temperatureErrorK + chance.normal(temperatureC.scatter),
        temperatureC.step,
      ),
      unit: 'degC',
    },
    {
      instrument: 'MDRIFT',
      value: stepped(shown.machPerMin + gusty(machPerMin.scatter), machPerMin.step),
      unit: '1/min',
    },
    {
      instrument: 'CLIMB',
      value: stepped(shown.climbFtPerMin + gusty(climbFtPerMin.scatter), climbFtPerMin.step),
      unit: 'ft/min',
    },
  ];
}

/** As the display shows it, without the tail of a binary division. */
function stepped(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(4));
}
