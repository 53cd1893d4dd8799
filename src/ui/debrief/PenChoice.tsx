import styles from './Debrief.module.css';
import type { Desk } from './context.ts';

const penWords = ({ author, role }: { author: string; role: string }): string => {
  if (author === '') {
    return 'nobody yet';
  }
  return role === '' ? author : `${role}, ${author}`;
};

/** Who holds the pen: every entry carries its author. */
export function PenChoice({ desk }: { readonly desk: Desk }) {
  const now = desk.writer.pen;
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
        value={keyOf(now)}
        onChange={(event) => {
          const chosen = choices.find((one) => keyOf(one) === event.target.value);
          if (chosen !== undefined) {
            desk.writer.takePen(chosen);
          }
        }}
      >
        {choices.map((one) => (
          <option key={keyOf(one)} value={keyOf(one)}>
            {penWords(one)}
          </option>
        ))}
      </select>
    </label>
  );
}
