import type { Unit } from '../../../record/measure.ts';
import type { EngineTable } from '../../../record/sheetAircraft.ts';
import { unitsOf, unitWords } from '../../../record/sheetMeasure.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { SheetCell, SheetMeasure, SheetText } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { NOTHING } from '../sheet/useNumberText.ts';
import styles from '../Brief.module.css';

const FEWEST_ROWS = 2;

/** Rows of flow against thrust off an engine deck: one table for all engines together, or one each. */
export function EngineTables() {
  const draft = useDraft();
  const { engineTables = [], massUnit } = draft.sheet;
  const metric = massUnit === 'kg';
  const zero = {
    thrust: { value: 0, unit: metric ? 'N' : 'lbf' },
    flow: { value: 0, unit: metric ? 'kg/h' : 'lb/h' },
  } as const;
  return (
    <>
      {engineTables.map((table, index) => (
        <TableBlock key={index} index={index} table={table} />
      ))}
      <GroundButton
        act="engineTables.add"
        onPress={() =>
          draft.put('engineTables', [...engineTables, { rows: [zero, zero] }], NOTHING)
        }
      >
        Add an engine table
      </GroundButton>
    </>
  );
}

function TableBlock({ index, table }: { index: number; table: EngineTable }) {
  const draft = useDraft();
  const at = `engineTables.${index}` as const;
  const { rows, engine } = table;
  const [first] = rows;
  const thrustUnit = first?.thrust.unit ?? 'N';
  const flowUnit = first?.flow.unit ?? 'kg/h';
  const put = (next: EngineTable['rows']) => draft.put(`${at}.rows`, next, NOTHING);
  const engines = Array.from({ length: draft.sheet.aircraft.engineCount }, (_, place) => place + 1);
  return (
    <section className={styles.block} aria-label={`Engine table ${index + 1}`}>
      <h3>{engine === undefined ? 'Table of all engines' : `Table of engine ${engine}`}</h3>
      <ChipField
        act={`sheet.${at}.engine`}
        label="Of"
        value={engine === undefined ? 'all' : String(engine)}
        choices={[
          { value: 'all', label: 'All together' },
          ...engines.map((each) => ({ value: String(each), label: `Engine ${each}` })),
        ]}
        onChange={(value) =>
          draft.put(`${at}.engine`, value === 'all' ? undefined : Number(value), NOTHING)
        }
        fault={draft.faultAt(`${at}.engine`)}
      />
      <div className={styles.fields}>
        <UnitOf
          act={`${at}.thrustUnit`}
          label="Thrust in"
          units={unitsOf('force')}
          value={thrustUnit}
          onChange={(unit) =>
            put(rows.map((row) => ({ ...row, thrust: { value: row.thrust.value, unit } })))
          }
        />
        <UnitOf
          act={`${at}.flowUnit`}
          label="Flow in"
          units={unitsOf('flow')}
          value={flowUnit}
          onChange={(unit) =>
            put(rows.map((row) => ({ ...row, flow: { value: row.flow.value, unit } })))
          }
        />
      </div>
      <ul className={styles.rows} aria-label="Rows of the engine table">
        {rows.map((_, row) => (
          <li key={row} className={styles.cells}>
            <span>{unitWords(thrustUnit)}</span>
            <SheetCell
              path={`${at}.rows.${row}.thrust.value`}
              label={`Row ${row + 1}, thrust`}
              zeroIsBlank
            />
            <span>{unitWords(flowUnit)}</span>
            <SheetCell
              path={`${at}.rows.${row}.flow.value`}
              label={`Row ${row + 1}, flow`}
              zeroIsBlank
            />
            <span />
            <GroundButton
              act={`${at}.remove=${row}`}
              disabled={rows.length <= FEWEST_ROWS}
              onPress={() => draft.put(`${at}.rows.${row}`, undefined, NOTHING)}
            >
              Remove
            </GroundButton>
          </li>
        ))}
      </ul>
      {draft.faultAt(`${at}.rows`) === null ? null : (
        <p className={styles.quiet}>{draft.faultAt(`${at}.rows`)}</p>
      )}
      <div className={styles.fields}>
        <SheetMeasure
          path={`${at}.flowStandardUncertainty`}
          label="Doubt of the table, one sigma"
          units={unitsOf('flow')}
          unit={flowUnit}
          optional
          hint="Of the table as a whole: it shifts all rows alike."
        />
        <SheetText path={`${at}.valid`} label="Valid for" optional />
      </div>
      <div className={styles.keys}>
        <GroundButton
          act={`${at}.addRow`}
          onPress={() =>
            put([
              ...rows,
              { thrust: { value: 0, unit: thrustUnit }, flow: { value: 0, unit: flowUnit } },
            ])
          }
        >
          Add a row
        </GroundButton>
        <GroundButton act={`${at}.drop`} onPress={() => draft.put(at, undefined, NOTHING)}>
          Remove the table
        </GroundButton>
      </div>
    </section>
  );
}

function UnitOf(props: {
  readonly act: string;
  readonly label: string;
  readonly units: readonly Unit[];
  readonly value: Unit;
  readonly onChange: (unit: Unit) => void;
}) {
  return (
    <ChipField
      act={props.act}
      label={props.label}
      value={props.value}
      choices={props.units.map((unit) => ({ value: unit, label: unitWords(unit) }))}
      onChange={props.onChange}
    />
  );
}
