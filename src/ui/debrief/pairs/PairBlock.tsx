import { useState } from 'react';
import type { ObservationPair, PairDecision } from '../../../analysis/observationPairs.ts';
import { canonicalJson } from '../../../record/canonical.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { entryWords } from '../../../record/lang.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { whyReadOnly, type Desk } from '../context.ts';
import { bodyFields } from '../fields/bodyFields.ts';
import { fieldLabel, valueWords } from '../fields/labels.ts';
import { isStruck } from '../standing.ts';
import { spokenLength } from '../timeWords.ts';
import styles from './Pairs.module.css';
import { ResolveForm } from './ResolveForm.tsx';

/** Two recorders' observations side by side, what they differ in, and what a person made of them. */
export function PairBlock({
  desk,
  pair,
  onOpen,
}: {
  readonly desk: Desk;
  readonly pair: ObservationPair;
  readonly onOpen: (entry: StandingEntry['entry']['id']) => void;
}) {
  const [isDeciding, setDeciding] = useState(false);
  const both = [pair.first, pair.second];
  const { decided } = pair;
  return (
    <div className={styles.pair} data-act="pair">
      <div className={styles.sides}>
        {both.map((standing) => (
          <div key={standing.entry.id} className={styles.side}>
            <p>
              {desk.axis.time.words(desk.base.shown(standing.at, standing.entry.rec))}{' '}
              <small>
                {standing.entry.author}, {standing.entry.role}
              </small>
            </p>
            <p>
              <Said desk={desk} standing={standing} />
            </p>
            <GroundButton act="pair-open" onPress={() => onOpen(standing.entry.id)}>
              Open
            </GroundButton>
          </div>
        ))}
      </div>
      <p>{differenceWords(desk, pair)}</p>
      <p>
        {decided === null ? (
          'Nobody has decided; both count.'
        ) : (
          <b>{decidedWords(desk, decided)}</b>
        )}
      </p>
      {whyReadOnly(desk.journal) === null ? (
        <GroundButton
          act="pair-decide"
          pressed={isDeciding}
          onPress={() => setDeciding(!isDeciding)}
        >
          {decided === null ? 'Decide' : 'Decide again'}
        </GroundButton>
      ) : null}
      {isDeciding ? (
        <ResolveForm desk={desk} pair={pair} onDone={() => setDeciding(false)} />
      ) : null}
    </div>
  );
}

function Said({ desk, standing }: { readonly desk: Desk; readonly standing: StandingEntry }) {
  const words = entryWords(standing.effective, desk.view.state.sheet);
  return isStruck(standing) ? <del>{words}</del> : <b>{words}</b>;
}

function decidedWords(desk: Desk, { standsAlone, reason, author, role }: PairDecision): string {
  const alone = standsAlone === null ? undefined : desk.view.byId(standsAlone);
  const verdict =
    alone === undefined
      ? 'both stand, two events'
      : `the one by ${alone.entry.author}, entry ${alone.entry.seq}, stands`;
  const who = role === '' ? author : `${author}, ${role}`;
  return `Decided by ${who}: ${verdict}. ${reason}`;
}

/** The seconds between them say it already. */
const ABOUT_TIME: readonly string[] = ['at', 'doubtS', 'basis', 'glance'];

/** "12 seconds apart; State LAM, TRB": what a person weighs. */
function differenceWords(desk: Desk, { first, second }: ObservationPair): string {
  const { sheet } = desk.view.state;
  const shown = ({ at, entry }: StandingEntry) => desk.base.shown(at, entry.rec);
  const [mine, theirs] = [first, second].map(
    ({ effective }) => new Map(bodyFields(effective).map(({ path, value }) => [path, value])),
  );
  const paths = [...new Set([...(mine?.keys() ?? []), ...(theirs?.keys() ?? [])])];
  const differing = paths
    .filter((path) => !ABOUT_TIME.includes(path))
    .filter(
      (path) => canonicalJson(mine?.get(path) ?? null) !== canonicalJson(theirs?.get(path) ?? null),
    )
    .map((path) => {
      const words = [mine, theirs].map((fields) => valueWords(path, fields?.get(path), (at) => at));
      return `${fieldLabel(path, sheet)}: ${words.join(' against ')}`;
    });
  const apart = `${spokenLength(shown(second) - shown(first))} apart`;
  return [apart, ...(differing.length === 0 ? ['they say the same'] : differing)].join('; ');
}
