import { blankSheet, panelsFor, probesFor, usualInstruments } from '../../src/record/blankSheet.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { USUAL_TILE_PAGES } from '../../src/record/tiles.ts';

/** An invented two-engine aircraft with nothing left to doubt on 2 June 2032. */
export function soundSheet(): FlightSheet {
  const blank = blankSheet({
    id: 'sound',
    massUnit: 'lb',
    heightUnit: 'ft',
    tilePages: USUAL_TILE_PAGES,
  });
  const panels = panelsFor({
    aWing: 3,
    area: 30,
    areaUnit: 'ft2',
    spanFromFraction: 0.1,
    spanToFraction: 0.91,
  });
  return {
    ...blank,
    title: 'Suction at two weights',
    revisions: [{ revision: 'A', signedBy: 'P1', signedOn: '2032-05-30', changes: [] }],
    stopWords: 'stop, stop, stop',
    aircraft: {
      ...blank.aircraft,
      mark: 'QL-TST',
      wingArea: { value: 500, unit: 'ft2' },
      machSensitivitySuctionOff: 0.9,
      machSensitivitySuctionOn: 0.45,
    },
    engineMap: {
      idleFlow: { value: 120, unit: 'lb/h' },
      idleStandardUncertainty: { value: 20, unit: 'lb/h' },
      flowPerThrust: { value: 0.7, unit: 'lb/h/lbf' },
    },
    weights: {
      ramp: { value: 40_000, unit: 'lb' },
      zeroFuel: { value: 30_000, unit: 'lb' },
      rampFuel: { value: 10_000, unit: 'lb' },
      grossWeightStandardUncertainty: { value: 100, unit: 'lb' },
    },
    condition: { mach: 0.71, pressureAltitude: { value: 36_000, unit: 'ft' } },
    tolerances: {
      mach: 0.005,
      machRatePerMin: 0.001,
      altitude: { value: 100, unit: 'ft' },
      climb: { value: 50, unit: 'ft/min' },
    },
    borrowedBaseline: { weightElasticity: 0.5, standardUncertainty: 0.05, from: 'flights 3 to 7' },
    targetReductionFraction: 0.25,
    panels,
    probes: probesFor(panels, 4),
    instruments: usualInstruments({ ...blank, aircraft: { ...blank.aircraft } }).map((one) => ({
      ...one,
      calibration: { correction: 0, residualStandardUncertainty: 2, dueOn: '2032-12-01' },
    })),
    testCards: ['off', 'on', 'off'].map((suction, index) => ({
      id: `TP0${index + 1}`,
      title: suction === 'off' ? 'baseline' : 'nominal suction',
      setting: suction === 'off' ? 'suction off' : 'nominal',
      suction: suction === 'off' ? 'off' : 'on',
      order: index + 1,
      priority: 1,
      minimumReadings: 3,
    })),
    clocks: blank.clocks.map((clock) => ({ ...clock, scale: 'UTC' })),
    limits: {
      ...blank.limits,
      joker: { value: 4000, unit: 'lb' },
      bingo: { value: 3000, unit: 'lb' },
    },
  };
}
