import { findingsByPanel, NOT_YET_INSPECTED } from '../../../analysis/encounters/surface.ts';
import { items } from '../../../record/trail.ts';
import { GroundTable } from '../../kit/GroundTable.tsx';
import type { Desk } from '../context.ts';
import { laminarTimes } from './laminarTimes.ts';
import styles from './Panels.module.css';
import { clockWords } from '../timeWords.ts';

const COVERS = { fitted: 'fitted', clear: 'clear', hung: 'hung', unknown: 'unknown' } as const;

/** Each panel: its cover, how long it was called laminar with the suction on, what was found on it, and its squawks. */
export function PanelsTab({ desk }: { readonly desk: Desk }) {
  const { state } = desk.view;
  const findings = findingsByPanel(desk.view);
  const times = laminarTimes(desk.view);
  const squawks = squawksByPanel(desk);
  const panels = state.sheet?.panels ?? [];
  const notYet = panels.filter(
    ({ id }) => (findings.get(id)?.verdict ?? 'notInspected') === 'notInspected',
  );
  return (
    <section className={styles.panels} aria-label="Panels">
      <p className={styles.say}>
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
      <SampleTable desk={desk} />
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

/** Where each sample is: exposed, handed over, answered by the laboratory. */
function SampleTable({ desk }: { readonly desk: Desk }) {
  const handed = new Map<string, string>();
  const results = new Map<string, string>();
  for (const { effective, standing } of desk.view.standing) {
    if (standing === 'stands' && effective.kind === 'sampleHandedOver') {
      for (const sample of effective.body.samples) {
        handed.set(sample, effective.body.to);
      }
    }
    if (standing === 'stands' && effective.kind === 'labResultReceived') {
      const { sample, meanSizeMicrometre, numberPerLitre } = effective.body;
      const size = meanSizeMicrometre === undefined ? 'no size' : `${meanSizeMicrometre} µm`;
      const number = numberPerLitre === undefined ? 'no number' : `${numberPerLitre} a litre`;
      results.set(sample, `${size}, ${number}`);
    }
  }
  return (
    <GroundTable
      caption="Samples and their custody"
      rows={[...items(desk.view.state.samples)]}
      keyOf={({ sample, opened }) => `${sample} ${opened.by}`}
      empty="No sample was taken."
      columns={[
        { key: 'sample', head: 'Sample', cell: ({ sample }) => <b>{sample}</b> },
        {
          key: 'purpose',
          head: 'Purpose',
          cell: ({ sampler, purpose }) =>
            [sampler, purpose].filter((word) => word !== '').join(', '),
        },
        {
          key: 'exposed',
          head: 'Exposed',
          cell: ({ opened, closed }) =>
            closed === null ? 'never closed' : `${Math.round((closed.at - opened.at) / 1000)} s`,
        },
        {
          key: 'handed',
          head: 'Handed to',
          cell: ({ sample }) => handed.get(sample) ?? 'not handed over',
        },
        { key: 'lab', head: 'Laboratory', cell: ({ sample }) => results.get(sample) ?? 'pending' },
      ]}
    />
  );
}
