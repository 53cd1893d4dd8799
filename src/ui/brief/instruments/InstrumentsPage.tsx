import { blankInstrument, usualInstruments } from '../../../record/blankSheet.ts';
import type { Instrument } from '../../../record/sheet.ts';
import { numberWords, QUANTITY_WORDS, unitWords } from '../../../record/sheetMeasure.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { InstrumentItem } from './InstrumentItem.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import styles from '../Brief.module.css';

/** Every gauge that is read, with its display and its calibration. */
export function InstrumentsPage() {
  const draft = useDraft();
  const { sheet, item } = draft;
  const { instruments } = sheet;
  const open = item === null ? undefined : instruments[item];
  if (item !== null && open !== undefined) {
    return <InstrumentItem key={item} index={item} instrument={open} />;
  }
  const usual = usualInstruments(sheet);
  const engines = sheet.aircraft.engineCount;
  return (
    <>
      <div className={styles.keys}>
        <GroundButton
          act="instruments.usual"
          strong={instruments.length === 0}
          disabled={usual.length === 0}
          onPress={() => draft.replace({ ...sheet, instruments: [...instruments, ...usual] })}
        >
          {usual.length === 0
            ? 'The usual set is here'
            : `Add the usual set for ${engines} ${engines === 1 ? 'engine' : 'engines'}: ${usual.length}`}
        </GroundButton>
        <GroundButton
          act="instruments.add"
          onPress={() => {
            draft.replace({ ...sheet, instruments: [...instruments, blankInstrument(sheet)] });
            draft.openItem(instruments.length);
          }}
        >
          Add one
        </GroundButton>
      </div>
      <ul className={styles.list}>
        {instruments.map((instrument, index) => (
          <InstrumentRow key={index} instrument={instrument} index={index} />
        ))}
      </ul>
    </>
  );
}

function InstrumentRow({ instrument, index }: { instrument: Instrument; index: number }) {
  const draft = useDraft();
  const { calibration } = instrument;
  const doubts = draft.doubts.filter((one) => one.path.startsWith(`instruments.${index}.`)).length;
  const correction =
    calibration.points !== undefined && calibration.points.length > 1
      ? `table of ${calibration.points.length}`
      : `correction ${numberWords(calibration.correction)}`;
  return (
    <li>
      <button
        type="button"
        className={styles.listKey}
        data-act={`instruments.item=${index}`}
        onClick={() => draft.openItem(index)}
      >
        <b>{instrument.id}</b>
        <span>
          {instrument.name === '' ? QUANTITY_WORDS[instrument.quantity] : instrument.name}
        </span>
        <span>{unitWords(instrument.unit)}</span>
        <span>
          {correction}
          {calibration.dueOn === undefined ? '' : `, due ${calibration.dueOn}`}
        </span>
        <span className={styles.doubtCount}>{doubts === 0 ? '' : `${doubts} doubtful`}</span>
      </button>
    </li>
  );
}
