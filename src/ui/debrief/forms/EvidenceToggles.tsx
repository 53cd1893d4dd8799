import type { EntryId } from '../../../record/brand.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { entryWords } from '../../../record/lang.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import { clockWords } from '../timeWords.ts';
import styles from './Forms.module.css';

const OFFERED_AT_MOST = 8;

/** Entries that speak of the chosen panels, the newest first, and the one selected on the timeline: what shows the fault. */
export function EvidenceToggles(props: {
  readonly desk: Desk;
  readonly panels: readonly string[];
  readonly chosen: readonly EntryId[];
  readonly onChange: (chosen: readonly EntryId[]) => void;
}) {
  const { desk, chosen, onChange } = props;
  const offered = desk.view.standing
    .filter(
      (one) =>
        one.standing === 'stands' &&
        (one.entry.id === desk.selected || speaksOf(one, props.panels)),
    )
    .slice(-OFFERED_AT_MOST)
    .toReversed();
  return offered.length === 0 ? null : (
    <fieldset className={styles.toggles}>
      <legend>Evidence, from the log</legend>
      {offered.map(({ entry, effective, at }) => (
        <GroundButton
          key={entry.id}
          act={`evidence-${entry.seq}`}
          pressed={chosen.includes(entry.id)}
          onPress={() =>
            onChange(
              chosen.includes(entry.id)
                ? chosen.filter((one) => one !== entry.id)
                : [...chosen, entry.id],
            )
          }
        >
          {clockWords(desk.base.shown(at, entry.rec))}{' '}
          {shortened(entryWords(effective, desk.view.state.sheet))}
        </GroundButton>
      ))}
    </fieldset>
  );
}

function speaksOf({ effective }: StandingEntry, panels: readonly string[]): boolean {
  switch (effective.kind) {
    case 'panelsInspected':
      return effective.body.findings.some(({ panel }) => panels.includes(panel));
    case 'coversReleased':
      return (effective.body.hung ?? []).some((panel) => panels.includes(panel));
    case 'laminarLost':
      return (effective.body.panels ?? []).some((panel) => panels.includes(panel));
    case 'panelStateCalled':
      return effective.body.state !== 'laminar' && panels.includes(effective.body.panel);
    default:
      return false;
  }
}

const LETTERS_AT_MOST = 60;

function shortened(words: string): string {
  return words.length <= LETTERS_AT_MOST ? words : `${words.slice(0, LETTERS_AT_MOST - 1)}…`;
}
