import { useState } from 'react';
import { losses } from '../../../analysis/encounters/losses.ts';
import { evidenceWords } from '../../../analysis/words/evidence.ts';
import type { FlightView } from '../../../record/flight.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { CauseForm } from '../answers/pages/CauseForm.tsx';
import { lossesTogether, type LossesTogether } from '../answers/pages/lossesTogether.ts';
import { whyReadOnly, type Desk } from '../context.ts';
import styles from './EntryDetail.module.css';

const byView = new WeakMap<FlightView, readonly LossesTogether[]>();

function lossesOf(view: FlightView): readonly LossesTogether[] {
  const known = byView.get(view) ?? lossesTogether(losses(view));
  byView.set(view, known);
  return known;
}

/** Only a call on the flow or a change of suction can begin a loss. */
function mayBeLoss({ effective }: StandingEntry): boolean {
  switch (effective.kind) {
    case 'laminarLost':
    case 'laminarGained':
    case 'probesRead':
    case 'panelStateCalled':
    case 'suctionTurnedOn':
      return true;
    default:
      return false;
  }
}

/** Where the selected entry found a loss: what speaks for which cause, and the decision of a person. */
export function CauseOf({
  desk,
  standing,
}: {
  readonly desk: Desk;
  readonly standing: StandingEntry;
}) {
  const [isDeciding, setDeciding] = useState(false);
  const { sheet } = desk.view.state;
  const groups = mayBeLoss(standing)
    ? lossesOf(desk.view).filter(({ by }) => by === standing.entry.id)
    : [];
  const [group] = groups;
  if (group === undefined) {
    return null;
  }
  const speaks = groups.flatMap(({ losses: together }) =>
    together.flatMap(({ evidence }) => evidence.flatMap((one) => evidenceWords(one, sheet) ?? [])),
  );
  const causes = group.losses[0]?.causes ?? [];
  return (
    <section aria-label="Cause of the loss">
      <h3 className={styles.sub}>Cause of the loss</h3>
      <p className={styles.quiet}>Speaks for: {[...new Set(speaks)].join('; ')}</p>
      <p>
        {causes.length === 0
          ? 'No cause is decided.'
          : causes.map(({ cause, role }) => `Decided by ${role}: ${cause}.`).join(' ')}
      </p>
      {whyReadOnly(desk.journal) === null ? (
        <GroundButton
          act="detail-cause"
          pressed={isDeciding}
          onPress={() => setDeciding(!isDeciding)}
        >
          Decide cause
        </GroundButton>
      ) : null}
      {isDeciding ? (
        <CauseForm desk={desk} group={group} onDone={() => setDeciding(false)} />
      ) : null}
    </section>
  );
}
