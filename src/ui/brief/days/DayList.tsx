import { useEffect, useState } from 'react';
import type { Clock, FlightSummary, Shelf } from '../../../journal/journal.ts';
import type { FlightId } from '../../../record/brand.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { dayWords } from '../../kit/time.ts';
import { HoldKey, TouchSurface } from '../../kit/TouchSurface.tsx';
import { TakeSheet } from './TakeSheet.tsx';
import styles from '../Brief.module.css';

const STATE_WORDS: Readonly<Record<FlightSummary['state'], string>> = {
  open: 'Open',
  closed: 'Closed',
  aborted: 'Aborted',
  signed: 'Signed',
};

interface DayListProps {
  readonly shelf: Shelf;
  readonly clock: Clock;
  readonly pxPerMm: number;
  readonly openFlight: FlightId | null;
  readonly onNew: () => void;
  readonly onCopyOfFlight: (flight: FlightId) => void;
  readonly onCopyOfSheet: (sheet: FlightSheet) => void;
  readonly onSheet: (sheet: FlightSheet) => void;
  readonly onResume: (flight: FlightId) => void;
  readonly onJoin: (flight: FlightId) => void;
  readonly onDebrief: (flight: FlightId) => void;
  readonly onScreen: () => void;
  /** For a flight sheet that is kept beside another one. */
  readonly newId: () => string;
}

/** Flights on this tablet, and the flight sheets that are being prepared on it. */
export function DayList(props: DayListProps) {
  const { shelf } = props;
  const [flights, setFlights] = useState<readonly FlightSummary[] | null>(null);
  const [sheets, setSheets] = useState<readonly FlightSheet[]>([]);
  const [asked, setAsked] = useState(0);
  useEffect(() => {
    let wanted = true;
    void Promise.all([shelf.flights(), shelf.sheets()]).then(([foundFlights, foundSheets]) => {
      if (wanted) {
        setFlights(foundFlights);
        setSheets(foundSheets);
      }
    });
    return () => {
      wanted = false;
    };
  }, [shelf, asked]);
  return (
    <div className={styles.days}>
      <section aria-label="Flights on this tablet">
        <h2>
          Flights on this tablet <span className={styles.count}>{flights?.length ?? ''}</span>
        </h2>
        {flights === null ? <p className={styles.quiet}>Reading.</p> : null}
        {flights?.length === 0 ? <p>No flight yet.</p> : null}
        <ul className={styles.flights}>
          {flights?.map((flight) => (
            <FlightRow key={flight.flight} flight={flight} {...props} />
          ))}
        </ul>
      </section>
      <section aria-label="Set up my flight">
        <h2>Set up my flight</h2>
        <p className={styles.quiet}>
          From a blank flight sheet, or as a copy of one that is here. Each change is kept at once.
        </p>
        <div className={styles.keys}>
          <GroundButton act="days.new" strong onPress={props.onNew}>
            Blank flight sheet
          </GroundButton>
          <GroundButton act="days.screen" onPress={props.onScreen}>
            Theme, hand, size
          </GroundButton>
        </div>
        <TakeSheet shelf={shelf} newId={props.newId} onTaken={props.onSheet} />
        {sheets.length === 0 ? null : <h3>In preparation</h3>}
        <ul className={styles.flights}>
          {sheets.map((sheet) => (
            <li key={sheet.id}>
              <p>
                <b>{sheet.title.trim() === '' ? 'No title yet' : sheet.title}</b>
                <br />
                <span className={styles.quiet}>
                  {`${sheet.aircraft.mark === '' ? 'no mark' : sheet.aircraft.mark}, revision ${sheet.revision}, ${sheet.testCards.length} cards`}
                </span>
              </p>
              <div className={styles.keys}>
                <GroundButton act={`days.sheet=${sheet.id}`} onPress={() => props.onSheet(sheet)}>
                  Go on
                </GroundButton>
                <GroundButton
                  act={`days.copySheet=${sheet.id}`}
                  onPress={() => props.onCopyOfSheet(sheet)}
                >
                  Copy
                </GroundButton>
                <TouchSurface
                  clock={props.clock}
                  pxPerMm={props.pxPerMm}
                  onIgnored={() => undefined}
                >
                  <HoldKey
                    act={`days.removeSheet=${sheet.id}`}
                    className={styles.holdKey}
                    onTouch={() => void shelf.removeSheet(sheet.id).then(() => setAsked(asked + 1))}
                  >
                    Hold to remove
                  </HoldKey>
                </TouchSurface>
              </div>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}

function FlightRow({ flight, ...props }: DayListProps & { readonly flight: FlightSummary }) {
  const nature =
    flight.nature === 'practice' ? 'PRACTICE. ' : flight.nature === 'demo' ? 'Demo. ' : '';
  const isOpen = flight.flight === props.openFlight;
  return (
    <li>
      <p>
        <b>{`${nature}${flight.title}`}</b>
        <br />
        <span className={styles.quiet}>
          {`${dayWords(flight.date)}, ${flight.mark}. ${STATE_WORDS[flight.state]}, ${flight.entries} entries${flight.recordedHere ? '' : ', from a file'}`}
        </span>
      </p>
      <div className={styles.keys}>
        {flight.state === 'open' && flight.nature !== 'demo' ? (
          flight.recordedHere ? (
            <GroundButton
              act={`days.open=${flight.flight}`}
              strong
              onPress={() => props.onResume(flight.flight)}
            >
              {isOpen ? 'Go on' : 'Resume'}
            </GroundButton>
          ) : (
            <GroundButton
              act={`days.join=${flight.flight}`}
              strong
              onPress={() => props.onJoin(flight.flight)}
            >
              Join as second recorder
            </GroundButton>
          )
        ) : null}
        <GroundButton
          act={`days.debrief=${flight.flight}`}
          onPress={() => props.onDebrief(flight.flight)}
        >
          Debrief
        </GroundButton>
        <GroundButton
          act={`days.copy=${flight.flight}`}
          onPress={() => props.onCopyOfFlight(flight.flight)}
        >
          Copy its flight sheet
        </GroundButton>
      </div>
    </li>
  );
}
