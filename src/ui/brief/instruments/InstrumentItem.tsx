import { QUANTITIES, type Instrument } from '../../../record/sheet.ts';
import { QUANTITY_WORDS, unitsFor, unitWords } from '../../../record/sheetMeasure.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { ItemKeys } from '../sheet/ItemKeys.tsx';
import {
  SheetCell,
  SheetChoice,
  SheetCount,
  SheetNumber,
  SheetText,
  SheetTick,
} from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import styles from '../Brief.module.css';

const NOTHING = { text: '', words: '' };

/** One instrument: what it reads, how it shows it, and what its calibration found. */
export function InstrumentItem({ index, instrument }: { index: number; instrument: Instrument }) {
  const draft = useDraft();
  const at = `instruments.${index}` as const;
  const units = unitsFor(instrument.quantity);
  const shownUnits = units.includes(instrument.unit) ? units : [...units, instrument.unit];
  const unit = unitWords(instrument.unit);
  return (
    <>
      <ItemKeys
        count={draft.sheet.instruments.length}
        title={instrument.id}
        removeAct="instruments.remove"
        onRemove={() => draft.put(at, undefined, NOTHING)}
      />
      <div className={styles.fields}>
        <SheetText path={`${at}.id`} label="Short name, as on the key" />
        <SheetText path={`${at}.name`} label="Name" />
      </div>
      <SheetChoice
        path={`${at}.quantity`}
        label="Reads"
        choices={QUANTITIES.map((value) => ({ value, label: QUANTITY_WORDS[value] }))}
      />
      <Consumer index={index} instrument={instrument} />
      <SheetChoice
        path={`${at}.unit`}
        label="Unit it shows"
        choices={shownUnits.map((value) => ({
          value,
          label: value === '1' ? 'bare number' : unitWords(value),
        }))}
      />
      <div className={styles.fields}>
        <SheetCount
          path={`${at}.format.wholeDigits`}
          label="Boxes before the point"
          from={1}
          to={7}
        />
        <SheetCount path={`${at}.format.decimals`} label="Boxes after the point" from={0} to={4} />
      </div>
      <SheetTick path={`${at}.format.signed`} label="Offers a sign key" />
      <div className={styles.fields}>
        <SheetNumber
          path={`${at}.resolution`}
          label="Smallest step it shows"
          unit={unit}
          zeroIsBlank
        />
        <SheetNumber path={`${at}.rangeLow`} label="Plausible from" unit={unit} optional />
        <SheetNumber path={`${at}.rangeHigh`} label="Plausible to" unit={unit} optional />
        <SheetNumber
          path={`${at}.plausibleRatePerMin`}
          label="Plausible change a minute, at most"
          unit={unit}
          optional
        />
        <SheetNumber
          path={`${at}.repeatability`}
          label="Repeatability, one sigma"
          unit={unit}
          optional
          hint="Blank while nobody declared it."
        />
      </div>
      <Calibration index={index} instrument={instrument} unit={unit} />
      <SheetTick path={`${at}.serviceable`} label="Serviceable" />
    </>
  );
}

function Consumer({ index, instrument }: { index: number; instrument: Instrument }) {
  const draft = useDraft();
  const { quantity, consumer } = instrument;
  if (quantity === 'probeDeficit') {
    return <SheetText path={`instruments.${index}.probe`} label="Probe it reads" optional />;
  }
  if (quantity !== 'fuelFlow' && quantity !== 'fuelUsed' && quantity !== 'suctionFuelFlow') {
    return null;
  }
  const engines = Array.from({ length: draft.sheet.aircraft.engineCount }, (_, place) => place + 1);
  const listed =
    typeof consumer === 'number' && !engines.includes(consumer) ? [...engines, consumer] : engines;
  const path = `instruments.${index}.consumer` as const;
  return (
    <ChipField
      act={`sheet.${path}`}
      label="Of"
      value={consumer === undefined ? null : String(consumer)}
      choices={[
        ...listed.map((engine) => ({ value: String(engine), label: `Engine ${engine}` })),
        { value: 'suctionUnit', label: 'Suction unit' },
      ]}
      onChange={(value) =>
        draft.put(path, value === 'suctionUnit' ? value : Number(value), NOTHING)
      }
      fault={draft.faultAt(path)}
    />
  );
}

function Calibration(props: { index: number; instrument: Instrument; unit: string }) {
  const { index, unit } = props;
  const at = `instruments.${index}.calibration` as const;
  return (
    <section className={styles.block}>
      <h3>Calibration</h3>
      <div className={styles.fields}>
        <SheetNumber
          path={`${at}.correction`}
          label="Correction, added to the reading"
          unit={unit}
        />
        <SheetNumber
          path={`${at}.residualStandardUncertainty`}
          label="Doubt left after it, one sigma"
          unit={unit}
          optional
        />
        <SheetNumber
          path={`${at}.independentStandardUncertainty`}
          label="Doubt anew with each reading, one sigma"
          unit={unit}
          optional
        />
        <SheetText path={`${at}.calibratedOn`} label="Calibrated on, YYYY-MM-DD" optional />
        <SheetText path={`${at}.dueOn`} label="Due on, YYYY-MM-DD" optional />
      </div>
      <CalibrationTable {...props} field="points" />
      <CalibrationTable {...props} field="asLeft" />
    </section>
  );
}

const TABLE_WORDS = {
  points: { name: 'As found', add: 'Add a row as found', hint: 'Straight lines between the rows.' },
  asLeft: {
    name: 'As left',
    add: 'Add a row as left',
    hint: 'Only where the bench adjusted it: this is what it flies with.',
  },
} as const;

/** Corrections by reading, as the bench found them or as it left them. */
function CalibrationTable(props: {
  index: number;
  instrument: Instrument;
  unit: string;
  field: keyof typeof TABLE_WORDS;
}) {
  const draft = useDraft();
  const { unit, field } = props;
  const points = props.instrument.calibration[field] ?? [];
  const { name, add, hint } = TABLE_WORDS[field];
  const at = `instruments.${props.index}.calibration.${field}` as const;
  return (
    <>
      <p className={styles.quiet}>
        <b>{name}.</b> {draft.faultAt(at) ?? hint}
      </p>
      {points.length === 0 ? null : (
        <ul className={styles.rows} aria-label={`Calibration table, ${name.toLowerCase()}`}>
          {points.map((_, row) => (
            <li key={row} className={styles.cells}>
              <span>At</span>
              <SheetCell path={`${at}.${row}.reading`} label={`Row ${row + 1}, reading`} />
              <span>add</span>
              <SheetCell path={`${at}.${row}.correction`} label={`Row ${row + 1}, correction`} />
              <span>{unit}</span>
              <GroundButton
                act={`${field}.remove=${row}`}
                onPress={() => draft.put(`${at}.${row}`, undefined, NOTHING)}
              >
                Remove
              </GroundButton>
            </li>
          ))}
        </ul>
      )}
      <GroundButton
        act={`${field}.add`}
        onPress={() => draft.put(at, [...points, { reading: 0, correction: 0 }], NOTHING)}
      >
        {add}
      </GroundButton>
    </>
  );
}
