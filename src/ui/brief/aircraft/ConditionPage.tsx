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
        <h3>Steady over a window</h3>
        <p className={styles.quiet}>
          Greatest less least inside the window. An empty field follows from the tolerances above.
        </p>
        <div className={styles.fields}>
          <SheetNumber path="stability.windowS" label="Window" unit="s" optional />
          <SheetNumber path="stability.machRange" label="Mach, range" optional />
          <SheetMeasure path="stability.altitudeRange" label="Height, range" {...height} optional />
          <SheetMeasure
            path="stability.temperatureRange"
            label="Air temperature, range"
            units={unitsOf('temperature')}
            unit="degC"
            optional
          />
          <SheetNumber
            path="stability.flowRangeFraction"
            label="Fuel flow, range"
            unit="%"
            scale={100}
            optional
          />
          <SheetMeasure
            path="stability.climb"
            label="Height rate, at most"
            units={['ft/min', 'm/s']}
            unit={heightUnit === 'ft' ? 'ft/min' : 'm/s'}
            optional
          />
          <SheetNumber
            path="stability.machRatePerMin"
            label="Mach rate, at most"
            unit="a minute"
            optional
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
