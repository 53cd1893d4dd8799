import styles from './Debrief.module.css';
import type { Desk } from './context.ts';

/** Who holds the pen: every entry carries its author. */
export function PenChoice({ desk }: { readonly desk: Desk }) {
  const now = desk.journal.author();
  const people = desk.view.state.sheet?.people ?? [];
  const known = people.map(({ id, role, name }) => ({ author: name ?? id, role }));
  const choices = known.some((one) => one.author === now.author && one.role === now.role)
    ? known
    : [now, ...known];
  const keyOf = ({ author, role }: { author: string; role: string }): string =>
    `${author}\n${role}`;
  return (
    <label className={styles.pen}>
      <span>Pen</span>
      <select
        data-act="pen"
        defaultValue={keyOf(now)}
        onChange={(event) => {
          const chosen = choices.find((one) => keyOf(one) === event.target.value);
          if (chosen !== undefined) {
            desk.journal.setAuthor(chosen);
          }
        }}
      >
        {choices.map((one) => (
          <option key={keyOf(one)} value={keyOf(one)}>
            {one.role === '' ? one.author : `${one.role}, ${one.author}`}
          </option>
        ))}
      </select>
    </label>
  );
}
