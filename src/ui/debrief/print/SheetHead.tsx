import { dayWords } from '../../kit/time.ts';
import styles from './Print.module.css';
import { statusWords, type Printed } from './printed.ts';

/** Which flight, which version of its log, and what this sheet is. */
export function SheetHead({ printed, what }: { readonly printed: Printed; readonly what: string }) {
  const { state } = printed.desk.view;
  const { nature, sheet, date } = state;
  const { blocksOff, blocksOn } = state.milestones;
  const blocks = [
    ...(blocksOff === undefined
      ? []
      : [`Blocks ${printed.clock(blocksOff.at, blocksOff.by)}\u00a0Z`]),
    ...(blocksOn === undefined ? [] : [`to ${printed.clock(blocksOn.at, blocksOn.by)}\u00a0Z`]),
  ].join(' ');
  const { version, code } = printed;
  return (
    <header className={styles.head}>
      <div>
        <h1>{printed.title}</h1>
        <p>
          {nature === 'flight' ? null : <b>{nature.toUpperCase()} </b>}
          {[sheet?.aircraft.mark, sheet?.aircraft.callsign, sheet && `sheet ${sheet.revision}`]
            .filter((part) => part !== undefined && part !== null && part !== '')
            .join(', ')}
        </p>
        <p>
          <b>{what}</b>
        </p>
      </div>
      <div className={styles.right}>
        <p>
          <b>{date === null ? '' : dayWords(date)}</b>
        </p>
        <p>{blocks}</p>
        <p>{statusWords(printed)}</p>
        <p>
          {version === null ? 'Code of this draft' : 'Code of the version signed'}{' '}
          <b className={styles.code}>{code}</b>
        </p>
      </div>
    </header>
  );
}
