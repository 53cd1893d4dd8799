import { unitsOf } from '../../../record/sheetMeasure.ts';
import { SheetMeasure, SheetNumber } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import styles from '../Brief.module.css';

const REMINDERS = [
  { field: 'readingOverdueS', label: 'A reading is overdue after', unit: 's', usual: 120 },
  { field: 'coversRepeatS', label: 'Covers, asked again after', unit: 's', usual: 300 },
  { field: 'coversAtMost', label: 'Covers, times at most', unit: undefined, usual: 3 },
  { field: 'samplerRepeatS', label: 'Sampler, asked again after', unit: 's', usual: 600 },
  { field: 'samplerAtMost', label: 'Sampler, times at most', unit: undefined, usual: 3 },
  {
    field: 'usualLengths',
    label: 'An interval is long at, times its usual length',
    unit: undefined,
    usual: 3,
  },
  { field: 'intervalRepeatS', label: 'Interval, asked again after', unit: 's', usual: 900 },
  { field: 'intervalAtMost', label: 'Interval, times at most', unit: undefined, usual: 2 },
  { field: 'afterTouchS', label: 'Silent after a touch for', unit: 's', usual: 10 },
  { field: 'apartS', label: 'Two reminders lie apart by', unit: 's', usual: 60 },
  { field: 'quietAfterGearUpS', label: 'Silent after gear up for', unit: 's', usual: 60 },
  { field: 'quietForS', label: 'Quiet on request for', unit: 's', usual: 900 },
] as const;

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
      <p>
        <b>Reminders.</b> How long they wait, how often they come back, and when they are silent. An
        empty field keeps the usual value.
      </p>
      <div className={styles.fields}>
        {REMINDERS.map(({ field, label, unit, usual }) => (
          <SheetNumber
            key={field}
            path={`limits.reminders.${field}`}
            label={label}
            hint={`usually ${usual}`}
            optional
            {...(unit !== undefined && { unit })}
          />
        ))}
      </div>
    </>
  );
}
