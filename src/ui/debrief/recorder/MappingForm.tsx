import { useState } from 'react';
import { CHANNEL_USES } from '../../../analysis/recorder/trace.ts';
import { isUnit, type Unit } from '../../../aero/units.ts';
import type { RecorderHead } from '../../../file/recorder/recorderHead.ts';
import { TIME_FORMS, type TimeForm } from '../../../file/recorder/recorderTimes.ts';
import { ChoiceField, GroundButton, TextField } from '../../kit/Ground.tsx';
import { typedInstant } from '../timeWords.ts';
import {
  lacking,
  unitsOf,
  usualUnit,
  type MappedChannel,
  type RecorderMapping,
} from './mapping.ts';
import styles from './Recorder.module.css';
import { FORM_WORDS, unitWords, USE_WORDS } from './recorderWords.ts';

const NONE = 'none';

/** What each column is and in which unit: chosen once a recorder, offered again for the next file with the same names. */
export function MappingForm(props: {
  readonly head: RecorderHead;
  readonly first: RecorderMapping;
  /** Whether `first` was chosen for this recorder before. */
  readonly isKept: boolean;
  readonly date: string;
  readonly engineCount: number;
  readonly units: { readonly flow: Unit; readonly height: Unit };
  readonly onRead: (mapping: RecorderMapping, startMs: number) => void;
}) {
  const { head, engineCount, units } = props;
  const [mapping, setMapping] = useState(props.first);
  const [date, setDate] = useState(props.date);
  const [start, setStart] = useState('00:00:00');
  const { time, channels } = mapping;
  const needsDay = time.form !== 'iso' && time.form !== 'unix';
  const startMs = typedInstant(date, time.form === 'elapsed' ? start : '00:00');
  const missing = lacking(mapping, engineCount);
  const choose = (column: number, chosen: MappedChannel | null): void => {
    // One column a use: the one that had it before gives it up.
    const others = channels.filter(
      (one) =>
        one.column !== column &&
        (chosen === null ||
          chosen.use === 'other' ||
          one.use !== chosen.use ||
          one.engine !== chosen.engine),
    );
    const all = chosen === null ? others : [...others, chosen];
    setMapping({ time, channels: all.toSorted((a, b) => a.column - b.column) });
  };
  return (
    <section aria-label="Columns of the recorder" className={styles.part}>
      <h2>What each column is</h2>
      <p>
        {props.isKept
          ? 'As chosen the last time for a file with these names. Look it over, then read.'
          : 'Guessed from the names. Look it over: the choice is kept on this tablet for the next file of this recorder.'}
      </p>
      <div className={styles.time}>
        <ChoiceField
          act="recorder-time-column"
          label="Time column"
          value={String(time.column)}
          choices={head.headers.map((label, column) => ({ value: String(column), label }))}
          onChange={(value) => setMapping({ channels, time: { ...time, column: Number(value) } })}
        />
        <ChoiceField
          act="recorder-time-form"
          label="Time is"
          value={time.form}
          choices={TIME_FORMS.map((value) => ({ value, label: FORM_WORDS[value] }))}
          onChange={(value) => setMapping({ channels, time: { ...time, form: formOf(value) } })}
        />
        {needsDay ? (
          <TextField
            act="recorder-date"
            label="First day, UTC"
            value={date}
            fault={startMs === null ? 'Write it as 2032-06-02.' : null}
            onChange={setDate}
          />
        ) : null}
        {time.form === 'elapsed' ? (
          <TextField
            act="recorder-start"
            label="Zero was at, Z"
            value={start}
            fault={startMs === null ? 'Write it as 21:39:00.' : null}
            onChange={setStart}
          />
        ) : null}
      </div>
      <div className={styles.scroll}>
        <table className={styles.columns}>
          <caption>Columns</caption>
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">First values</th>
              <th scope="col">Read as</th>
              <th scope="col">Unit</th>
            </tr>
          </thead>
          <tbody>
            {head.headers.map((header, column) =>
              column === time.column ? null : (
                <ColumnRow
                  key={`${column} ${header}`}
                  header={header}
                  column={column}
                  samples={head.samples.slice(0, 3).map((cells) => cells[column] ?? '')}
                  chosen={channels.find((one) => one.column === column) ?? null}
                  engineCount={engineCount}
                  units={units}
                  onChoose={(chosen) => choose(column, chosen)}
                />
              ),
            )}
          </tbody>
        </table>
      </div>
      {missing.length === 0 ? null : (
        <p className={styles.note}>
          No column is read as {missing.join(', ')}: the clock may still be found, reductions not.
        </p>
      )}
      <GroundButton
        act="recorder-read"
        strong
        disabled={channels.length === 0 || (needsDay && startMs === null)}
        onPress={() => props.onRead(mapping, startMs ?? 0)}
      >
        Read the file
      </GroundButton>
    </section>
  );
}

function ColumnRow(props: {
  readonly header: string;
  readonly column: number;
  readonly samples: readonly string[];
  readonly chosen: MappedChannel | null;
  readonly engineCount: number;
  readonly units: { readonly flow: Unit; readonly height: Unit };
  readonly onChoose: (chosen: MappedChannel | null) => void;
}) {
  const { header, column, chosen } = props;
  const uses = CHANNEL_USES.flatMap((use): readonly Pick<MappedChannel, 'use' | 'engine'>[] =>
    use === 'fuelFlow'
      ? Array.from({ length: props.engineCount }, (_, index) => ({ use, engine: index + 1 }))
      : [{ use, engine: null }],
  );
  const keyOf = ({ use, engine }: Pick<MappedChannel, 'use' | 'engine'>): string =>
    `${use} ${engine ?? ''}`;
  const units = chosen === null ? [] : unitsOf(chosen.use);
  return (
    <tr>
      <th scope="row">{header}</th>
      <td className={styles.samples}>{props.samples.join('  ')}</td>
      <td>
        <select
          data-act={`recorder-use-${column}`}
          aria-label={`${header} is read as`}
          value={chosen === null ? NONE : keyOf(chosen)}
          onChange={({ target }) => {
            const found = uses.find((one) => keyOf(one) === target.value);
            props.onChoose(
              found === undefined
                ? null
                : { column, ...found, unit: usualUnit(found.use, props.units) },
            );
          }}
        >
          <option value={NONE}>not read</option>
          {uses.map((one) => (
            <option key={keyOf(one)} value={keyOf(one)}>
              {USE_WORDS[one.use]} {one.engine ?? ''}
            </option>
          ))}
        </select>
      </td>
      <td>
        {units.length === 0 ? null : (
          <select
            data-act={`recorder-unit-${column}`}
            aria-label={`Unit of ${header}`}
            value={chosen?.unit ?? ''}
            onChange={({ target }) => {
              if (chosen !== null && isUnit(target.value)) {
                props.onChoose({ ...chosen, unit: target.value });
              }
            }}
          >
            {units.map((unit) => (
              <option key={unit} value={unit}>
                {unit === '1' ? 'none' : unitWords(unit)}
              </option>
            ))}
          </select>
        )}
      </td>
    </tr>
  );
}

function formOf(value: string): TimeForm {
  return TIME_FORMS.find((form) => form === value) ?? 'iso';
}
