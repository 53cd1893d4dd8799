import type { Unit } from './measure.ts';
import type { FlightSheet, Instrument, Panel, Probe, Wing } from './sheet.ts';
import { WINGS } from './sheet.ts';

/**
 * A flight sheet with nothing filled in. What the record insists on is 0 or empty until somebody gives it, and
 * `sheetCheck.ts` says so; nothing that belongs to one aircraft is guessed.
 */
export function blankSheet(given: {
  readonly id: string;
  readonly massUnit: 'lb' | 'kg';
  readonly heightUnit: 'ft' | 'm';
  readonly tilePages: FlightSheet['tilePages'];
}): FlightSheet {
  const metric = given.massUnit === 'kg';
  const heightUnit = given.heightUnit;
  return {
    id: given.id,
    revision: 'A',
    title: '',
    massUnit: given.massUnit,
    heightUnit,
    legs: [],
    people: [
      { id: 'S1', role: 'scribe' },
      { id: 'P1', role: 'pilot' },
    ],
    aircraft: {
      mark: '',
      wingArea: { value: 0, unit: metric ? 'm2' : 'ft2' },
      engineCount: 2,
      suctionDrive: 'ownMeteredFuel',
    },
    weights: {},
    condition: { mach: 0, pressureAltitude: { value: 0, unit: heightUnit } },
    tolerances: {
      mach: 0,
      machRatePerMin: 0,
      altitude: { value: 0, unit: heightUnit },
      climb: { value: 0, unit: heightUnit === 'ft' ? 'ft/min' : 'm/s' },
    },
    timeDoubts: { touchS: 2, readingS: 5, lateS: 20 },
    panels: [],
    probes: [],
    instruments: [],
    testCards: [],
    clocks: [
      { id: 'master', owner: 'aircraft time source', scale: 'unknown', resolutionS: 0.1 },
      { id: 'tablet', owner: 'scribe tablet', scale: 'unknown', resolutionS: 0.1 },
    ],
    limits: { readingEveryS: 300, samplerPlannedS: 600, coversAfterGearUpS: 60 },
    tilePages: given.tilePages,
    ownTiles: [],
  };
}

/** The instruments that a flight with this aircraft reads, less those whose id is on the sheet already. */
export function usualInstruments(sheet: FlightSheet): readonly Instrument[] {
  const flow: Unit = sheet.massUnit === 'kg' ? 'kg/h' : 'lb/h';
  const mass: Unit = sheet.massUnit;
  const height: Unit = sheet.heightUnit;
  const climb: Unit = height === 'ft' ? 'ft/min' : 'm/s';
  const engines = Array.from({ length: sheet.aircraft.engineCount }, (_, index) => index + 1);
  const ownFuel = sheet.aircraft.suctionDrive === 'ownMeteredFuel';
  const all: readonly Instrument[] = [
    ...engines.map((engine) =>
      gauge(`FF${engine}`, `Fuel flow engine ${engine}`, 'fuelFlow', flow, [4, 0], 10, engine),
    ),
    ...(ownFuel
      ? [gauge('SU', 'Suction unit fuel flow', 'suctionFuelFlow', flow, [3, 0], 1, 'suctionUnit')]
      : []),
    ...engines.map((engine) =>
      gauge(`FU${engine}`, `Fuel used engine ${engine}`, 'fuelUsed', mass, [5, 0], 1, engine),
    ),
    ...(ownFuel
      ? [gauge('FUS', 'Fuel used suction unit', 'fuelUsed', mass, [4, 0], 1, 'suctionUnit')]
      : []),
    gauge('MACH', 'Mach', 'mach', '1', [1, 3], 0.001),
    gauge('ALT', 'Pressure altitude', 'pressureAltitude', height, [5, 0], 10),
    signed(gauge('SAT', 'Static air temperature', 'staticAirTemp', 'degC', [2, 1], 0.5)),
    signed(gauge('MDRIFT', 'Mach rate', 'machRate', '1/min', [1, 4], 0.0002)),
    signed(
      climb === 'm/s'
        ? gauge('CLIMB', 'Height rate', 'altitudeRate', climb, [2, 1], 0.1)
        : gauge('CLIMB', 'Height rate', 'altitudeRate', climb, [4, 0], 10),
    ),
    gauge('TANK', 'Fuel in tanks', 'tankFuel', mass, [5, 0], 10),
  ];
  const known = new Set(sheet.instruments.map((instrument) => instrument.id));
  return all.filter((instrument) => !known.has(instrument.id));
}

/** A new instrument, to be made fit: reads fuel flow until told otherwise. */
export function blankInstrument(sheet: FlightSheet): Instrument {
  return gauge(
    freeId('I', sheet.instruments),
    '',
    'fuelFlow',
    sheet.massUnit === 'kg' ? 'kg/h' : 'lb/h',
    [4, 0],
    0,
  );
}

function gauge(
  id: string,
  name: string,
  quantity: Instrument['quantity'],
  unit: Unit,
  [wholeDigits, decimals]: readonly [number, number],
  resolution: number,
  consumer?: Instrument['consumer'],
): Instrument {
  return {
    id,
    name,
    quantity,
    ...(consumer !== undefined && { consumer }),
    unit,
    format: { wholeDigits, decimals, signed: false },
    resolution,
    calibration: { correction: 0 },
    serviceable: true,
  };
}

function signed(instrument: Instrument): Instrument {
  return { ...instrument, format: { ...instrument.format, signed: true } };
}

/** Equal shares of the span, numbered from the root, the same on both wings. Areas are the crew's to give. */
export function panelsFor(given: {
  readonly aWing: number;
  readonly area: number;
  readonly areaUnit: Unit;
  readonly spanFromFraction: number;
  readonly spanToFraction: number;
}): readonly Panel[] {
  const width = (given.spanToFraction - given.spanFromFraction) / given.aWing;
  const edge = (index: number): number => thousandths(given.spanFromFraction + width * index);
  return WINGS.flatMap((wing) =>
    Array.from({ length: given.aWing }, (_, index) => ({
      id: `${wing}${index + 1}`,
      wing,
      number: index + 1,
      area: { value: given.area, unit: given.areaUnit },
      spanFromFraction: edge(index),
      spanToFraction: edge(index + 1),
    })),
  );
}

/** `aPanel` probes behind each panel, numbered along each wing from the root; they share the panel's area. */
export function probesFor(panels: readonly Panel[], aPanel: number): readonly Probe[] {
  return WINGS.flatMap((wing) => {
    const ofWing = panels.filter((panel) => panel.wing === wing);
    const digits =
      String(ofWing.length * aPanel).length < 2 ? 2 : String(ofWing.length * aPanel).length;
    return ofWing.flatMap((panel, place) =>
      Array.from({ length: aPanel }, (_, index): Probe => {
        const number = place * aPanel + index + 1;
        return {
          id: `${wing}${String(number).padStart(digits, '0')}`,
          wing,
          panel: panel.id,
          form: 'trailingEdgeTotal',
          area: { value: thousandths(panel.area.value / aPanel), unit: panel.area.unit },
          serviceable: true,
        };
      }),
    );
  });
}

/** One panel more, outboard of the last one of its wing. */
export function blankPanel(sheet: FlightSheet, wing: Wing): Panel {
  const ofWing = sheet.panels.filter((panel) => panel.wing === wing);
  const number = Math.max(0, ...ofWing.map((panel) => panel.number)) + 1;
  return {
    id: `${wing}${number}`,
    wing,
    number,
    area: { value: 0, unit: sheet.aircraft.wingArea.unit },
  };
}

/** The first of `prefix1`, `prefix2`... that no row has. */
export function freeId(prefix: string, rows: readonly { readonly id: string }[]): string {
  const taken = new Set(rows.map((row) => row.id));
  let number = rows.length + 1;
  while (taken.has(`${prefix}${number}`)) {
    number += 1;
  }
  return `${prefix}${number}`;
}

function thousandths(value: number): number {
  return Math.round(value * 1000) / 1000;
}
