import { unitsOf } from '../../../record/sheetMeasure.ts';
import { SheetMeasure, SheetNumber } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import styles from '../Brief.module.css';

/** The condition of the cards, and how far a reading may stray from it before it is struck. */
export function ConditionPage() {
  const { heightUnit } = useDraft().sheet;
  const height = { units: unitsOf('length'), unit: heightUnit } as const;
  return (
    <>
      <div className={styles.fields}>
        <SheetNumber path="condition.mach" label="Mach" zeroIsBlank />
        <SheetMeasure path="condition.pressureAltitude" label="Pressure altitude" {...height} />
      </div>
      <section className={styles.block}>
        <h3>Tolerances of a reading</h3>
        <div className={styles.fields}>
          <SheetNumber path="tolerances.mach" label="Mach, plus or minus" zeroIsBlank />
          <SheetNumber
            path="tolerances.machRatePerMin"
            label="Mach rate, plus or minus"
            unit="a minute"
            zeroIsBlank
          />
          <SheetMeasure path="tolerances.altitude" label="Height, plus or minus" {...height} />
          <SheetMeasure
            path="tolerances.climb"
            label="Height rate, plus or minus"
            units={['ft/min', 'm/s']}
            unit={heightUnit === 'ft' ? 'ft/min' : 'm/s'}
          />
        </div>
      </section>
      <section className={styles.block}>
        <h3>Doubts, one sigma</h3>
        <div className={styles.fields}>
          <SheetNumber path="machHoldStandardUncertainty" label="Mach hold over a run" optional />
          <SheetNumber path="timeDoubts.touchS" label="Time of a touch" unit="s" />
          <SheetNumber path="timeDoubts.readingS" label="Time of a reading" unit="s" />
          <SheetNumber path="timeDoubts.lateS" label="Time of a late entry" unit="s" />
        </div>
      </section>
    </>
  );
}
