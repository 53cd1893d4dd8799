import { useState } from 'react';
import { reminderTally } from '../../../analysis/reminderTally.ts';
import { doubtRuleWords } from '../../../analysis/words/orderRules.ts';
import type { EntryId } from '../../../record/brand.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { entryWords } from '../../../record/lang.ts';
import { items } from '../../../record/trail.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import { entriesAbout } from '../entriesAbout.ts';
import { LinkWords } from '../detail/Chain.tsx';
import { PairBlock } from '../pairs/PairBlock.tsx';
import { pairsOf } from '../pairs/pairsOf.ts';
import { isStruck } from '../standing.ts';
import { reminderTallyWords } from './reminderTallyWords.ts';
import styles from './Audit.module.css';
import { clockWords } from '../timeWords.ts';

const KINDS = [
  { id: 'changed', words: 'Amended and withdrawn' },
  { id: 'pairs', words: 'Two recorders' },
  { id: 'late', words: 'Late and back-dated' },
  { id: 'reminders', words: 'Reminders' },
  { id: 'device', words: 'Device' },
  { id: 'order', words: 'Order of events' },
  { id: 'all', words: 'Everything written' },
] as const;
type KindId = (typeof KINDS)[number]['id'];

const SHOWN_AT_MOST = 300;

/** The trail: nothing is erased. Withdrawn entries stand here struck through, amendments with who, when and why. */
export function AuditTab({
  desk,
  onOpen,
}: {
  readonly desk: Desk;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const [kind, setKind] = useState<KindId>('changed');
  const listed = desk.view.standing
    .filter((standing) => isOfKind(standing, kind))
    .toSorted((a, b) => a.entry.ord - b.entry.ord);
  const hasOwnList = kind === 'order' || kind === 'pairs';
  return (
    <section aria-label="Audit">
      <div className={styles.chooser} role="group" aria-label="What to list">
        {KINDS.map(({ id, words }) => (
          <GroundButton
            key={id}
            act={`audit-${id}`}
            pressed={id === kind}
            onPress={() => setKind(id)}
          >
            {words}
          </GroundButton>
        ))}
      </div>
      {kind === 'reminders' ? <p>{reminderTallyWords(reminderTally(desk.view))}</p> : null}
      {kind === 'order' ? <Doubts desk={desk} onOpen={onOpen} /> : null}
      {kind === 'pairs' ? <Pairs desk={desk} onOpen={onOpen} /> : null}
      {hasOwnList ? null : (
        <ol className={styles.trail}>
          {listed.slice(0, SHOWN_AT_MOST).map((standing) => (
            <AuditRow key={standing.entry.id} desk={desk} standing={standing} onOpen={onOpen} />
          ))}
        </ol>
      )}
      {!hasOwnList && listed.length === 0 ? (
        <p className={styles.quiet}>Nothing of this kind.</p>
      ) : null}
      {listed.length > SHOWN_AT_MOST ? (
        <p className={styles.quiet}>
          The first {SHOWN_AT_MOST} of {listed.length}; the saved file holds them all.
        </p>
      ) : null}
    </section>
  );
}

function isOfKind(standing: StandingEntry, kind: KindId): boolean {
  switch (kind) {
    case 'changed':
      return (
        isStruck(standing) || standing.amendedBy.length > 0 || standing.standing === 'unconfirmed'
      );
    case 'late':
      return (
        standing.late ||
        (standing.effective.kind !== 'unrecognised' && standing.effective.body.at !== undefined)
      );
    case 'reminders':
      return standing.entry.kind === 'reminderShown' || standing.entry.kind === 'reminderAnswered';
    case 'device':
      return standing.entry.kind === 'deviceNoted' || standing.entry.kind === 'recorderJoined';
    case 'order':
    case 'pairs':
      return false;
    case 'all':
      return true;
  }
}

function AuditRow({
  desk,
  standing,
  onOpen,
}: {
  readonly desk: Desk;
  readonly standing: StandingEntry;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const { sheet } = desk.view.state;
  const { entry } = standing;
  const shown = (at: typeof entry.wall) => desk.base.shown(at, entry.rec);
  const struck = isStruck(standing);
  const about = entriesAbout(desk.view, entry.id);
  const asRead = entryWords(entry, sheet);
  const isChanged = standing.amendedBy.length > 0;
  return (
    <li>
      <span className={styles.time}>{clockWords(shown(standing.at))}</span>
      <div className={styles.words}>
        <div className={isChanged ? styles.beside : undefined}>
          <p>
            {struck || isChanged ? <del>{asRead}</del> : asRead}{' '}
            <small>
              as read, {clockWords(shown(entry.wall))}, {entry.author}, entry {entry.seq}
            </small>
          </p>
          {isChanged ? (
            <p>
              {struck ? (
                <del>{entryWords(standing.effective, sheet)}</del>
              ) : (
                <b>{entryWords(standing.effective, sheet)}</b>
              )}{' '}
              <small>{struck ? 'as amended' : 'as it stands'}</small>
            </p>
          ) : null}
        </div>
        {about.map((link) => (
          <div
            key={link.entry.id}
            className={
              link.standing === 'withdrawn' ? `${styles.link} ${styles.takenBack}` : styles.link
            }
          >
            <span>{clockWords(desk.base.shown(link.at, link.entry.rec))}</span>
            <div>
              <LinkWords desk={desk} link={link} of={standing} />{' '}
              <small>
                {link.entry.author}
                {link.standing === 'withdrawn' ? ', withdrawn' : ''}
              </small>
            </div>
          </div>
        ))}
      </div>
      <GroundButton act="audit-open" onPress={() => onOpen(entry.id)}>
        Open
      </GroundButton>
    </li>
  );
}

/** What two recorders saw, decided or not: both observations stand beside each other. */
function Pairs({
  desk,
  onOpen,
}: {
  readonly desk: Desk;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const pairs = pairsOf(desk.view);
  return pairs.length === 0 ? (
    <p className={styles.quiet}>No two recorders saw one thing.</p>
  ) : (
    <>
      {pairs.slice(0, SHOWN_AT_MOST).map((pair) => (
        <PairBlock
          key={`${pair.first.entry.id} ${pair.second.entry.id}`}
          desk={desk}
          pair={pair}
          onOpen={onOpen}
        />
      ))}
    </>
  );
}

/** Rules of order that the record breaks. They warn and never block. */
function Doubts({
  desk,
  onOpen,
}: {
  readonly desk: Desk;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const doubts = [...items(desk.view.state.doubts)];
  return doubts.length === 0 ? (
    <p className={styles.quiet}>Every event stands in an order that makes sense.</p>
  ) : (
    <ol className={styles.trail}>
      {doubts.map((doubt) => {
        const by = desk.view.byId(doubt.by);
        return (
          <li key={`${doubt.by} ${doubt.rule} ${doubt.subject}`}>
            <span className={styles.time}>
              {clockWords(by === undefined ? doubt.at : desk.base.shown(doubt.at, by.entry.rec))}
            </span>
            <div className={styles.words}>
              <p>{doubtRuleWords(doubt)}</p>
            </div>
            <GroundButton act="audit-open" onPress={() => onOpen(doubt.by)}>
              Open
            </GroundButton>
          </li>
        );
      })}
    </ol>
  );
}
