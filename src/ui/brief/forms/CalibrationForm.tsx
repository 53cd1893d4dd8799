import type { Clock, Journal } from '../../../journal/journal.ts';
import type { FlightSheet, Instrument } from '../../../record/sheet.ts';
import { unitWords } from '../../../record/sheetMeasure.ts';
import { TickField } from '../../kit/Ground.tsx';
import { isoDate } from '../../kit/time.ts';
import { WriteKey } from './BriefForm.tsx';
import { FormNumberField, FormText } from './FormFields.tsx';
import { formNumber, useWrite } from './forms.ts';
import { useKeptTexts } from '../useKept.ts';
import styles from '../Brief.module.css';

/** Corrections as flown, read from the calibration sheets on the day. What is left blank was not checked. */
export function CalibrationForm(props: {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly sheet: FlightSheet;
}) {
  const { sheet, clock } = props;
  const texts = useKeptTexts(`calibration-${props.journal.flight}`);
  const { write, refused } = useWrite(props.journal);
  const today = isoDate(clock.now());
  const due = sheet.instruments.filter((one) => (one.calibration.dueOn ?? today) < today);
  const inDate = texts.of('inDate', due.length === 0 ? 'yes' : 'no') === 'yes';
  const rows = sheet.instruments.map((instrument) => ({
    instrument,
    number: formNumber(
      texts,
      instrument.id,
      instrument.id,
      isFlow(instrument) ? instrument.calibration.correction : undefined,
    ),
  }));
  const probes = texts.of('probes');
  const faults = rows.flatMap(({ number }) => (number.fault === null ? [] : [number.fault]));
  const send = () =>
    write({
      kind: 'calibrationChecked',
      stamp: clock.stampNow(),
      body: {
        corrections: rows.flatMap(({ instrument, number }) =>
          number.value === null ? [] : [{ instrument: instrument.id, correction: number.value }],
        ),
        inDate,
        ...(probes !== '' && { probes }),
      },
    });
  return (
    <section className={styles.page} aria-label="Calibration check">
      <p className={styles.quiet}>
        Correction of each instrument, added to its reading. Blank: not checked.
      </p>
      <div className={styles.fieldsNarrow}>
        {rows.map(({ instrument, number }) => (
          <FormNumberField
            key={instrument.id}
            texts={texts}
            form="calibration"
            name={instrument.id}
            label={instrument.id}
            unit={unitWords(instrument.unit)}
            number={number}
          />
        ))}
      </div>
      <TickField
        act="calibration.inDate"
        label="All calibrations are in date"
        value={inDate}
        onChange={(value) => texts.put('inDate', value ? 'yes' : 'no')}
      />
      {due.length === 0 ? null : (
        <p>{`Due by the flight sheet: ${due.map((one) => one.id).join(', ')}.`}</p>
      )}
      <FormText texts={texts} form="calibration" name="probes" label="Probe zeros" long />
      <WriteKey act="calibration.write" faults={faults} refused={refused} onPress={send} />
    </section>
  );
}

function isFlow(instrument: Instrument): boolean {
  return instrument.quantity === 'fuelFlow' || instrument.quantity === 'suctionFuelFlow';
}
