import { unitsOf } from '../../../record/sheetMeasure.ts';
import { SheetGroup } from '../sheet/SheetGroup.tsx';
import { SheetMeasure, SheetNumber, SheetText } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { EngineMapPlot } from './EngineMapPlot.tsx';
import { EngineTables } from './EngineTables.tsx';
import styles from '../Brief.module.css';

/** What lets a change of fuel flow be called a change of drag: a table, a line, a slope or a polar, in that order. */
export function DragOfFlow() {
  const { sheet } = useDraft();
  const metric = sheet.massUnit === 'kg';
  const flow = metric ? 'kg/h' : 'lb/h';
  const slope = metric ? 'kg/h/N' : 'lb/h/lbf';
  return (
    <>
      <section className={styles.block}>
        <h3>Flow against thrust</h3>
        <p className={styles.quiet}>
          At the card on a standard day. A table serves before the line, the line before the slope,
          the slope before the polar.
        </p>
        <EngineMapPlot sheet={sheet} />
      </section>
      <EngineTables />
      <SheetGroup
        path="engineMap"
        label="There is an engine map: total flow = idle + slope × thrust"
        blank={{ idleFlow: { value: 0, unit: flow }, flowPerThrust: { value: 0, unit: slope } }}
      >
        <div className={styles.fields}>
          <SheetMeasure
            path="engineMap.idleFlow"
            label="Idle flow"
            units={unitsOf('flow')}
            unit={flow}
          />
          <SheetMeasure
            path="engineMap.idleStandardUncertainty"
            label="Doubt of it, one sigma"
            units={unitsOf('flow')}
            unit={flow}
            optional
          />
          <SheetMeasure
            path="engineMap.flowPerThrust"
            label="Slope"
            units={unitsOf('flowPerForce')}
            unit={slope}
          />
          <SheetText path="engineMap.valid" label="Valid for" optional />
        </div>
      </SheetGroup>
      <SheetGroup
        path="tsfcSlope"
        label="How consumption goes with thrust is known"
        blank={{ slope: 0, standardUncertainty: 0, from: '' }}
        hint="Share of specific consumption for a share of thrust, about the card: mostly negative, as part load costs more."
      >
        <div className={styles.fields}>
          <SheetNumber path="tsfcSlope.slope" label="Share for a share of thrust" />
          <SheetNumber
            path="tsfcSlope.standardUncertainty"
            label="Doubt of it, one sigma"
            zeroIsBlank
          />
          <SheetText path="tsfcSlope.from" label="Said by" />
        </div>
      </SheetGroup>
      <SheetGroup
        path="aircraft.polar"
        label="The polar is known: CD = CD0 + K CL², suction off"
        blank={{ zeroLiftDrag: 0, liftFactor: 0, from: '' }}
        hint="With two baseline weights it shows how consumption goes with thrust."
      >
        <div className={styles.fields}>
          <SheetNumber path="aircraft.polar.zeroLiftDrag" label="CD0" zeroIsBlank />
          <SheetNumber path="aircraft.polar.liftFactor" label="K" zeroIsBlank />
          <SheetNumber
            path="aircraft.polar.liftShareStandardUncertainty"
            label="Doubt of the lift share, one sigma"
            unit="%"
            scale={100}
            optional
          />
          <SheetText path="aircraft.polar.from" label="Said by" />
        </div>
      </SheetGroup>
    </>
  );
}
