import { unitsOf } from '../../record/sheetMeasure.ts';
import { SheetMeasure, SheetNumber } from './SheetFields.tsx';
import { useDraft } from './sheetDraft.ts';
import styles from './Brief.module.css';

/** Decision fuels, for the record only, and when the reminder strip speaks. */
export function LimitsPage() {
  const { massUnit } = useDraft().sheet;
  const fuel = { units: unitsOf('mass'), unit: massUnit, optional: true } as const;
  return (
    <>
      <p>
        <b>Record only.</b> Joker and bingo are kept for the log; the crew’s own fuel plan decides.
      </p>
      <div className={styles.fields}>
        <SheetMeasure path="limits.joker" label="Joker fuel" {...fuel} />
        <SheetMeasure path="limits.bingo" label="Bingo fuel" {...fuel} />
        <SheetNumber path="limits.readingEveryS" label="A fuel reading every" unit="s" />
        <SheetNumber path="limits.samplerPlannedS" label="A sampler is open for" unit="s" />
        <SheetNumber
          path="limits.coversAfterGearUpS"
          label="Covers are due after gear up"
          unit="s"
        />
        <SheetNumber
          path="limits.photoFrameEveryS"
          label="Photo panel, a frame every"
          unit="s"
          optional
        />
      </div>
    </>
  );
}
