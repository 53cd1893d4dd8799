import type { PanelState } from '../../../record/kinds.ts';
import { items } from '../../../record/trail.ts';
import { STATE_WORDS } from '../../../record/entryPhrases.ts';
import type { Printed } from './printed.ts';
import styles from './Print.module.css';
import { SheetHead } from './SheetHead.tsx';
import { WingPlan } from './WingPlan.tsx';

/** Both wings as they were called at the end of each run. */
export function WingMaps({ printed }: { readonly printed: Printed }) {
  const { view } = printed.desk;
  const { sheet } = view.state;
  const runs = [...items(view.state.runs)];
  return (
    <>
      <SheetHead printed={printed} what="Wing maps at the end of each run" />
      <p className={styles.key}>
        Empty: laminar (LAM). Half filled: intermittent (INT). Full: turbulent (TRB). Broken
        outline: not assessed (?). Small squares are probes, from the root outwards.
      </p>
      {sheet === null ? <p>There is no flight sheet, so no wing.</p> : null}
      <div className={styles.maps}>
        {sheet === null
          ? null
          : runs.map((run) => {
              const last = run.ended ?? run.started;
              const state = view.stateAt(last.by);
              const stateOf = (panel: string): PanelState =>
                state?.panels[panel]?.state ?? 'notAssessed';
              const card = sheet.testCards.find(({ id }) => id === run.point);
              return (
                <figure key={`${run.point} ${run.run}`}>
                  <figcaption>
                    <b>
                      {run.point} r{run.run}
                    </b>{' '}
                    {card?.setting ?? ''} <span>{printed.clock(last.at, last.by)} Z</span>
                  </figcaption>
                  <WingPlan
                    sheet={sheet}
                    label={`Wings at the end of ${run.point} run ${run.run}`}
                    stateOf={stateOf}
                    wordsOf={(panel) => {
                      const called = stateOf(panel);
                      return called === 'notAssessed' ? '?' : STATE_WORDS[called];
                    }}
                    probeOf={(probe) => state?.probes[probe]?.state ?? 'notAssessed'}
                  />
                </figure>
              );
            })}
      </div>
      {runs.length === 0 ? <p>No test point was started.</p> : null}
    </>
  );
}
