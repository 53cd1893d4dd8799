import { useId, type ReactNode } from 'react';
import styles from './Ground.module.css';

/** A key of Brief and Debrief: at least 10 mm and 44 px. `strong` is the one that the page is about. */
export function GroundButton(props: {
  readonly act: string;
  readonly onPress: () => void;
  readonly children: ReactNode;
  readonly pressed?: boolean;
  readonly strong?: boolean;
  readonly disabled?: boolean;
  /** What a reader says, where the key shows less. */
  readonly label?: string;
}) {
  return (
    <button
      type="button"
      data-act={props.act}
      aria-label={props.label}
      className={props.strong === true ? `${styles.key} ${styles.strong}` : styles.key}
      aria-pressed={props.pressed}
      disabled={props.disabled}
      onClick={props.onPress}
    >
      {props.children}
    </button>
  );
}

interface FieldProps {
  readonly act: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** What is wrong with it, in the writer's words; the value stays as typed. */
  readonly fault?: string | null;
  readonly hint?: string;
  readonly disabled?: boolean;
}

export function TextField(props: FieldProps & { readonly long?: boolean }) {
  const id = useId();
  const told = toldBy(id, props);
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{props.label}</label>
      {props.long === true ? (
        <textarea
          id={id}
          data-act={props.act}
          value={props.value}
          disabled={props.disabled}
          aria-invalid={hasFault(props)}
          aria-describedby={told}
          rows={3}
          onChange={(event) => props.onChange(event.target.value)}
        />
      ) : (
        <input
          id={id}
          data-act={props.act}
          value={props.value}
          disabled={props.disabled}
          aria-invalid={hasFault(props)}
          aria-describedby={told}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          onChange={(event) => props.onChange(event.target.value)}
        />
      )}
      <Told id={id} {...props} />
    </div>
  );
}

/** A number as text, so that a half-typed one is not thrown away; `readNumber` says what it is. */
export function NumberField(props: FieldProps & { readonly unit?: string }) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{props.label}</label>
      <span className={styles.withUnit}>
        <input
          id={id}
          data-act={props.act}
          value={props.value}
          disabled={props.disabled}
          inputMode="decimal"
          aria-invalid={hasFault(props)}
          aria-describedby={toldBy(id, props)}
          autoComplete="off"
          onChange={(event) => props.onChange(event.target.value)}
        />
        {props.unit === undefined ? null : <span className={styles.unit}>{props.unit}</span>}
      </span>
      <Told id={id} {...props} />
    </div>
  );
}

export function ChoiceField(
  props: FieldProps & {
    readonly choices: readonly { readonly value: string; readonly label: string }[];
  },
) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{props.label}</label>
      <select
        id={id}
        data-act={props.act}
        value={props.value}
        disabled={props.disabled}
        aria-invalid={hasFault(props)}
        aria-describedby={toldBy(id, props)}
        onChange={(event) => props.onChange(event.target.value)}
      >
        {props.choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
      <Told id={id} {...props} />
    </div>
  );
}

/** A yes or no in words: the square is filled when it holds. */
export function TickField(props: {
  readonly act: string;
  readonly label: string;
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
  readonly disabled?: boolean;
}) {
  return (
    <label className={styles.tick}>
      <input
        type="checkbox"
        data-act={props.act}
        checked={props.value}
        disabled={props.disabled}
        onChange={(event) => props.onChange(event.target.checked)}
      />
      <span>{props.label}</span>
    </label>
  );
}

/** What a typed number is: blank, a finite number (comma or point, true minus too), or not a number. */
export function readNumber(
  typed: string,
):
  | { readonly kind: 'blank' }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'fault' } {
  const plain = typed
    .replace(/[\s\u00a0\u202f]/g, '')
    .replace(',', '.')
    .replace('\u2212', '-');
  if (plain === '') {
    return { kind: 'blank' };
  }
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) && Number.isFinite(Number(plain))
    ? { kind: 'number', value: Number(plain) }
    : { kind: 'fault' };
}

function hasFault(props: FieldProps): boolean {
  return props.fault !== undefined && props.fault !== null;
}

function toldBy(id: string, props: FieldProps): string | undefined {
  return hasFault(props) || props.hint !== undefined ? `${id}-told` : undefined;
}

function Told({ id, fault, hint }: FieldProps & { readonly id: string }) {
  const words = fault ?? hint;
  return words === undefined ? null : (
    <span
      id={`${id}-told`}
      className={fault === undefined || fault === null ? styles.hint : styles.fault}
    >
      {words}
    </span>
  );
}
