import type { Reading } from '../../../record/entry.ts';
import type { KnownKind } from '../../../record/kinds.ts';
import type { FlightSheet, Instrument } from '../../../record/sheet.ts';
import { NumberField, readNumber } from '../../kit/Ground.tsx';
import { fieldLabel } from '../fields/labels.ts';
import styles from './Forms.module.css';

const FLOWS = new Set(['fuelFlow', 'suctionFuelFlow', 'fuelUsed']);
const FUEL_STATE = new Set(['fuelUsed', 'fuelRemaining', 'tankFuel']);
const AIR = new Set([
  'mach',
  'pressureAltitude',
  'staticAirTemp',
  'totalAirTemp',
  'machRate',
  'altitudeRate',
]);

/** Gauges of the flight sheet that such an entry gives figures of. */
function instrumentsOf(sheet: FlightSheet | null, kind: KnownKind): readonly Instrument[] {
  const quantities = {
    fuelRead: FLOWS,
    fuelStateRead: FUEL_STATE,
    airDataRead: AIR,
    conditionReached: AIR,
  }[
    kind === 'fuelRead' ||
    kind === 'fuelStateRead' ||
    kind === 'airDataRead' ||
    kind === 'conditionReached'
      ? kind
      : 'conditionReached'
  ];
  const isReading =
    kind === 'fuelRead' ||
    kind === 'fuelStateRead' ||
    kind === 'airDataRead' ||
    kind === 'conditionReached';
  return isReading
    ? (sheet?.instruments ?? []).filter(({ quantity }) => quantities.has(quantity))
    : [];
}

export function LateReadings(props: {
  readonly sheet: FlightSheet | null;
  readonly kind: KnownKind;
  readonly figures: ReadonlyMap<string, string>;
  readonly onFigures: (figures: ReadonlyMap<string, string>) => void;
}) {
  const { sheet, figures } = props;
  return (
    <div className={styles.fields}>
      {instrumentsOf(sheet, props.kind).map(({ id }) => (
        <NumberField
          key={id}
          act={`field-readings.${id}.value`}
          label={fieldLabel(`readings.${id}`, sheet)}
          value={figures.get(id) ?? ''}
          onChange={(text) => props.onFigures(new Map(figures).set(id, text))}
        />
      ))}
    </div>
  );
}

/** Readings typed, in the unit each gauge shows; null when one is not a figure. A gauge left empty was not read. */
export function readingsOf(
  sheet: FlightSheet | null,
  figures: ReadonlyMap<string, string>,
): readonly Reading[] | null {
  const readings: Reading[] = [];
  for (const { id, unit } of sheet?.instruments ?? []) {
    const read = readNumber(figures.get(id) ?? '');
    if (read.kind === 'fault') {
      return null;
    }
    if (read.kind === 'number') {
      readings.push({ instrument: id, value: read.value, unit });
    }
  }
  return readings;
}
