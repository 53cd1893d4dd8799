import { useState } from 'react';
import { massUnitOf } from '../../../analysis/sheetUnits.ts';
import type { Body } from '../../../record/entry.ts';
import type { Unit } from '../../../record/measure.ts';
import { unitWords } from '../../../record/sheetMeasure.ts';
import { NumberField, readNumber, TextField } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { isoDate } from '../../kit/time.ts';
import { typedTimeOf, type Desk } from '../context.ts';
import { typedInstant } from '../timeWords.ts';
import { FormFoot, optional } from './FormFoot.tsx';
import styles from './Forms.module.css';

const AMOUNT_UNITS = ['lb', 'kg', 'USgal', 'l'] as const;
const DENSITY_UNITS = ['lb/USgal', 'kg/l'] as const;

const chips = <One extends Unit>(units: readonly One[]) =>
  units.map((value) => ({ value, label: unitWords(value) }));

/** Fuel that came on board, as the docket says: the fourth of the fuel books. */
export function UpliftForm({ desk, onDone }: { readonly desk: Desk; readonly onDone: () => void }) {
  const inPounds = massUnitOf(desk.view.state.sheet) === 'lb';
  const [amount, setAmount] = useState('');
  const [unit, setUnit] = useState<(typeof AMOUNT_UNITS)[number]>(inPounds ? 'lb' : 'kg');
  const [density, setDensity] = useState('');
  const [densityUnit, setDensityUnit] = useState<(typeof DENSITY_UNITS)[number]>(
    inPounds ? 'lb/USgal' : 'kg/l',
  );
  const [temperature, setTemperature] = useState('');
  const [docket, setDocket] = useState('');
  const [date, setDate] = useState(() => isoDate(lastTimeOf(desk)));
  const [clock, setClock] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const isVolume = unit === 'USgal' || unit === 'l';

  const bodyOf = (): Body<'fuelUplifted'> | string => {
    const [much, dense, warm] = [amount, density, temperature].map((text) => readNumber(text));
    const at = clock.trim() === '' ? undefined : typedInstant(date, clock);
    if (much?.kind !== 'number' || !(much.value > 0)) {
      return 'Uplift is a figure above zero, as 7200.';
    }
    if (dense?.kind === 'fault' || (dense?.kind === 'number' && !(dense.value > 0))) {
      return 'Density is a figure above zero, as 6.7.';
    }
    if (warm?.kind === 'fault') return 'Temperature is a figure, as 15.';
    if (at === null) return 'A time is HH:MM, in UTC, on a date as 2032-06-02.';
    return {
      amount: { value: much.value, unit },
      ...(dense?.kind === 'number' ? { density: { value: dense.value, unit: densityUnit } } : {}),
      ...(warm?.kind === 'number'
        ? { temperature: { value: warm.value, unit: 'degC' as const } }
        : {}),
      ...optional('docket', docket),
      ...(at === undefined ? {} : { at: typedTimeOf(desk, at).raw(at), basis: 'late' as const }),
    };
  };
  const save = (): void => {
    const body = bodyOf();
    if (typeof body === 'string') {
      setFault(body);
      return;
    }
    void desk.writer
      .write((stamp) => ({ kind: 'fuelUplifted', stamp, body }), 'Fuel uplift written.')
      .then((entry) => (entry === null ? undefined : onDone()));
  };
  return (
    <div className={styles.form}>
      <p className={styles.quiet}>
        For the fuel books only, never for fuel planning. It says something between two looks at the
        tanks.
      </p>
      <div className={styles.pair}>
        <NumberField
          act="amount"
          label="Uplift (needed)"
          unit={unitWords(unit)}
          value={amount}
          onChange={setAmount}
        />
        <ChipField
          act="amount-unit"
          label="In"
          value={unit}
          choices={chips(AMOUNT_UNITS)}
          onChange={setUnit}
        />
      </div>
      <div className={styles.pair}>
        <NumberField
          act="density"
          label={isVolume ? 'Density: a volume is no mass without it' : 'Density'}
          unit={unitWords(densityUnit)}
          value={density}
          onChange={setDensity}
        />
        <ChipField
          act="density-unit"
          label="In"
          value={densityUnit}
          choices={chips(DENSITY_UNITS)}
          onChange={setDensityUnit}
        />
      </div>
      <div className={styles.pair}>
        <NumberField
          act="temperature"
          label="Temperature of the fuel"
          unit={unitWords('degC')}
          value={temperature}
          onChange={setTemperature}
        />
        <TextField act="docket" label="Docket" value={docket} onChange={setDocket} />
      </div>
      <div className={styles.pair}>
        <TextField act="date" label="Date, UTC" value={date} onChange={setDate} />
        <TextField
          act="time"
          label="Time of uplift, Z"
          hint="HH:MM; empty: now"
          value={clock}
          onChange={setClock}
        />
      </div>
      <FormFoot fault={fault} words="Write uplift" isSaving={desk.writer.isSaving} onSave={save} />
    </div>
  );
}

/** An uplift is most often written on the day on which the flight ended. */
function lastTimeOf({ view, clock }: Desk) {
  const { milestones } = view.state;
  return milestones.blocksOn?.at ?? milestones.touchdown?.at ?? clock.now();
}
