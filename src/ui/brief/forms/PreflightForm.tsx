import type { Clock, Journal } from '../../../journal/journal.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { WriteKey } from './BriefForm.tsx';
import { FormMeasureField, FormNumberField, FormText } from './FormFields.tsx';
import { formMeasure, formNumber, useWrite } from './forms.ts';
import { useKeptTexts } from '../useKept.ts';
import styles from '../Brief.module.css';

const DENSITIES = ['lb/USgal', 'kg/l'] as const;
const TEMPERATURES = ['degC', 'K'] as const;

/** Covers, fuel and samplers as the walk-round found them. Blank is not seen, which differs from none. */
export function PreflightForm(props: {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly sheet: FlightSheet;
}) {
  const { sheet } = props;
  const texts = useKeptTexts(`preflight-${props.journal.flight}`);
  const { write, refused } = useWrite(props.journal);
  const masses = sheet.massUnit === 'kg' ? (['kg', 'lb'] as const) : (['lb', 'kg'] as const);
  const densities = sheet.massUnit === 'kg' ? (['kg/l', 'lb/USgal'] as const) : DENSITIES;
  const fitted = formNumber(texts, 'coversFitted', 'Covers fitted');
  const of = formNumber(
    texts,
    'coversOf',
    'Covers of',
    sheet.panels.length === 0 ? undefined : sheet.panels.length,
  );
  const fuel = formMeasure(texts, 'fuel', 'Fuel', { first: sheet.weights.rampFuel, units: masses });
  const density = formMeasure(texts, 'fuelDensity', 'Fuel density', { units: densities });
  const temperature = formMeasure(texts, 'fuelTemperature', 'Fuel temperature', {
    units: TEMPERATURES,
  });
  const ramp = formMeasure(texts, 'rampWeight', 'Ramp weight', {
    first: sheet.weights.ramp,
    units: masses,
  });
  const samplers = texts
    .of('samplersLoaded')
    .split(',')
    .map((id) => id.trim())
    .filter((id) => id !== '');
  const counts = [fitted, of].flatMap(({ value, text }) =>
    value === null || (Number.isInteger(value) && value >= 0)
      ? []
      : [`Covers: \u201c${text}\u201d is not a whole number.`],
  );
  const faults = [
    ...counts,
    ...[fitted, of, fuel, density, temperature, ramp].flatMap(({ fault }) =>
      fault === null ? [] : [fault],
    ),
  ];
  const shared = { texts, form: 'preflight' } as const;
  const send = () =>
    write({
      kind: 'preflightDone',
      stamp: props.clock.stampNow(),
      body: {
        ...(fitted.value !== null && { coversFitted: fitted.value }),
        ...(of.value !== null && { coversOf: of.value }),
        ...(fuel.measure !== null && { fuel: fuel.measure }),
        ...(density.measure !== null && { fuelDensity: density.measure }),
        ...(temperature.measure !== null && { fuelTemperature: temperature.measure }),
        ...(ramp.measure !== null && { rampWeight: ramp.measure }),
        ...(samplers.length > 0 && { samplersLoaded: samplers }),
      },
    });
  return (
    <section className={styles.page} aria-label="Preflight">
      <div className={styles.fields}>
        <FormNumberField {...shared} name="coversFitted" label="Covers fitted" number={fitted} />
        <FormNumberField {...shared} name="coversOf" label="Of" number={of} />
        <FormMeasureField
          {...shared}
          name="rampWeight"
          label="Ramp weight"
          measure={ramp}
          units={masses}
        />
        <FormMeasureField
          {...shared}
          name="fuel"
          label="Fuel on board"
          measure={fuel}
          units={masses}
        />
        <FormMeasureField
          {...shared}
          name="fuelDensity"
          label="Fuel density"
          measure={density}
          units={densities}
        />
        <FormMeasureField
          {...shared}
          name="fuelTemperature"
          label="Fuel temperature"
          measure={temperature}
          units={TEMPERATURES}
        />
      </div>
      <FormText
        {...shared}
        name="samplersLoaded"
        label="Samplers loaded, ids with commas between"
      />
      {counts.map((words) => (
        <p key={words}>
          <b>{words}</b>
        </p>
      ))}
      <WriteKey act="preflight.write" faults={faults} refused={refused} onPress={send} />
    </section>
  );
}
