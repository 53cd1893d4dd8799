import type { JournalStatus } from '../../journal/journal.ts';
import type { FlightView } from '../../record/flight.ts';
import { Caution } from '../kit/Caution.tsx';
import { dayWords } from '../kit/time.ts';
import styles from './Debrief.module.css';

const NATURES = { flight: '', practice: 'Practice', demo: 'Demo' } as const;

/** Which flight, in which state, and the three phases of work. */
export function DebriefHead(props: {
  readonly view: FlightView;
  readonly status: JournalStatus;
  readonly openItems: number;
  readonly onBrief: () => void;
  readonly onFly: () => void;
}) {
  const { state } = props.view;
  const nature = NATURES[state.nature];
  const { trouble } = props.status;
  return (
    <>
      <header className={styles.header}>
        <h1>Debrief</h1>
        <p className={styles.flight}>
          {nature === '' ? null : <b className={styles.nature}>{nature}</b>} <b>{state.title}</b>{' '}
          {state.sheet?.aircraft.mark ?? ''}{' '}
          <span>{state.date === null ? '' : dayWords(state.date)}</span>
        </p>
        <p className={styles.state}>
          <b>{state.signed.length > 0 ? 'Signed' : 'Draft'}</b>{' '}
          {props.openItems === 1 ? '1 open item' : `${props.openItems} open items`}
        </p>
        <nav aria-label="Phase of work" className={styles.work}>
          <button type="button" data-act="go-brief" onClick={props.onBrief}>
            Brief
          </button>
          <button type="button" data-act="go-fly" onClick={props.onFly}>
            Fly
          </button>
          <button type="button" data-act="go-debrief" aria-current="page">
            Debrief
          </button>
        </nav>
      </header>
      {trouble === null ? null : (
        <Caution words={troubleWords(trouble, props.status.pending.length)} />
      )}
    </>
  );
}

function troubleWords(trouble: NonNullable<JournalStatus['trouble']>, pending: number): string {
  if (trouble.kind === 'missing') {
    return `Entries ${trouble.foundSeq + 1} to ${trouble.expectedSeq} of this tablet are missing. Save a file now.`;
  }
  const count = pending === 1 ? '1 entry is' : `${pending} entries are`;
  return `NOT SAVED. ${count} kept here and tried again. Save a file now: it holds them all.`;
}
