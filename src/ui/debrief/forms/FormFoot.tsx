import { GroundButton } from '../../kit/Ground.tsx';
import styles from './Forms.module.css';

/** The fault in words, and the one key that writes. */
export function FormFoot(props: {
  readonly fault: string | null;
  readonly words: string;
  readonly isSaving: boolean;
  readonly onSave: () => void;
}) {
  return (
    <>
      {props.fault === null ? null : (
        <p className={styles.fault} role="alert">
          {props.fault}
        </p>
      )}
      <div className={styles.keys}>
        <GroundButton act="save" strong disabled={props.isSaving} onPress={props.onSave}>
          {props.words}
        </GroundButton>
      </div>
    </>
  );
}

/** An optional field of a body: absent when nothing was typed. */
export function optional<Name extends string>(
  name: Name,
  typed: string,
): { readonly [Key in Name]?: string } {
  const text = typed.trim();
  const field: { [Key in Name]?: string } = {};
  if (text !== '') {
    Object.assign(field, { [name]: text });
  }
  return field;
}
