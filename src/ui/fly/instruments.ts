import type { FlightSheet, Instrument, Quantity } from '../../record/sheet.ts';

function ofQuantity(sheet: FlightSheet | null, quantity: Quantity): readonly Instrument[] {
  const order = (instrument: Instrument): number =>
    typeof instrument.consumer === 'number' ? instrument.consumer : Number.MAX_SAFE_INTEGER;
  return (sheet?.instruments ?? [])
    .filter((instrument) => instrument.quantity === quantity && instrument.serviceable)
    .toSorted((a, b) => order(a) - order(b));
}

export function counterInstruments(sheet: FlightSheet | null): readonly Instrument[] {
  return ofQuantity(sheet, 'fuelUsed');
}

export function suctionFlowInstrument(sheet: FlightSheet | null): Instrument | null {
  return ofQuantity(sheet, 'suctionFuelFlow')[0] ?? null;
}

/** Mach, height, temperature, and the rates of Mach and height: static temperature before total. */
export function airInstruments(sheet: FlightSheet | null): readonly Instrument[] {
  const temperature = [...ofQuantity(sheet, 'staticAirTemp'), ...ofQuantity(sheet, 'totalAirTemp')];
  return [
    ...ofQuantity(sheet, 'mach').slice(0, 1),
    ...ofQuantity(sheet, 'pressureAltitude').slice(0, 1),
    ...temperature.slice(0, 1),
    ...ofQuantity(sheet, 'machRate').slice(0, 1),
    ...ofQuantity(sheet, 'altitudeRate').slice(0, 1),
  ];
}

/** One look at the panel, in the order of the eye: engines, suction unit, counters. */
export function fuelInstruments(sheet: FlightSheet | null): readonly Instrument[] {
  return [
    ...ofQuantity(sheet, 'fuelFlow'),
    ...ofQuantity(sheet, 'suctionFuelFlow'),
    ...counterInstruments(sheet),
  ];
}

/** The gauge that a probe's pressure is read on. */
export function probeInstrument(sheet: FlightSheet | null, probe: string): Instrument | null {
  return ofQuantity(sheet, 'probeDeficit').find((each) => each.probe === probe) ?? null;
}

/** What the crew reads as fuel left: a totaliser, where the aircraft has one. */
export function remainingInstruments(sheet: FlightSheet | null): readonly Instrument[] {
  return ofQuantity(sheet, 'fuelRemaining');
}

export function tankInstruments(sheet: FlightSheet | null): readonly Instrument[] {
  return [
    ...counterInstruments(sheet),
    ...ofQuantity(sheet, 'tankFuel'),
    ...ofQuantity(sheet, 'fuelRemaining'),
  ];
}

const AIR: readonly Quantity[] = [
  'mach',
  'pressureAltitude',
  'staticAirTemp',
  'totalAirTemp',
  'machRate',
  'altitudeRate',
];

export function isAir(instrument: Instrument): boolean {
  return AIR.includes(instrument.quantity);
}

/** "Engine 1 of 2", "Suction unit", "Counter 1": what the pad is asking for. */
export function instrumentWords(instrument: Instrument, sheet: FlightSheet | null): string {
  const engines = sheet?.aircraft.engineCount ?? 0;
  const consumer = typeof instrument.consumer === 'number' ? `${instrument.consumer}` : 'unit';
  switch (instrument.quantity) {
    case 'fuelFlow':
      return engines > 1 ? `Engine ${consumer} of ${engines}` : 'Engine';
    case 'suctionFuelFlow':
      return 'Suction unit';
    case 'fuelUsed':
      return `Counter ${consumer}`;
    case 'fuelRemaining':
      return 'Fuel remaining';
    case 'tankFuel':
      return 'Tank gauge';
    case 'mach':
      return 'Mach';
    case 'pressureAltitude':
      return 'Height';
    case 'staticAirTemp':
      return 'Static temp';
    case 'totalAirTemp':
      return 'Total temp';
    case 'machRate':
      return 'Mach rate';
    case 'altitudeRate':
      return 'Climb';
    case 'probeDeficit':
      return `Probe ${instrument.probe ?? instrument.id}`;
  }
}

/** Unit as the crew says it; a bare number has none. */
export function unitWords(unit: Instrument['unit']): string {
  switch (unit) {
    case '1':
      return '';
    case '1/min':
      return 'a min';
    case 'degC':
      return '\u00b0C';
    case 'inH2O':
    case 'inH2O@39.2F':
    case 'inH2O@60F':
    case 'inH2O@20C':
      return 'inH2O';
    default:
      return unit;
  }
}
