import type { StandingEntry } from '../../../record/flightState.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import styles from './EntryDetail.module.css';

/** An unconfirmed touch waits for one of two words. */
export function Settle({
  desk,
  standing,
}: {
  readonly desk: Desk;
  readonly standing: StandingEntry;
}) {
  if (standing.standing !== 'unconfirmed') {
    return null;
  }
  const settle = (kept: boolean): void => {
    void desk.writer.write(
      (stamp) => ({ kind: 'unconfirmedSettled', stamp, body: { target: standing.entry.id, kept } }),
      kept ? 'Kept.' : 'Dropped. It stays readable in the audit.',
    );
  };
  return (
    <div className={styles.actions}>
      <p className={styles.quiet}>This touch may not have been meant. It counts in no number.</p>
      <GroundButton act="detail-keep" strong onPress={() => settle(true)}>
        Keep
      </GroundButton>
      <GroundButton act="detail-drop" onPress={() => settle(false)}>
        Drop
      </GroundButton>
    </div>
  );
}
