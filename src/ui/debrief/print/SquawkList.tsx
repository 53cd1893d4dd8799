import { findingsByPanel } from '../../../analysis/encounters/surface.ts';
import { entryWords } from '../../../record/lang.ts';
import type { Printed } from './printed.ts';
import styles from './Print.module.css';
import { SheetHead } from './SheetHead.tsx';
import { squawksOf, type Squawk } from './squawks.ts';

/** For the ground crew: where, what, evidence, hours, and a place to sign what was done. */
export function SquawkList({ printed }: { readonly printed: Printed }) {
  const { view } = printed.desk;
  const squawks = squawksOf(view);
  const findings = findingsByPanel(view);
  const panels = view.state.sheet?.panels ?? [];
  return (
    <>
      <SheetHead printed={printed} what="Squawk list" />
      <table className={styles.list}>
        <thead>
          <tr>
            <th>No</th>
            <th>Where</th>
            <th>What is wrong, what to do</th>
            <th>Evidence</th>
            <th className={styles.right}>Hours</th>
            <th>Done, by whom</th>
          </tr>
        </thead>
        <tbody>
          {squawks.map((squawk) => (
            <tr key={squawk.by}>
              <td>
                <b>{squawk.squawk}</b>
              </td>
              <td>
                {squawk.panels.map((panel) => (
                  <p key={panel}>{panel}</p>
                ))}
              </td>
              <td>
                {squawk.severity === undefined ? null : <b>{squawk.severity}. </b>}
                {squawk.words}
              </td>
              <td>
                {squawk.panels.flatMap((panel) => {
                  const found = findings.get(panel);
                  return found === undefined
                    ? []
                    : [<p key={panel}>{`${panel} inspected: ${found.words}`}</p>];
                })}
                {evidenceOf(printed, squawk).map((words) => (
                  <p key={words}>{words}</p>
                ))}
              </td>
              <td className={styles.right}>{squawk.labourH ?? ''}</td>
              <td>
                {squawk.actions.length === 0 ? <p className={styles.blank} /> : null}
                {squawk.actions.map((done, place) => (
                  <p key={place}>
                    {[
                      done.action,
                      done.material,
                      done.labourH === undefined ? undefined : `${done.labourH} h`,
                    ]
                      .filter((part) => part !== undefined)
                      .join(', ')}
                  </p>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {squawks.length === 0 ? <p>No squawk was raised.</p> : null}
      <h2>Inspection before wiping</h2>
      <table className={styles.list}>
        <tbody>
          {panels.map(({ id }) => (
            <tr key={id}>
              <td>
                <b>{id}</b>
              </td>
              <td>{findings.get(id)?.words ?? 'not yet inspected'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function evidenceOf({ desk, clock }: Printed, { evidence = [] }: Squawk): readonly string[] {
  return evidence.flatMap((id) => {
    const found = desk.view.byId(id);
    return found === undefined
      ? [`entry ${id.slice(0, 8)}, which is not here`]
      : [`${clock(found.at, id)} ${entryWords(found.effective, desk.view.state.sheet)}`];
  });
}
