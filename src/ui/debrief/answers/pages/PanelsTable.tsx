import { findingsByPanel, NOT_YET_INSPECTED } from '../../../../analysis/encounters/surface.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import type { Desk } from '../../context.ts';
import { laminarTimes } from '../../panels/laminarTimes.ts';
import styles from '../Answers.module.css';
import { clockWords } from '../../timeWords.ts';

const COVERS = { fitted: 'fitted', clear: 'clear', hung: 'hung', unknown: 'unknown' } as const;

/** Each panel: its cover, how long it was called laminar with the suction on, what was found on it, and its squawks. */
export function PanelsTable({ desk }: { readonly desk: Desk }) {
  const { state } = desk.view;
  const findings = findingsByPanel(desk.view);
  const times = laminarTimes(desk.view);
  const squawks = squawksByPanel(desk);
  const panels = state.sheet?.panels ?? [];
  const notYet = panels.filter(
    ({ id }) => (findings.get(id)?.verdict ?? 'notInspected') === 'notInspected',
  );
  return (
    <section aria-label="Panels">
      <p>
        {notYet.length === 0
          ? 'Every panel was inspected.'
          : `Not yet inspected: ${notYet.map(({ id }) => id).join(', ')}.`}
      </p>
      <GroundTable
        caption="Panels, covers and findings"
        rows={panels}
        keyOf={({ id }) => id}
        empty="The flight sheet has no panel."
        columns={[
          { key: 'panel', head: 'Panel', cell: ({ id }) => <b>{id}</b> },
          { key: 'cover', head: 'Cover', cell: ({ id }) => COVERS[state.covers[id] ?? 'unknown'] },
          {
            key: 'laminar',
            head: 'Laminar, of suction-on time assessed',
            cell: ({ id }) => times.get(id) ?? 'not assessed',
          },
          { key: 'last', head: 'Last called, Z', cell: ({ id }) => lastCall(desk, id) },
          {
            key: 'finding',
            head: 'Inspection',
            cell: ({ id }) => {
              const found = findings.get(id);
              return found === undefined || found.verdict === 'notInspected' ? (
                <span className={styles.notYet}>{NOT_YET_INSPECTED}</span>
              ) : (
                found.words
              );
            },
          },
          { key: 'squawk', head: 'Squawks', cell: ({ id }) => (squawks.get(id) ?? []).join('; ') },
        ]}
      />
    </section>
  );
}

function lastCall(desk: Desk, panel: string): string {
  const now = desk.view.state.panels[panel];
  if (now === undefined) {
    return 'never';
  }
  const by = desk.view.byId(now.by);
  const at = by === undefined ? now.at : desk.base.shown(now.at, by.entry.rec);
  return `${STATES[now.state]} ${clockWords(at)}`;
}

const STATES = {
  laminar: 'laminar',
  intermittent: 'intermittent',
  turbulent: 'turbulent',
  notAssessed: 'not assessed',
} as const;

function squawksByPanel(desk: Desk): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const { effective, standing } of desk.view.standing) {
    if (standing === 'stands' && effective.kind === 'squawkRaised') {
      const { squawk, panels, words, labourH } = effective.body;
      const text = `${squawk} ${words}${labourH === undefined ? '' : `, ${labourH} h`}`;
      for (const panel of panels) {
        found.set(panel, [...(found.get(panel) ?? []), text]);
      }
    }
  }
  return found;
}
