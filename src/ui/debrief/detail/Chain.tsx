import type { Body, Entry } from '../../../record/entry.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { entryWords } from '../../../record/lang.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import { fieldLabel, valueWords } from '../fields/labels.ts';
import { entriesAbout } from '../entriesAbout.ts';
import { AMEND_CODES } from './amendment.ts';
import styles from './EntryDetail.module.css';
import { clockWords } from '../timeWords.ts';

/** Who changed what, when and why, in order of writing; each link can be opened and withdrawn itself. */
export function Chain({
  desk,
  standing,
}: {
  readonly desk: Desk;
  readonly standing: StandingEntry;
}) {
  const about = entriesAbout(desk.view, standing.entry.id);
  if (about.length === 0) {
    return null;
  }
  return (
    <section aria-label="What was done to it">
      <h3 className={styles.sub}>What was done to it</h3>
      <ol className={styles.chain}>
        {about.map((link) => (
          <li
            key={link.entry.id}
            className={link.standing === 'withdrawn' ? styles.struck : undefined}
          >
            <span className={styles.linkTime}>
              {clockWords(desk.base.shown(link.at, link.entry.rec))}
            </span>
            <span>
              <LinkWords desk={desk} link={link} of={standing} />
              <small>
                {link.entry.author}
                {link.standing === 'withdrawn' ? ', withdrawn' : ''}
              </small>
            </span>
            <GroundButton act="open-link" onPress={() => desk.select(link.entry.id)}>
              Open
            </GroundButton>
          </li>
        ))}
      </ol>
      {standing.conflicts.length === 0 ? null : (
        <p className={styles.fault}>
          Amendments disagree on{' '}
          {standing.conflicts.map((path) => fieldLabel(path, desk.view.state.sheet)).join(', ')}.
          Amend again to decide.
        </p>
      )}
    </section>
  );
}

/** What one entry did to another: the old value struck out beside the new one, and why. */
export function LinkWords({
  desk,
  link,
  of,
}: {
  readonly desk: Desk;
  readonly link: StandingEntry;
  readonly of: StandingEntry;
}) {
  const { sheet } = desk.view.state;
  const entry: Entry = link.effective;
  const shown = (at: typeof entry.wall) => desk.base.shown(at, entry.rec);
  switch (entry.kind) {
    case 'entryAmended': {
      const code = AMEND_CODES.find((one) => one.code === entry.body.code)?.words ?? '';
      const evidence = entry.body.basisWords === undefined ? '' : `; ${entry.body.basisWords}`;
      const second =
        entry.body.countersignedBy === undefined ? '' : `; agreed by ${entry.body.countersignedBy}`;
      return (
        <>
          {entry.body.changes.map((change) => (
            <span key={change.field} className={styles.change}>
              {fieldLabel(change.field, sheet)}{' '}
              <del>{valueWords(change.field, change.old, shown)}</del>{' '}
              <b>{valueWords(change.field, change.new, shown)}</b>
            </span>
          ))}
          <span>
            {entry.body.reason === '' || entry.body.reason === code
              ? code
              : `${code}, ${entry.body.reason}`}
            {evidence}
            {second}
          </span>
        </>
      );
    }
    case 'entryWithdrawn':
      return <span>Withdrawn: {entry.body.reason}</span>;
    case 'unconfirmedSettled':
      return <span>{entry.body.kept ? 'Kept: it was meant' : 'Dropped: it was not meant'}</span>;
    case 'causeAssigned':
      return (
        <span>
          Cause: {entry.body.cause}. {entry.body.reason}
        </span>
      );
    case 'observationsResolved':
      return <span>{resolvedWords(desk, entry.body, of)}</span>;
    case 'noted':
      return <span>{entry.body.words}</span>;
    default:
      return <span>{entryWords(entry, sheet)}</span>;
  }
}

function resolvedWords(
  { view }: Desk,
  { target, other, verdict, reason }: Body<'observationsResolved'>,
  of: StandingEntry,
): string {
  const partner = view.byId(of.entry.id === target ? other : target)?.entry;
  const who = partner === undefined ? 'another' : `entry ${partner.seq} by ${partner.author}`;
  if (verdict === 'bothStand') {
    return `Stands beside ${who}, two events: ${reason}`;
  }
  return of.entry.id === target
    ? `Gives way to ${who}: ${reason}`
    : `Stands, not ${who}: ${reason}`;
}
