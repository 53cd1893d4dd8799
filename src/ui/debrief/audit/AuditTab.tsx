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
import { fieldLabel, valueWords } from '../fields/labels.ts';
import { isStruck } from '../standing.ts';
import { reminderTallyWords } from './reminderTallyWords.ts';
import styles from './Audit.module.css';
import { clockWords } from '../timeWords.ts';

const KINDS = [
  { id: 'changed', words: 'Amended and withdrawn' },
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
      {kind === 'order' ? null : (
        <ol className={styles.trail}>
          {listed.slice(0, SHOWN_AT_MOST).map((standing) => (
            <AuditRow key={standing.entry.id} desk={desk} standing={standing} onOpen={onOpen} />
          ))}
        </ol>
      )}
      {kind !== 'order' && listed.length === 0 ? (
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
        <p>
          {struck || isChanged ? <del>{asRead}</del> : asRead}{' '}
          <small>
            as read, {clockWords(shown(entry.wall))}, {entry.author}, entry {entry.seq}
          </small>
        </p>
        {isChanged ? (
          <p>
            <b>{entryWords(standing.effective, sheet)}</b> <small>as it stands</small>
          </p>
        ) : null}
        {about.map((link) => (
          <p key={link.entry.id} className={styles.link}>
            <span>{clockWords(shown(link.at))}</span>{' '}
            {link.standing === 'withdrawn' ? (
              <del>{reasonOf(desk, link)}</del>
            ) : (
              reasonOf(desk, link)
            )}{' '}
            <small>{link.entry.author}</small>
          </p>
        ))}
      </div>
      <GroundButton act="audit-open" onPress={() => onOpen(entry.id)}>
        Open
      </GroundButton>
    </li>
  );
}

function reasonOf(desk: Desk, { effective }: StandingEntry): string {
  switch (effective.kind) {
    case 'entryAmended': {
      const { changes, reason, basisWords, countersignedBy } = effective.body;
      const fields = changes.map(
        ({ field, old, new: now }) =>
          `${fieldLabel(field, desk.view.state.sheet)} ${valueWords(field, old, (at) => at)} to ${valueWords(field, now, (at) => at)}`,
      );
      return [
        `Amended: ${fields.join('; ')}. ${reason}`,
        ...(basisWords === undefined ? [] : [basisWords]),
        ...(countersignedBy === undefined ? [] : [`agreed by ${countersignedBy}`]),
      ].join(', ');
    }
    case 'entryWithdrawn':
      return `Withdrawn: ${effective.body.reason}`;
    default:
      return entryWords(effective, desk.view.state.sheet);
  }
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
