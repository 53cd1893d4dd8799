import type { FlightId } from '../../record/brand.ts';
import type { FlightState } from '../../record/flightState.ts';
import { dayWords } from '../kit/time.ts';
import styles from './Brief.module.css';

/** Which flight this is, the three phases of work, and the cautions that always stand on top. */
export function BriefHeader(props: {
  readonly flight: { readonly state: FlightState; readonly saved: number } | null;
  readonly onFly: (flight?: FlightId) => void;
  readonly onDebrief: (flight?: FlightId) => void;
}) {
  const state = props.flight?.state ?? null;
  return (
    <header>
      <div className={styles.header}>
        <h1>Brief</h1>
        <p className={styles.id}>
          {state === null ? (
            'No flight is open'
          ) : (
            <>
              <b>{state.title}</b> {state.sheet?.aircraft.mark} {state.sheet?.aircraft.callsign}{' '}
              <span className={styles.quiet}>
                {`${state.sheet?.field === undefined ? '' : `${state.sheet.field}, `}${state.date === null ? '' : dayWords(state.date)}. ${props.flight?.saved ?? 0} saved`}
              </span>
            </>
          )}
        </p>
        <nav className={styles.phases} aria-label="Phases of work">
          <button type="button" data-act="nav.brief" aria-current="page">
            Brief
          </button>
          <button
            type="button"
            data-act="nav.fly"
            disabled={state === null}
            onClick={() => props.onFly()}
          >
            Fly
          </button>
          <button type="button" data-act="nav.debrief" onClick={() => props.onDebrief()}>
            Debrief
          </button>
        </nav>
      </div>
      {state?.nature === 'practice' ? (
        <p className={styles.practice}>PRACTICE: never a flight record.</p>
      ) : null}
      <p className={styles.law}>
        <b>Record only.</b> Not for flying, navigation or fuel planning. Operator’s approval and the
        test safety plan overrule it. Card and pencil stay on board.
      </p>
    </header>
  );
}
