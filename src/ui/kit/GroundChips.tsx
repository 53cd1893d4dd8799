import { useId } from 'react';
import styles from './GroundChips.module.css';

/** One of a few, each a key of its own: a list that drops down hides its words and asks for a second aim. */
export function ChipField<Value extends string>(props: {
  /** Stable name of the group; each chip is `act=value`. */
  readonly act: string;
  readonly label: string;
  readonly value: Value | null;
  readonly choices: readonly { readonly value: Value; readonly label: string }[];
  readonly onChange: (value: Value) => void;
  readonly fault?: string | null;
  readonly hint?: string;
  /** Beside a field whose label says it already: the legend is for readers only. */
  readonly quiet?: boolean;
}) {
  const id = useId();
  const told = props.fault ?? props.hint;
  return (
    <fieldset
      className={styles.group}
      aria-describedby={told === undefined ? undefined : `${id}-told`}
    >
      <legend className={props.quiet === true ? styles.hidden : styles.legend}>
        {props.label}
      </legend>
      <span className={styles.chips}>
        {props.choices.map((choice) => (
          <label
            key={choice.value}
            className={styles.chip}
            data-act={`${props.act}=${choice.value}`}
          >
            <input
              type="radio"
              name={id}
              value={choice.value}
              checked={choice.value === props.value}
              onChange={() => props.onChange(choice.value)}
            />
            <span>{choice.label}</span>
          </label>
        ))}
      </span>
      {told === undefined ? null : (
        <span
          id={`${id}-told`}
          className={props.fault === undefined || props.fault === null ? styles.hint : styles.fault}
        >
          {told}
        </span>
      )}
    </fieldset>
  );
}
