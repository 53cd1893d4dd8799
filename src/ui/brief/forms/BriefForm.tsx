import type { Clock, Journal } from '../../../journal/journal.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { FormMeasureField, FormNumberField, FormText } from './FormFields.tsx';
import { formMeasure, formNumber, useWrite } from './forms.ts';
import { useKeptTexts } from '../useKept.ts';
import styles from '../Brief.module.css';

/** What was briefed: the card revision, the fuels, the target and the words that stop a test. */
export function BriefForm(props: {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly sheet: FlightSheet;
}) {
  const { sheet } = props;
  const texts = useKeptTexts(`brief-${props.journal.flight}`);
  const { write, refused } = useWrite(props.journal);
  const masses = sheet.massUnit === 'kg' ? (['kg', 'lb'] as const) : (['lb', 'kg'] as const);
  const joker = formMeasure(texts, 'joker', 'Joker', { first: sheet.limits.joker, units: masses });
  const bingo = formMeasure(texts, 'bingo', 'Bingo', { first: sheet.limits.bingo, units: masses });
  const sheetTarget = sheet.targetReductionFraction;
  const target = formNumber(
    texts,
    'target',
    'Target',
    sheetTarget === undefined ? undefined : sheetTarget * 100,
  );
  const cardRevision = texts.of('cardRevision', sheet.revision);
  const stopWords = texts.of('stopWords', sheet.stopWords);
  const weather = texts.of('weather');
  const faults = [joker.fault, bingo.fault, target.fault].filter((fault) => fault !== null);
  const shared = { texts, form: 'brief' } as const;
  const send = () =>
    write({
      kind: 'briefHeld',
      stamp: props.clock.stampNow(),
      body: {
        ...(cardRevision !== '' && { cardRevision }),
        ...(joker.measure !== null && { joker: joker.measure }),
        ...(bingo.measure !== null && { bingo: bingo.measure }),
        ...(target.value !== null && {
          targetReductionFraction: Number((target.value / 100).toPrecision(12)),
        }),
        ...(stopWords !== '' && { stopWords }),
        ...(weather !== '' && { weather }),
      },
    });
  return (
    <section className={styles.page} aria-label="Brief held">
      <div className={styles.fields}>
        <FormText {...shared} name="cardRevision" label="Card revision" first={sheet.revision} />
        <FormNumberField
          {...shared}
          name="target"
          label="Target fuel-flow reduction"
          unit="%"
          number={target}
        />
        <FormMeasureField
          {...shared}
          name="joker"
          label="Joker fuel"
          measure={joker}
          units={masses}
        />
        <FormMeasureField
          {...shared}
          name="bingo"
          label="Bingo fuel"
          measure={bingo}
          units={masses}
        />
      </div>
      <FormText
        {...shared}
        name="stopWords"
        label="Stop words"
        first={sheet.stopWords ?? ''}
        long
      />
      <FormText {...shared} name="weather" label="Weather and cirrus" long />
      <WriteKey act="brief.write" faults={faults} refused={refused} onPress={send} />
    </section>
  );
}

/** The key that writes a form, with what keeps it from being written. */
export function WriteKey(props: {
  readonly act: string;
  readonly faults: readonly string[];
  readonly refused: string | null;
  readonly onPress: () => void;
}) {
  return (
    <div className={styles.keys}>
      <GroundButton
        act={props.act}
        strong
        disabled={props.faults.length > 0}
        onPress={props.onPress}
      >
        Write into the record
      </GroundButton>
      {props.refused === null ? null : <b role="alert">{props.refused}</b>}
    </div>
  );
}
