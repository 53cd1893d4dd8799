import { GroundButton } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import styles from './Forms.module.css';

/** Which panels something is about, each a key. */
export function PanelToggles(props: {
  readonly desk: Desk;
  readonly chosen: readonly string[];
  readonly onChange: (chosen: readonly string[]) => void;
}) {
  const { chosen } = props;
  return (
    <fieldset className={styles.toggles}>
      <legend>Panels</legend>
      {(props.desk.view.state.sheet?.panels ?? []).map(({ id }) => (
        <GroundButton
          key={id}
          act={`panel-${id}`}
          pressed={chosen.includes(id)}
          onPress={() =>
            props.onChange(
              chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id],
            )
          }
        >
          {id}
        </GroundButton>
      ))}
    </fieldset>
  );
}

/** Chosen panels in the order of the flight sheet, then whatever place was typed: cabin, all. */
export function placesOf(desk: Desk, chosen: readonly string[], typed: string): readonly string[] {
  const known = (desk.view.state.sheet?.panels ?? []).map(({ id }) => id);
  const other = typed.split(/[\s,;]+/).filter((word) => word !== '');
  return [...known.filter((id) => chosen.includes(id)), ...other];
}
