import { SUCTION_DRIVES } from '../../../record/sheetAircraft.ts';
import { unitsOf } from '../../../record/sheetMeasure.ts';
import {
  SheetChoice,
  SheetCount,
  SheetMeasure,
  SheetNumber,
  SheetText,
} from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { DragOfFlow } from './DragOfFlow.tsx';
import { SuctionCost } from './SuctionCost.tsx';
import styles from '../Brief.module.css';

const DRIVE_WORDS: Readonly<Record<(typeof SUCTION_DRIVES)[number], string>> = {
  ownMeteredFuel: 'Own metered fuel',
  bleed: 'Bleed air of the engines',
  shaft: 'Shaft power of the engines',
};

/** The aircraft, what its suction costs, and what its engines make of thrust. */
export function AircraftPage() {
  const { sheet } = useDraft();
  return (
    <>
      <div className={styles.fields}>
        <SheetText path="aircraft.mark" label="Mark" />
        <SheetText path="aircraft.callsign" label="Callsign" optional />
        <SheetText path="aircraft.type" label="Type, in words" optional />
        <SheetMeasure
          path="aircraft.wingArea"
          label="Wing area"
          units={unitsOf('area')}
          unit={sheet.massUnit === 'kg' ? 'm2' : 'ft2'}
          hint="The reference area S of the aircraft."
        />
      </div>
      <SheetCount path="aircraft.engineCount" label="Engines" from={1} to={8} />
      <SheetChoice
        path="aircraft.suctionDrive"
        label="Suction is driven by"
        choices={SUCTION_DRIVES.map((value) => ({ value, label: DRIVE_WORDS[value] }))}
        hint="Driven by the engines, their gauges hold it already: nothing is subtracted twice."
      />
      <div className={styles.fields}>
        <SheetNumber
          path="aircraft.machSensitivitySuctionOff"
          label="Mach sensitivity, suction off"
          optional
          hint="Share of fuel flow for a share of Mach, at the card."
        />
        <SheetNumber
          path="aircraft.machSensitivitySuctionOn"
          label="Mach sensitivity, suction on"
          optional
        />
        <SheetNumber
          path="aircraft.liftToDragAtMost"
          label="Lift to drag, at most"
          optional
          hint="Bounds the energy correction where there is no engine map."
        />
      </div>
      <SuctionCost />
      <DragOfFlow />
    </>
  );
}
