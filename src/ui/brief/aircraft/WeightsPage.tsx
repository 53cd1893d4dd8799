import { unitsOf } from '../../../record/sheetMeasure.ts';
import { SheetMeasure } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import styles from '../Brief.module.css';

/** Weights on the ramp. With the fuel counters they give the weight at each reading. */
export function WeightsPage() {
  const { massUnit } = useDraft().sheet;
  const shared = { units: unitsOf('mass'), unit: massUnit, optional: true } as const;
  return (
    <div className={styles.fields}>
      <SheetMeasure path="weights.ramp" label="Ramp weight" {...shared} />
      <SheetMeasure path="weights.zeroFuel" label="Zero-fuel weight" {...shared} />
      <SheetMeasure path="weights.rampFuel" label="Ramp fuel" {...shared} />
      <SheetMeasure
        path="weights.grossWeightStandardUncertainty"
        label="Doubt of the gross weight, one sigma"
        {...shared}
      />
    </div>
  );
}
