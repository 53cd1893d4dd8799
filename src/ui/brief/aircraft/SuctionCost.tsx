import { SheetGroup } from '../sheet/SheetGroup.tsx';
import { SheetNumber, SheetText } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import styles from '../Brief.module.css';

const BLANK_BLEED = {
  flowFractionPerPercent: 0,
  percentTaken: 0,
  standardUncertainty: 0,
  from: '',
};
const BLANK_SHARE = { fraction: 0, from: '' };

/** What suction costs where the engines drive it, and how much drag the treated strips carry. */
export function SuctionCost() {
  const { sheet } = useDraft();
  const { bleed, suctionDrive } = sheet.aircraft;
  return (
    <>
      {suctionDrive === 'bleed' || bleed !== undefined ? (
        <SheetGroup
          path="aircraft.bleed"
          label="The cost of bleed is known"
          blank={BLANK_BLEED}
          hint="With it the gross saving can be told from the net one."
        >
          <div className={styles.fields}>
            <SheetNumber
              path="aircraft.bleed.flowFractionPerPercent"
              label="Fuel flow for one per cent of bleed"
              unit="%"
              scale={100}
              zeroIsBlank
            />
            <SheetNumber
              path="aircraft.bleed.percentTaken"
              label="Bleed that suction takes"
              unit="% of core flow"
              zeroIsBlank
            />
            <SheetNumber
              path="aircraft.bleed.standardUncertainty"
              label="Doubt of the two together, one sigma"
              unit="% of fuel flow"
              scale={100}
              zeroIsBlank
            />
            <SheetText path="aircraft.bleed.from" label="Said by" />
          </div>
        </SheetGroup>
      ) : null}
      <SheetGroup
        path="aircraft.treatedDragShare"
        label="The drag share of the treated strips is known"
        blank={BLANK_SHARE}
        hint="Friction and form drag of the whole strips, turbulent, as a share of all drag: what suction could save at most."
      >
        <div className={styles.fields}>
          <SheetNumber
            path="aircraft.treatedDragShare.fraction"
            label="Share of all drag"
            unit="%"
            scale={100}
            zeroIsBlank
          />
          <SheetNumber
            path="aircraft.treatedDragShare.standardUncertainty"
            label="Doubt of it, one sigma"
            unit="%"
            scale={100}
            optional
          />
          <SheetText path="aircraft.treatedDragShare.from" label="Said by" />
        </div>
      </SheetGroup>
    </>
  );
}
