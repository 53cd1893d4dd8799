import { useEffect, type ReactNode } from 'react';
import type { Clock, Journal, JournalStatus, Shelf } from '../../journal/journal.ts';
import type { FlightId } from '../../record/brand.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { Caution } from '../kit/Caution.tsx';
import { GroundButton } from '../kit/Ground.tsx';
import type { SettingsStore } from '../kit/settings.ts';
import { useFlight } from '../useFlight.ts';
import { BriefHeader } from './BriefHeader.tsx';
import type { DeviceTools } from './device/deviceLines.ts';
import { FlightPlace } from './FlightPlace.tsx';
import type { Place } from './place.ts';
import styles from './Brief.module.css';

/** Brief with a flight open: its header, its tabs, and the page that was chosen. */
export function OpenFlightView(props: {
  readonly shelf: Shelf;
  readonly journal: Journal;
  readonly clock: Clock;
  readonly settings: SettingsStore;
  readonly tools: DeviceTools;
  readonly device: string;
  readonly calibrated: boolean;
  readonly pxPerMm: number;
  readonly place: Place;
  readonly days: ReactNode;
  readonly onPlace: (place: Place) => void;
  readonly onOpened: (journal: Journal) => void;
  readonly onFly: (flight?: FlightId) => void;
  readonly onDebrief: (flight?: FlightId) => void;
}) {
  const { journal, shelf, place, onPlace } = props;
  const { view, status } = useFlight(journal);
  const { sheetAsWritten: sheet } = view.state;
  useKeptCopy(shelf, sheet);
  return (
    <>
      <BriefHeader {...props} flight={{ state: view.state, saved: status.saved }} />
      <main>
        <nav className={styles.tabs} aria-label="Brief">
          {tabsOf(sheet).map(({ name, act, to, at }) => (
            <GroundButton
              key={act}
              act={`brief.tab=${act}`}
              pressed={at.includes(place.at)}
              onPress={() => onPlace(to)}
            >
              {name}
            </GroundButton>
          ))}
          {status.trouble === null ? null : <Caution words={troubleWords(status.trouble)} />}
        </nav>
        {isOfDays(place) ? props.days : null}
        {!isOfDays(place) && sheet === null ? <p>This flight has no flight sheet.</p> : null}
        {!isOfDays(place) && sheet !== null ? (
          <FlightPlace {...props} view={view} sheet={sheet} place={place} />
        ) : null}
      </main>
    </>
  );
}

/** The day list, or what it leads to: nothing of the open flight. */
function isOfDays(place: Place): place is Extract<Place, { at: 'days' | 'join' }> {
  return place.at === 'days' || place.at === 'join';
}

function troubleWords(trouble: NonNullable<JournalStatus['trouble']>): string {
  switch (trouble.kind) {
    case 'notSaved':
      return 'NOT SAVED. Kept here and tried again.';
    case 'missing':
      return `Entries ${trouble.foundSeq + 1} to ${trouble.expectedSeq} of this tablet are missing. Save a file.`;
    case 'fork':
      return `Entry ${trouble.seq} was written twice under one name. Both are kept. Save a file.`;
  }
}

function tabsOf(sheet: FlightSheet | null): readonly {
  readonly name: string;
  readonly act: string;
  readonly to: Place;
  readonly at: readonly Place['at'][];
}[] {
  return [
    { name: 'This flight', act: 'flight', to: { at: 'flight' }, at: ['flight'] },
    { name: 'Time hack', act: 'hack', to: { at: 'hack' }, at: ['hack'] },
    { name: 'Cautions', act: 'cautions', to: { at: 'cautions' }, at: ['cautions'] },
    { name: 'Forms', act: 'forms', to: { at: 'forms', form: 'brief' }, at: ['forms'] },
    ...(sheet === null
      ? []
      : [
          {
            name: 'Flight sheet',
            act: 'sheet',
            to: { at: 'sheet', sheet: sheet.id, section: 'flight', item: null } as const,
            at: ['sheet', 'open', 'pad'] as const,
          },
        ]),
    { name: 'Screen', act: 'screen', to: { at: 'size' }, at: ['size'] },
    { name: 'Day list', act: 'days', to: { at: 'days' }, at: ['days'] },
  ];
}

/** A flight that came from elsewhere has its sheet in the record only: a copy to edit is put on the shelf. */
function useKeptCopy(shelf: Shelf, sheet: FlightSheet | null): void {
  useEffect(() => {
    if (sheet !== null) {
      void shelf.sheets().then(async (sheets) => {
        if (!sheets.some((one) => one.id === sheet.id)) {
          await shelf.keepSheet(sheet);
        }
      });
    }
  }, [shelf, sheet]);
}
