import type { ArchivedPoint } from '../../../record/sheet.ts';
import { unitsOf } from '../../../record/sheetMeasure.ts';
import { ItemKeys } from '../sheet/ItemKeys.tsx';
import { SheetMeasure, SheetNumber, SheetText } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { NOTHING } from '../sheet/useNumberText.ts';
import styles from '../Brief.module.css';

/** One suction-off point of an earlier flight, all referred: nothing here depends on that day's height. */
export function ArchiveItem({ index, point }: { index: number; point: ArchivedPoint }) {
  const draft = useDraft();
  const at = `baselineArchive.${index}` as const;
  return (
    <>
      <ItemKeys
        count={draft.sheet.baselineArchive?.length ?? 0}
        title={`Point ${point.id}`}
        removeAct="archive.remove"
        onRemove={() => draft.put(at, undefined, NOTHING)}
      />
      <p className={styles.quiet}>
        {point.source === 'typed'
          ? 'Typed by hand.'
          : 'Taken from a timeline file. A change here is a change of the copy alone.'}
      </p>
      <div className={styles.fields}>
        <SheetText path={`${at}.id`} label="Name" />
        <SheetText path={`${at}.flight`} label="Flight" />
        <SheetText
          path={`${at}.configuration`}
          label="Configuration"
          hint="What hung on the aircraft, how smooth it was."
        />
        <SheetNumber path={`${at}.mach`} label="Mach" zeroIsBlank />
        <SheetMeasure
          path={`${at}.weightOverDelta`}
          label="Weight over pressure ratio"
          units={unitsOf('mass')}
          unit={point.weightOverDelta.unit}
        />
        <SheetMeasure
          path={`${at}.referredFlow`}
          label="Flow over δ√θ, all engines"
          units={unitsOf('flow')}
          unit={point.referredFlow.unit}
        />
        <SheetMeasure
          path={`${at}.standardUncertainty`}
          label="Doubt of the flow, one sigma"
          units={unitsOf('flow')}
          unit={point.referredFlow.unit}
          optional
        />
        <SheetNumber path={`${at}.readings`} label="Readings behind it" />
      </div>
    </>
  );
}
