import type { FlightSheet, Instrument, Quantity } from '../../../record/sheet.ts';
import { unitWords } from '../../../record/sheetMeasure.ts';
import { PadSide, Ruled } from './PadSide.tsx';

/** Gauges of one look, in the order in which eyes go: flows, air data, counters, tanks. */
const IN_ORDER: readonly Quantity[] = [
  'fuelFlow',
  'suctionFuelFlow',
  'mach',
  'pressureAltitude',
  'staticAirTemp',
  'totalAirTemp',
  'machRate',
  'altitudeRate',
  'fuelUsed',
  'fuelRemaining',
  'tankFuel',
];
/** So many columns can be written into across a page. */
const COLUMNS = 8;
const LINES = 26;

/** One line a look; where the gauges do not fit across, the same looks go on over the leaf. */
export function ReadingPages({ sheet }: { sheet: FlightSheet }) {
  const gauges = IN_ORDER.flatMap((quantity) =>
    sheet.instruments.filter((one) => one.quantity === quantity),
  );
  const leaves = Math.max(1, Math.ceil(gauges.length / COLUMNS));
  const aLeaf = Math.ceil(gauges.length / leaves);
  return Array.from({ length: leaves }, (_, leaf) => (
    <PadSide
      key={leaf}
      sheet={sheet}
      title={leaves === 1 ? 'Readings' : `Readings, leaf ${leaf + 1} of ${leaves}`}
    >
      <p>
        As read, in the unit at the head. A dash is not read; a blank gauge is not zero. Three looks
        or more a point, after it is steady.
      </p>
      <Ruled
        name={`Readings ${leaf + 1}`}
        columns={[
          { head: 'Look', share: 0.8 },
          { head: 'Point, run', share: 1.4 },
          { head: 'UTC', share: 1.6 },
          ...gauges
            .slice(leaf * aLeaf, (leaf + 1) * aLeaf)
            .map((gauge) => ({ head: headOf(gauge), share: 1.5 })),
        ]}
        rows={Array.from({ length: LINES }, (_, line) => [String(line + 1)])}
        empty={0}
      />
    </PadSide>
  ));
}

function headOf({ id, unit }: Instrument): string {
  return unit === '1' ? id : `${id}, ${unitWords(unit)}`;
}
